import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { setTimeout } from 'node:timers/promises';

const LOOK_AGAIN_MS = 50;

/**
 * Does work while no other process does work under the same lock file; waits for those that do. A process that was killed
 * holds nothing up: its lock names it, and it is gone.
 */
export async function oneAtATime<T>(lock: string, work: () => Promise<T>): Promise<T> {
  mkdirSync(dirname(lock), { recursive: true });
  while (!isTaken(lock)) await setTimeout(LOOK_AGAIN_MS);
  try {
    return await work();
  } finally {
    rmSync(lock, { force: true });
  }
}

/** @returns whether the lock is now this process's */
function isTaken(lock: string): boolean {
  try {
    writeFileSync(lock, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
  const holder = readHolder(lock);
  if (holder !== null && !isAlive(holder)) rmSync(lock, { force: true });
  return false;
}

/** @returns null when the lock has just gone, or is just being written */
function readHolder(lock: string): number | null {
  try {
    const pid = Number(readFileSync(lock, 'utf8'));
    return Number.isInteger(pid) && pid > 0 ? pid : null;
  } catch {
    return null;
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
