import { writeFileSync } from 'node:fs';
import { kernelModule } from './compile-kernel.ts';

const target = new URL('../core/flight/flight-kernel.ts', import.meta.url);
writeFileSync(target, await kernelModule());
