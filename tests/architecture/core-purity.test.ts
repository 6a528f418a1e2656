import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const CORE = new URL('../../core/', import.meta.url);

function sources(): readonly (readonly [name: string, text: string])[] {
  return readdirSync(CORE, { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith('.ts'))
    .map(name => [name, readFileSync(new URL(name, CORE), 'utf8')] as const);
}

// The layer rule itself (an import may only point down) is Biome's, see biome.json.
describe('core is pure', () => {
  it.each(sources())('%s reads no clock and draws no unseeded number', (_, text) => {
    expect(text).not.toMatch(/\bnew Date\b|\bDate\.now\b|\bMath\.random\b|\bperformance\b/);
  });

  it('only geometry knows Turf', () => {
    const users = sources()
      .filter(([, text]) => text.includes('@turf/'))
      .map(([name]) => name);
    expect(users.length).toBeGreaterThan(0);
    expect(users.filter(name => !name.startsWith('geometry/'))).toEqual([]);
  });
});
