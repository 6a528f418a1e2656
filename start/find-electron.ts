import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Result } from '../core/units/result.ts';

export type Machine = Readonly<{
  platform: NodeJS.Platform;
  env: Readonly<Record<string, string | undefined>>;
  /** The user's number; undefined where there is none (Windows). */
  uid: number | undefined;
}>;

/** What stands against a window on this machine, whatever is installed; null when nothing does. */
export function whyNoWindow({ platform, env, uid }: Machine): string | null {
  if (platform !== 'linux') return null;
  if (!env.DISPLAY && !env.WAYLAND_DISPLAY) return 'there is no display (DISPLAY and WAYLAND_DISPLAY are not set)';
  // Chromium's sandbox refuses root, and without its sandbox this app does not run.
  return uid === 0 ? 'Electron’s sandbox does not run as root: start it as an ordinary user' : null;
}

/**
 * Electron's program, fetched when it is not there yet: the npm package does not bring it.
 * @returns its path, or one problem with path `electron` in words that can follow "cannot start here:"
 */
export async function findElectron(packageFolder: string, say: (line: string) => void): Promise<Result<string>> {
  if (!existsSync(packageFolder)) return refused('the npm package "electron" is not installed: run npm ci');
  const there = programIn(packageFolder);
  if (there !== null) return { ok: true, value: there };
  say('Fetching Electron’s program, once (about 110 MB)…');
  const failure = await install(packageFolder);
  const program = programIn(packageFolder);
  return program !== null
    ? { ok: true, value: program }
    : refused(`Electron’s program could not be fetched (${failure})`);
}

/**
 * Electron's program if it is there already, else null.
 * @source electron's own index.js: `path.txt` names the program inside `dist`
 */
export function programIn(packageFolder: string): string | null {
  const named = join(packageFolder, 'path.txt');
  if (!existsSync(named)) return null;
  const program = join(packageFolder, 'dist', readFileSync(named, 'utf8').trim());
  return existsSync(program) ? program : null;
}

/** @returns what went wrong, in the words of Electron's installer */
async function install(packageFolder: string): Promise<string> {
  const child = spawn(process.execPath, [join(packageFolder, 'install.js')], { stdio: ['ignore', 'inherit', 'pipe'] });
  let errors = '';
  child.stderr.setEncoding('utf8').on('data', text => {
    errors += text;
  });
  return new Promise(resolve => {
    child.on('error', error => resolve(error.message));
    child.on('close', code => resolve(firstLine(errors) ?? `its installer ended with ${code}`));
  });
}

function firstLine(text: string): string | undefined {
  return text
    .split('\n')
    .map(line => line.trim().replace(/^\w*Error: /, ''))
    .find(line => line !== '');
}

function refused(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'electron', message }] };
}
