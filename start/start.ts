import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { dataFolder } from '../backend/store/data-folder.ts';
import type { Problem } from '../core/units/result.ts';
import { buildStale } from './build-stale.ts';
import { findElectron, type Machine, whyNoWindow } from './find-electron.ts';
import { openAddress } from './open-address.ts';
import { type StartOptions, startOptions, USAGE } from './options.ts';
import { runDesktop } from './run-desktop.ts';

// `npm start`: builds what is stale, opens the desktop app, or serves the same app to a browser and says why.

const root = resolve(import.meta.dirname, '..');
const { platform, env } = process;
const machine: Machine = { platform, env, uid: process.getuid?.() };
const say = (line: string) => console.log(line);

const options = startOptions(process.argv.slice(2));
if (!options.ok) {
  complain(options.problems);
  console.error(USAGE);
  process.exitCode = 2;
} else if (options.value.help) say(USAGE);
else process.exitCode = await start(options.value);

async function start(wish: StartOptions): Promise<number> {
  const stopped = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => stopped.abort());
  const folder = resolve(wish.data ?? dataFolder({ platform, env, home: homedir() }));
  await buildStale(root, ['page'], { say });
  if (!wish.browser) {
    const code = await desktop(wish, folder, stopped.signal);
    if (code !== null) return code;
  }
  return browser(wish, folder, stopped.signal);
}

/** @returns the exit code, or null where the desktop app cannot start, which it says in one line */
async function desktop(wish: StartOptions, folder: string, signal: AbortSignal): Promise<number | null> {
  const cannot = (why: string) => {
    say(`The desktop app cannot start here: ${why}.`);
    return null;
  };
  const obstacle = whyNoWindow(machine);
  if (obstacle !== null) return cannot(obstacle);
  const electron = await findElectron(join(root, 'node_modules', 'electron'), say);
  if (!electron.ok) return cannot(electron.problems[0]!.message);
  await buildStale(root, ['shell'], { say });
  const words = [root, ...(wish.data === undefined ? [] : [`--data=${folder}`])];
  const end = await runDesktop(electron.value, words, say, signal);
  return end.kind === 'failed' ? cannot(end.why) : end.code;
}

async function browser(wish: StartOptions, folder: string, signal: AbortSignal): Promise<number> {
  const { serveBrowser } = await import('./serve-browser.ts');
  const served = await serveBrowser({ root, folder, port: wish.port });
  if (!served.ok) {
    complain(served.problems);
    return 1;
  }
  const { address, close } = served.value;
  say(`Roundwright is at ${address}`);
  say('Stop it with Ctrl+C.');
  if (wish.opensBrowser) openAddress(machine, address);
  await new Promise<void>(done => {
    if (signal.aborted) done();
    else signal.addEventListener('abort', () => done(), { once: true });
  });
  await close();
  return 0;
}

function complain(problems: readonly Problem[]): void {
  for (const { path, message } of problems) console.error(`${path}: ${message}`);
}
