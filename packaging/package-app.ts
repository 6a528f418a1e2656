import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { buildStale } from '../start/build-stale.ts';

/*
 * `npm run package [-- --linux|--mac|--win|--dir]`: builds page and shell and has electron-builder pack them. The packer is
 * fetched when it is first asked for, at this version: as a dependency it would add some 300 packages to every install.
 */
const BUILDER = 'electron-builder@26.17.0';
const ROOT = resolve(import.meta.dirname, '..');

if (!existsSync(join(ROOT, 'packaging', 'icons', 'icon.icns')))
  throw new Error('packaging/icons is not there: run "npm run icons" first');
await buildStale(ROOT, ['page', 'shell'], { say: console.log, always: true });
const { status, error } = spawnSync(
  process.platform === 'win32' ? 'npx.cmd' : 'npx',
  ['--yes', BUILDER, '--config', 'electron-builder.json', '--publish', 'never', ...process.argv.slice(2)],
  { cwd: ROOT, stdio: 'inherit', shell: process.platform === 'win32' },
);
if (error !== undefined) throw error;
if (status !== 0)
  console.error(
    'The app could not be packed. Without network the packer, and the Electron it packs, cannot be fetched.',
  );
process.exitCode = status ?? 1;
