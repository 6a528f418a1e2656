import { setImmediate } from 'node:timers/promises';
import fc from 'fast-check';
import { METHODS, type Method, type Output } from '../../../backend/api/contract/api.ts';
import type { Backend } from '../../../backend/api/open-backend.ts';
import type { PlanningDesk } from '../../../backend/planning/planning-desk.ts';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import type { FittedPlayer } from '../../../core/player/fitted-player.ts';
import { type PracticeHole, practiceHole } from '../../../core/practice/practice-hole.ts';
import { reviewHole } from '../../../core/review/review-hole.ts';
import { makeDayLibraries } from '../../../core/strategy/day-libraries.ts';
import { evaluateShot } from '../../../core/strategy/evaluate-shot.ts';
import { type PlannedHole, planHoleInFull } from '../../../core/strategy/plan-hole.ts';
import type { Result } from '../../../core/units/result.ts';
import { taken } from '../taken.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';
import { arbitraryInput, type Known } from './arbitrary-input.ts';

const HANGS_AFTER_ms = 30_000;

/**
 * Stands in for the planning threads, which would make a day's work of ten thousand plans: fits once for all, is quickly
 * done with a round and, as a thread can, fails with every second.
 */
export function quickDesk(): PlanningDesk {
  let fitted: FittedPlayer | undefined;
  let solved: PlannedHole | undefined;
  let played: PracticeHole | undefined;
  let rounds = 0;
  return {
    fit: async file => {
      fitted ??= fitPlayer(file);
      return fitted;
    },
    plan: async () => {
      if (++rounds % 2 === 0) throw new Error('the thread ended');
      return new Map();
    },
    quick: async () => null,
    headStart: async () => {},
    // One hole on one day answers for all; the shot is the caller's own.
    evaluate: async (map, { player, day, limits, drop_m, seed }, shot, against) => {
      solved ??= planHoleInFull({ map, libraries: makeDayLibraries(player, day, limits, drop_m, seed) });
      return evaluateShot(solved, shot, against) ?? null;
    },
    review: async (map, { player, day, limits, drop_m, seed }, hole) => {
      solved ??= planHoleInFull({ map, libraries: makeDayLibraries(player, day, limits, drop_m, seed) });
      return { review: reviewHole(map, solved, hole), stayingCost: null };
    },
    practice: async (map, { player, day, limits, drop_m, seed }, how) => {
      played ??= practiceHole({
        map,
        libraries: makeDayLibraries(player, day, limits, drop_m, seed),
        ...how,
        plays: 20,
        rounds: 5,
      });
      return { ...played, ref: map.ref };
    },
    ownBest: async ({ ref }) => ({ ref, expectedThrows: 3, shot: played!.shot }),
    close: async () => {},
  };
}

/** Puts a small course and player, a pin, a note and a change that can be taken back into the library. */
export async function knownOf({ call }: Pick<Backend, 'call'>): Promise<Known> {
  const ask = async (method: Method, input: object) => taken(await call(method, input));
  const [course, player] = [JSON.stringify(tinyCourse()), JSON.stringify(tinyPlayer())];
  const { courseId } = (await ask('importCourse', { fileName: 'a', text: course })) as Output<'importCourse'>;
  const { playerId } = (await ask('importPlayer', { fileName: 'b', text: player })) as Output<'importPlayer'>;
  const { undo } = (await ask('setNote', { courseId, ref: '1', text: 'x' })) as Output<'setNote'>;
  const round = {
    schema: 'roundwright/round@1' as const,
    date: '2026-05-01',
    holes: [
      {
        ref: '1',
        throws: [
          { discId: 'mid', rest: { toBasket_m: 5 } },
          { discId: 'putt', holed: true },
        ],
      },
    ],
  };
  const { roundId } = (await ask('saveRound', { courseId, playerId, round })) as Output<'saveRound'>;
  const library = JSON.stringify({ schema: 'roundwright/library@1', courses: [], players: [], pins: [], notes: [] });
  return {
    words: {
      courseId: [courseId],
      playerId: [playerId],
      changeId: [undo.changeId],
      roundId: [roundId],
      keys: ['1.1', '1.2'],
      planId: [],
      replaces: [],
      ref: ['1', '2'],
      focusRef: ['1', '2'],
      holes: ['1', '2'],
      discId: ['mid', 'throw'],
      discIds: ['mid', 'throw'],
      id: ['mid', 'throw', 'putt', 'new'],
      metar: ['METAR KBOS 010000Z 24010KT 10SM CLR 20/10 A3000'],
    },
    objects: {
      round: [round, { ...round, realDay: { wind: { speed_mps: 6, from_deg: 10 } } }],
      day: [{}, { wind: { speed_mps: 4, from_deg: 90, gust_mps: 7 } }],
      limits: [{}, { hands: ['backhand'] }],
      disc: [{ id: 'new', name: 'New one', speed: 7, glide: 5, turn: -1, fade: 2 }],
    },
    texts: [course, player, library, JSON.stringify(round)],
  };
}

/**
 * Calls one method with random input again and again.
 * @returns `wrong`, in words: a call that hung or rejected, an answer that is no result, a fault inside; `good`: how many
 * inputs were answered with a value
 */
export async function fuzzMethod(
  { call }: Pick<Backend, 'call'>,
  faults: readonly unknown[],
  known: Known,
  method: Method,
  runs: number,
  seed: number,
): Promise<{ wrong: string[]; good: number }> {
  let good = 0;
  const wrong: string[] = [];
  const before = faults.length;
  await fc
    .assert(
      fc.asyncProperty(arbitraryInput(method, known), async input => {
        const answer = await Promise.race([call(method, input), hang()]);
        // What a call leaves to be done later gets its turn.
        await setImmediate();
        if (answer !== HUNG && (answer as Result<unknown>).ok) good++;
        const complaint = answer === HUNG ? 'hangs' : complaintAbout(answer as Result<unknown>);
        if (complaint !== null) wrong.push(`${method}: ${complaint} for ${fc.stringify(input).slice(0, 300)}`);
        if (faults.length > before && wrong.length === 0)
          wrong.push(`${method}: ${String(faults[before])} for ${fc.stringify(input).slice(0, 300)}`);
        return wrong.length === 0;
      }),
      { numRuns: runs, seed, endOnFailure: true },
    )
    .catch(error => wrong.push(String(error).slice(0, 400)));
  return { wrong, good };
}

export const FUZZED: readonly Method[] = METHODS;

const HUNG = Symbol('hung');

function hang(): Promise<typeof HUNG> {
  return new Promise(resolve => setTimeout(() => resolve(HUNG), HANGS_AFTER_ms).unref());
}

function complaintAbout(answer: Result<unknown>): string | null {
  if (answer.ok === true) return 'value' in answer ? null : 'is good without a value';
  if (answer.ok !== false || !Array.isArray(answer.problems)) return 'is no result';
  if (answer.problems.length === 0) return 'is refused without a problem';
  const told = answer.problems.every(
    ({ path, message }) => typeof path === 'string' && path !== '' && typeof message === 'string' && message !== '',
  );
  return told ? null : `has a problem without path or message: ${JSON.stringify(answer.problems)}`;
}
