import type { Day } from '../../core/air/day.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
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
  /** The same for equal settings, so that a worker knows libraries it has. */
  roundKey: string;
}>;
