import { createHash } from 'node:crypto';
import type { MessagePort } from 'node:worker_threads';
import type { Day } from '../../core/air/day.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import type { AllowedThrows } from '../../core/practice/practice-limit.ts';
import type { HoleReview } from '../../core/review/review-report.ts';
import type { RoundHole } from '../../core/review/round-file.ts';
import type { Attitude } from '../../core/strategy/attitude.ts';
import type { AskedShot } from '../../core/strategy/evaluate-shot.ts';
import type { HoleDrawing, ShotDrawing } from '../../core/strategy/hole-drawing.ts';
import type { HolePlan, ShotReport } from '../../core/strategy/plan-report.ts';
import type { HoleOptions } from '../../core/strategy/push-round.ts';
import type { Limits } from '../../core/strategy/shots.ts';
import { windScatterOf } from '../../core/strategy/throw-samples.ts';
import { ringSpeed_mps } from '../../core/strategy/trajectory-library.ts';
import type { SharedDay } from './shared-day.ts';

/** What all holes of one round share; a worker builds its shot libraries from it once. */
export type RoundSetting = Readonly<{
  player: FittedPlayer;
  day: Day;
  limits: Limits;
  /** How far below a lie the ground of the course can be. */
  drop_m: number;
  seed: number;
  /** Memory the threads share for the flights; a thread that is given none keeps its own. */
  shared?: SharedDay;
}>;

/** One hole's message to a worker; plain data, checked before it was sent. */
export type PlanTask = Readonly<{
  map: HoleMap;
  round: RoundSetting;
  /** The same for settings with the same libraries, so that a worker knows those it has. */
  libraryKey: string;
  /** The fewest expected throws when left out. */
  attitude?: Attitude;
  /** Also look what other winds would choose. */
  flips?: boolean;
  /** Also value the next throws with every disc. */
  bag?: boolean;
}>;

/** A hole's plan with the chances of scores of its shots, to allot a target with. */
export type PlanWithOptions = Readonly<{ plan: HolePlan; options: HoleOptions }>;

/** A hole for the window: kept solved in the worker, given up when `stop[0]` is 1 before it begins. */
export type WindowTask = PlanTask &
  Readonly<{
    solvedKey: string;
    holeKey: string;
    stop: Int32Array;
    /** Options also for who takes a risk, to allot a round's target with. */
    risks?: boolean | undefined;
    /** Told the plan before the other winds are looked at (with `flips`). */
    early?: MessagePort;
  }>;
export type WindowHole = Readonly<{ plan: HolePlan; drawing: HoleDrawing }>;
export type WindowAnswer = WindowHole & Readonly<{ options: HoleOptions }>;

/** A first answer for another wind, on a hole the worker has solved. */
export type QuickTask = Readonly<{ holeKey: string; day: Day; attitude?: Attitude | undefined }>;

/** One shot of the player's own choosing; `against`: what its cost is counted against, the plan's choice when left out. */
export type ShotTask = Omit<WindowTask, 'early'> & Readonly<{ shot: AskedShot; against?: AskedShot }>;
export type ShotAnswer = Readonly<{ shot: ShotReport; drawing: ShotDrawing }>;

/** A hole as it was thrown, to be judged in the round's wind; `staying`: a tee shot whose cost in that wind is asked too. */
export type ReviewTask = Omit<WindowTask, 'early'> & Readonly<{ hole: RoundHole; staying?: AskedShot }>;
export type ReviewAnswer = Readonly<{ review: HoleReview; stayingCost: number | null }>;

/** A hole of a practice round: planned under the round's limits, then played over and over. */
export type PracticeTask = PlanTask &
  Readonly<{ stop: Int32Array; shapes?: AllowedThrows['shapes']; plays: number; rounds: number }>;
/** The best tee shot of a hole, to measure a limit against. */
export type OwnBestTask = PlanTask & Readonly<{ stop: Int32Array }>;

type KeyedRound = Omit<RoundSetting, 'shared'>;

/** Flights serve every wind of about one speed, wherever it blows from. */
export function libraryKey({ player, day, limits, drop_m, seed }: KeyedRound): string {
  const ring_mps = ringSpeed_mps(windScatterOf(day));
  return digest({ player, density_kgpm3: day.density_kgpm3, ring_mps, limits, drop_m, seed });
}

/** The same for days whose flights are bent by the same wind, wherever it blows from. */
export function windKey(round: KeyedRound): string {
  return digest({ flights: libraryKey(round), wind: windScatterOf(round.day) });
}

/** The same for the same hole in the same round, played with the same attitude. */
export function solvedKey(map: HoleMap, { shared: _, ...round }: RoundSetting, attitude?: Attitude): string {
  return digest({ map: plain(map), round, attitude });
}

/** The same for the same hole in the same round, whatever the wind. */
export function holeKey(map: HoleMap, { player, day, limits, drop_m, seed }: RoundSetting): string {
  return digest({ map: plain(map), player, density_kgpm3: day.density_kgpm3, limits, drop_m, seed });
}

/** Typed arrays as plain ones: JSON would write them with an index beside each number. */
const plain = (map: HoleMap) => ({ ...map, terrain: { ...map.terrain, height_m: [...map.terrain.height_m] } });

function digest(value: unknown): string {
  return createHash('sha256').update(JSON.stringify(value)).digest('hex');
}
