import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rename, rm } from 'node:fs/promises';
import { homedir } from 'node:os';
import { join } from 'node:path';
import packageFile from '../../package.json' with { type: 'json' };

const VERSION = packageFile.dependencies['@sparticuz/chromium'];

/**
 * The Chromium that npm brings, unpacked once. Its package unpacks into the temporary folder that all users share and runs
 * whatever lies there by that name; here it goes into a folder of this user's alone, and appears there whole.
 * @returns the program's path; null where there is none for this machine (it is for Linux on x64)
 */
export async function npmChromium(): Promise<string | null> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null;
  const home = join(process.env.XDG_CACHE_HOME || join(homedir(), '.cache'), 'roundwright');
  const folder = join(home, `chromium-${VERSION}`);
  const program = join(folder, 'chromium');
  if (existsSync(program)) return program;
  await mkdir(home, { recursive: true, mode: 0o700 });
  const part = await mkdtemp(join(home, 'part-'));
  try {
    await unpackInto(part);
    await rename(part, folder);
  } catch (error) {
    // another process was quicker
    if (!existsSync(program)) throw error;
  } finally {
    await rm(part, { recursive: true, force: true });
  }
  return program;
}

async function unpackInto(folder: string): Promise<void> {
  const { default: chromium } = await import('@sparticuz/chromium');
  const before = process.env.TMPDIR;
  process.env.TMPDIR = folder;
  // it looks the folder up before it first waits for anything
  const unpacked = chromium.executablePath();
  if (before === undefined) delete process.env.TMPDIR;
  else process.env.TMPDIR = before;
  await unpacked;
}
