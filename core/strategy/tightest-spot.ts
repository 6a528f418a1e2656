import type { ExactThrower } from './exact-thrower.ts';
import type { Lie } from './march.ts';
import type { ShotSpec } from './shots.ts';
import type { World } from './world.ts';

/** Where the middle of a shot comes closest to something over it. */
export type TightSpot = Readonly<{
  /** Along the flight's ground track from the lie. */
  station_m: number;
  /** Height of the flight above the ground there. */
  height_m: number;
  /** Free height under the crown or ceiling there. */
  free_m: number;
  /** free − height: negative when the middle of the flight is into it. */
  margin_m: number;
}>;

const FIRST_STATION_M = 3;
const NO_ROWS = new Float64Array(0);

/** The tightest place under crowns and ceilings for the middle of a shot, or null when nothing hangs over its way. */
export function tightestSpot(
  world: World,
  thrower: ExactThrower,
  shot: ShotSpec,
  lie: Lie,
  aim_deg: number,
): TightSpot | null {
  thrower.prepare(shot, lie, aim_deg);
  thrower.throwOnce(NO_ROWS, -1);
  const path = thrower.path();
  const r = world.raster;
  const sin = Math.sin((aim_deg * Math.PI) / 180);
  const cos = Math.cos((aim_deg * Math.PI) / 180);
  let worst: TightSpot | null = null;
  let station = 0;
  for (let i = 1; 3 * i < path.length; i++) {
    const from = 3 * (i - 1);
    const dx = path[from + 3] - path[from];
    const dy = path[from + 4] - path[from + 1];
    const run = Math.hypot(dx, dy);
    const steps = Math.max(1, Math.ceil(run));
    for (let j = 0; j < steps; j++) {
      const f = (j + 0.5) / steps;
      const along = station + f * run;
      if (along < FIRST_STATION_M) continue;
      const x = path[from] + f * dx;
      const y = path[from + 1] + f * dy;
      const z = lie.ground_m + path[from + 2] + f * (path[from + 5] - path[from + 2]);
      const east = lie.east_m + sin * x - cos * y;
      const north = lie.north_m + cos * x + sin * y;
      const column = Math.floor((east - r.x0_m) / r.cell_m);
      const row = Math.floor((north - r.y0_m) / r.cell_m);
      if (column < 0 || row < 0 || column >= r.columns || row >= r.rows) continue;
      const cell = row * r.columns + column;
      const height_m = z - r.ground_m[cell];
      // over the top of it is clear
      if (r.highDensity[cell] === 0 || height_m > r.highTop_m[cell]) continue;
      const margin_m = r.highBase_m[cell] - height_m;
      if (worst === null || margin_m < worst.margin_m)
        worst = { station_m: along, height_m, free_m: r.highBase_m[cell], margin_m };
    }
    station += run;
  }
  return worst;
}
