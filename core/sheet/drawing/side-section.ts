import type { HoleMap, LocalPoint } from '../../geometry/hole-map.ts';
import { rasterize } from '../../geometry/rasterize.ts';
import { groundHeight } from '../../geometry/terrain.ts';
import type { ShotDrawing } from '../../strategy/hole-drawing.ts';
import type { ShotReport } from '../../strategy/plan-report.ts';

/** What stands over and under a throw, every metre along its aim; heights above the tee's ground. */
export type SideSection = Readonly<{
  step_m: number;
  stations: readonly SectionStation[];
}>;

export type SectionStation = Readonly<{
  along_m: number;
  ground_m: number;
  /** From the ground up, or null. */
  low: Readonly<{ top_m: number; solid: boolean }> | null;
  /** Crowns and ceilings. */
  high: Readonly<{ base_m: number; top_m: number }> | null;
  /** The middle of the flight, while it is in the air and drawn. */
  flight_m: number | null;
}>;

const STEP_M = 1;
const PAST_M = 12;
const DEGREE = Math.PI / 180;
/** Hits per metre from which low things count as closed, not as stems. */
const SOLID_PER_M = 0.8;

/** The section under the flight where it is known, else under the aim. */
export function sideSection(map: HoleMap, shot: ShotReport, flown: ShotDrawing | undefined): SideSection {
  const [sin, cos] = [Math.sin(shot.aimBearing_deg * DEGREE), Math.cos(shot.aimBearing_deg * DEGREE)];
  const raster = rasterize(map);
  const track = (flown?.path ?? []).map(([east, north, up]) => ({
    along_m: east * sin + north * cos,
    left_m: north * sin - east * cos,
    up_m: up,
  }));
  const count = Math.ceil((shot.distance_m + PAST_M) / STEP_M);
  let next = 0;
  const stations = Array.from({ length: count + 1 }, (_, i): SectionStation => {
    const along_m = i * STEP_M;
    while (next < track.length && track[next]!.along_m < along_m) next++;
    const flight = between(track, next, along_m);
    const left_m = flight?.left_m ?? track.at(-1)?.left_m ?? 0;
    const at: LocalPoint = [along_m * sin - left_m * cos, along_m * cos + left_m * sin];
    const ground_m = groundHeight(map.terrain, at[0], at[1]);
    const column = Math.floor((at[0] - raster.x0_m) / raster.cell_m);
    const row = Math.floor((at[1] - raster.y0_m) / raster.cell_m);
    const outside = column < 0 || row < 0 || column >= raster.columns || row >= raster.rows;
    const k = row * raster.columns + column;
    const lowTop_m = outside ? 0 : raster.lowTop_m[k]!;
    const highTop_m = outside ? 0 : raster.highTop_m[k]!;
    return {
      along_m,
      ground_m,
      low: lowTop_m > 0 ? { top_m: ground_m + lowTop_m, solid: raster.lowDensity[k]! >= SOLID_PER_M } : null,
      high: highTop_m > 0 ? { base_m: ground_m + raster.highBase_m[k]!, top_m: ground_m + highTop_m } : null,
      flight_m: flight === null ? null : flight.up_m,
    };
  });
  return { step_m: STEP_M, stations };
}

type TrackPoint = Readonly<{ along_m: number; left_m: number; up_m: number }>;

/** Linear between the track points round a station; null past its end or where it flies back. */
function between(track: readonly TrackPoint[], next: number, along_m: number): TrackPoint | null {
  const b = track[next];
  if (b === undefined) return null;
  const a = track[next - 1];
  if (a === undefined || b.along_m === a.along_m) return b;
  const t = (along_m - a.along_m) / (b.along_m - a.along_m);
  return { along_m, left_m: a.left_m + t * (b.left_m - a.left_m), up_m: a.up_m + t * (b.up_m - a.up_m) };
}

/** Where the flight comes closest under something over it. */
export type TightPlace = Readonly<{ along_m: number; flight_m: number; base_m: number }>;

const FIRST_M = 3;
/** More room than this needs no mark. */
const AMPLE_M = 5;

export function tightPlace({ stations }: SideSection): TightPlace | null {
  let worst: TightPlace | null = null;
  for (const { along_m, high, flight_m } of stations) {
    if (high === null || flight_m === null || along_m < FIRST_M || flight_m > high.top_m) continue;
    const margin_m = high.base_m - flight_m;
    if (margin_m > AMPLE_M || (worst !== null && margin_m >= worst.base_m - worst.flight_m)) continue;
    worst = { along_m, flight_m, base_m: high.base_m };
  }
  return worst;
}
