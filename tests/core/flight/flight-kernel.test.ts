import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { kernelModule } from '../../../start/compile-kernel.ts';

it('the compiled kernel is what kernel/ compiles to (else run `npm run kernel`)', async () => {
  const written = readFileSync(new URL('../../../core/flight/flight-kernel.ts', import.meta.url), 'utf8');
  expect(await kernelModule()).toBe(written);
});
