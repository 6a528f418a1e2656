import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { schemaFiles } from '../../../backend/command-line/schema-files.ts';

const folder = new URL('../../../docs/schemas/', import.meta.url);

describe('the published JSON Schemas', () => {
  it.each(schemaFiles())('$file is fresh (npm run schemas writes it)', ({ file, text }) => {
    expect(readFileSync(new URL(file, folder), 'utf8')).toBe(text);
  });

  it('are all there are in docs/schemas', () => {
    expect(readdirSync(folder).sort()).toEqual(
      schemaFiles()
        .map(({ file }) => file)
        .sort(),
    );
  });

  it('ask of a player file only what reading it asks', () => {
    const player = JSON.parse(schemaFiles().find(({ file }) => file === 'player.schema.json')!.text);
    expect(player.required).toEqual(['name', 'handedness', 'discs', 'sessions']);
    expect(player.properties.discs.items.required).toEqual(['id', 'name', 'speed', 'glide', 'turn', 'fade']);
  });
});
