import { spawn } from 'node:child_process';
import { setTimeout } from 'node:timers/promises';
import type { Output } from '../../../backend/api/contract/api.ts';
import type { Dispatch } from '../../../backend/api/dispatch.ts';
import { openBackend } from '../../../backend/api/open-backend.ts';
import { taken } from '../taken.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';
import { randomWrite, type Target } from './random-writes.ts';

const CHILD = new URL('../../bench/write-until-killed.ts', import.meta.url).pathname;

export type KillReport = Readonly<{ rounds: number; confirmed: number; inFlightKept: number; lost: string[] }>;

/**
 * Kills a writing backend (SIGKILL) at a random moment of each round, opens the library again, and compares it with what was
 * confirmed: every slot must hold its last confirmed value, or the one write that was under way.
 * @param moment_ms - of each round, after its first confirmed write
 */
export async function killRounds(
  folder: string,
  rounds: number,
  seed: number,
  moment_ms: (round: number) => number,
): Promise<KillReport> {
  const target = await makeTarget(folder);
  const expected = new Map<string, string>();
  const lost: string[] = [];
  let [k, inFlightKept] = [0, 0];
  for (let round = 0; round < rounds; round++) {
    const last = await writeAndKill(folder, seed, k, target, moment_ms(round));
    for (; k <= last; k++) {
      const { slot, value } = randomWrite(seed, k, target);
      expected.set(slot, value);
    }
    const inFlight = randomWrite(seed, k, target);
    const found = await slotsOf(folder, target);
    if ((found.get(inFlight.slot) ?? '') === inFlight.value && expected.get(inFlight.slot) !== inFlight.value) {
      expected.set(inFlight.slot, inFlight.value);
      inFlightKept++;
    }
    for (const [slot, value] of expected)
      if ((found.get(slot) ?? '') !== value)
        lost.push(
          `round ${round}: ${slot} is "${found.get(slot)?.slice(0, 40)}", confirmed was "${value.slice(0, 40)}"`,
        );
    k++;
  }
  return { rounds, confirmed: k - rounds, inFlightKept, lost };
}

async function makeTarget(folder: string): Promise<Target> {
  const backend = taken(openBackend({ folder }));
  const add = async (method: string, value: object) =>
    taken(await backend.call(method, { fileName: 'tiny', text: JSON.stringify(value) }));
  const { courseId } = (await add('importCourse', tinyCourse())) as Output<'importCourse'>;
  const { playerId } = (await add('importPlayer', tinyPlayer())) as Output<'importPlayer'>;
  await backend.close();
  return { courseId, playerId, refs: ['1', '2'] };
}

/** @returns the number of the last write that was confirmed */
async function writeAndKill(folder: string, seed: number, first: number, target: Target, after_ms: number) {
  const child = spawn(process.execPath, [CHILD, folder, String(seed), String(first), JSON.stringify(target)], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let [out, errors] = ['', ''];
  child.stderr.on('data', data => {
    errors += data;
  });
  const ended = new Promise<void>(resolve => child.on('close', () => resolve()));
  await new Promise<void>((resolve, reject) => {
    child.stdout.on('data', data => {
      out += data;
      resolve();
    });
    child.on('close', () => reject(new Error(`ended before it was killed: ${errors}`)));
  });
  await setTimeout(after_ms);
  child.kill('SIGKILL');
  await ended;
  // A line that the kill cut off was confirmed all the same if its number is whole; the last line end says so.
  return Number(out.slice(0, out.lastIndexOf('\n')).split('\n').at(-1));
}

async function slotsOf(folder: string, { courseId, playerId }: Target): Promise<Map<string, string>> {
  const backend = taken(openBackend({ folder }));
  const ask = async (method: string, input: object) => taken(await (backend.call as Dispatch)(method, input));
  const notes = (await ask('listNotes', { courseId })) as Output<'listNotes'>;
  const pins = (await ask('listPins', { courseId, playerId })) as Output<'listPins'>;
  const course = (await ask('listCourses', {})) as Output<'listCourses'>;
  const player = (await ask('getPlayer', { playerId })) as Output<'getPlayer'>;
  const settings = (await ask('getSettings', {})) as Output<'getSettings'>;
  const { notes: said } = (await ask('getStartNotes', {})) as Output<'getStartNotes'>;
  await backend.close();
  if (said.length > 0) throw new Error(`the library was damaged: ${said.join(' ')}`);
  return new Map([
    ...notes.map(({ ref, text }) => [`note ${ref}`, text] as const),
    ...pins.map(({ ref, title }) => [`pin ${ref}`, title] as const),
    ['name', course.find(line => line.courseId === courseId)!.name],
    ['player', player.name],
    ['day', JSON.stringify(settings.day)],
  ]);
}
