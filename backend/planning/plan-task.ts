import { createHash } from 'node:crypto';
import type { MessagePort } from 'node:worker_threads';
import type { Day } from '../../core/air/day.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import type { Attitude } from '../../core/strategy/attitude.ts';
import type { AskedShot } from '../../core/strategy/evaluate-shot.ts';
import type { HoleDrawing, ShotDrawing } from '../../core/strategy/hole-drawing.ts';
import type { HolePlan, ShotReport } from '../../core/strategy/plan-report.ts';
import type { HoleOptions } from '../../core/strategy/push-round.ts';
import type { Limits } from '../../core/strategy/shots.ts';

/** What all holes of one round share; a worker builds its shot libraries from it once. */
export type RoundSetting = Readonly<{
  player: FittedPlayer;
  day: Day;
  limits: Limits;
  /** How far below a lie the ground of the course can be. */
  drop_m: number;
  seed: number;
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
    /** Told the plan before the other winds are looked at (with `flips`). */
    early?: MessagePort;
  }>;
export type WindowHole = Readonly<{ plan: HolePlan; drawing: HoleDrawing }>;
export type WindowAnswer = WindowHole & Readonly<{ options: HoleOptions }>;

/** A first answer for another wind, on a hole the worker has solved. */
export type QuickTask = Readonly<{ holeKey: string; day: Day }>;

/** One shot of the player's own choosing; `against`: what its cost is counted against, the plan's choice when left out. */
export type ShotTask = Omit<WindowTask, 'early'> & Readonly<{ shot: AskedShot; against?: AskedShot }>;
export type ShotAnswer = Readonly<{ shot: ShotReport; drawing: ShotDrawing }>;

/** Libraries hold the throws of a day in every wind direction: where it blows from does not change them. */
export function libraryKey({ player, day, limits, drop_m, seed }: RoundSetting): string {
  const { from_deg: _, ...wind } = day.wind;
  return digest({ player, density_kgpm3: day.density_kgpm3, wind, limits, drop_m, seed });
}

/** The same for the same hole in the same round, played with the same attitude. */
export function solvedKey(map: HoleMap, round: RoundSetting, attitude?: Attitude): string {
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
