import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A package that is shipped with the app, and the terms it is shipped under. */
export type PackageLicence = Readonly<{ name: string; version: string; licence: string; text: string }>;

type Locked = Readonly<{ packages: Readonly<Record<string, Readonly<{ dev?: boolean; version?: string }>>> }>;
type PackageFile = Readonly<{
  name?: string;
  version?: string;
  license?: string | Readonly<{ type?: string }>;
  licenses?: readonly Readonly<{ type?: string }>[];
}>;

const LICENCE_FILE = /^(licen[cs]e|copying|notice)([.-].*)?$/i;
const LONGEST_TEXT = 60_000;
/** Names none itself; the registry says MIT of its next versions, by the same author. */
const REVIEWED: Readonly<Record<string, string>> = { 'base64-js@0.0.2': 'MIT' };

/**
 * The licences of every package the app runs with, those of their packages too, by name.
 * @param root - project with its `package-lock.json` and what `npm ci` installed
 * @throws {Error} naming a package whose terms cannot be found: it must not be shipped unseen
 */
export function collectLicences(root: string): PackageLicence[] {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as Locked;
  const shipped = Object.entries(packages).filter(
    // Packages for other systems are locked, but not installed here.
    ([path, { dev }]) => path !== '' && !dev && existsSync(join(root, path, 'package.json')),
  );
  const found = shipped.map(([path]) => licenceOf(join(root, path)));
  const known = new Map(found.map(licence => [`${licence.name}@${licence.version}`, licence]));
  return [...known.values()].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
}

function licenceOf(folder: string): PackageLicence {
  const file = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as PackageFile;
  const said = typeof file.license === 'string' ? file.license : (file.license?.type ?? file.licenses?.[0]?.type);
  const texts = readdirSync(folder)
    .filter(name => LICENCE_FILE.test(name))
    .sort()
    .map(name => readFileSync(join(folder, name), 'utf8').trim());
  const { name = folder, version = '' } = file;
  const licence = said ?? REVIEWED[`${name}@${version}`];
  if (licence === undefined && texts.length === 0)
    throw new Error(`${name} ${version} does not say under which licence it is`);
  return { name, version, licence: licence ?? 'see text', text: texts.join('\n\n').slice(0, LONGEST_TEXT) };
}
