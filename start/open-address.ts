import { spawn } from 'node:child_process';
import type { Machine } from './find-electron.ts';

/** The program that opens an address in the player's browser, and its words; null where there is no screen to open it on. */
export function openerOf({ platform, env }: Machine, address: string): readonly [string, ...string[]] | null {
  if (platform === 'darwin') return ['open', address];
  if (platform === 'win32') return ['rundll32', 'url.dll,FileProtocolHandler', address];
  return env.DISPLAY || env.WAYLAND_DISPLAY ? ['xdg-open', address] : null;
}

/** Opens an address; where that fails the player still has it in print. */
export function openAddress(machine: Machine, address: string): void {
  const opener = openerOf(machine, address);
  if (opener === null) return;
  const [program, ...words] = opener;
  spawn(program, words, { stdio: 'ignore', detached: true })
    .on('error', () => undefined)
    .unref();
}
