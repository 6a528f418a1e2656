import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import packageFile from '../../package.json' with { type: 'json' };
import { collectLicences } from '../../start/collect-licences.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const builder = JSON.parse(readFileSync(join(ROOT, 'electron-builder.json'), 'utf8'));
const locked = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8'));

describe('the packing list', () => {
  it('names icons that are there, for each system', () => {
    for (const system of ['mac', 'win', 'linux'])
      expect(existsSync(join(ROOT, builder[system].icon)), system).toBe(true);
  });

  it('packs the Electron that is installed', () => {
    expect(builder.electronVersion).toBe(packageFile.devDependencies.electron);
  });

  // Electron's published fuses; item 19 of its security checklist as electron/security.ts lists it.
  it('turns the fuses that let others in off, and those that keep them out on', () => {
    expect(builder.electronFuses).toMatchObject({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      grantFileProtocolExtraPrivileges: false,
      enableCookieEncryption: true,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
    });
  });

  it('leaves out no package that the shell’s own files ask for', () => {
    const excluded = /node_modules\/\{(.*)\}/.exec(
      builder.files.find((line: string) => line.startsWith('!node_modules')),
    )![1]!;
    for (const name of [
      'better-sqlite3',
      'zod',
      'tinypool',
      '@turf',
      'geotiff',
      'proj4',
      'metar-taf-parser',
      'pure-rand',
    ])
      expect(excluded.split(','), name).not.toContain(name);
  });

  it('opens course files', () => {
    expect(builder.fileAssociations.map(({ ext }: { ext: string }) => ext)).toContain('geojson');
  });
});

describe('licences', () => {
  const licences = collectLicences(ROOT);

  it('are there for every package the app depends on, and theirs', () => {
    const names = new Set(licences.map(({ name }) => name));
    for (const name of Object.keys(packageFile.dependencies)) expect(names, name).toContain(name);
    const installed = Object.entries(locked.packages as Record<string, { dev?: boolean }>).filter(
      ([path, { dev }]) => path !== '' && !dev && existsSync(join(ROOT, path, 'package.json')),
    );
    // One line for each name and version.
    expect(licences.length).toBeGreaterThan(100);
    expect(licences.length).toBeLessThanOrEqual(installed.length);
  });

  it('say under which terms each one comes', () => {
    for (const { name, licence } of licences) expect(licence, name).not.toBe('');
  });
});
