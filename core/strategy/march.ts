import { ZONE_HAZARD, ZONE_OUT_OF_BOUNDS } from '../geometry/obstacle-raster.ts';
import { CELL, CELL_STRIDE, cellTable } from './cell-table.ts';
import type { World } from './world.ts';

/** What became of one part of a throw. */
export const RESULT = { rest: 0, hit: 1, outOfBounds: 2, hazard: 3, mando: 4 } as const;

/** Where a throw starts: local metres, and the ground there above the tee's ground. */
export type Lie = Readonly<{ east_m: number; north_m: number; ground_m: number }>;

/**
 * The ends one flight path can come to, weighted: soft obstacles are integrated along the path, not sampled, so one path
 * gives the clear chance too. The arrays are reused by the next march; the first `count` entries are valid.
 */
export type Ends = {
  count: number;
  /** Next lie, local metres (out-of-bounds: where it was last in bounds; NaN when it never was, or a missed mando has no drop zone). */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Chances; they sum to 1. */
  readonly weight: Float64Array;
  /** Penalty throws. */
  readonly penalty: Float64Array;
  /** RESULT codes. */
  readonly kind: Uint8Array;
  /** Where it came to rest before any relief, for drawing and spread. */
  readonly restX: Float64Array;
  readonly restY: Float64Array;
  /** Chance that nothing was touched on the way. */
  clear: number;
};

export type Marcher = Readonly<{
  ends: Ends;
  /**
   * Walks a flight path over the hole: crowns, stems and ceilings stop part of it, a mando's plane ends it, the ground ends it,
   * then it skids, and the ground it lies on decides the penalty. Allocates nothing.
   * @param path - points `[along, left, up]` in the throw frame, up from the ground at the lie; `first` = index of the first number
   * @param skidX, skidY - skid in the throw frame: on level turf, or (when `exact`) as it really was
   * @param exact - the last point is the touchdown and the skid is final; else the ground is looked for along the path
   * @param levelRun_m - ground covered between two path points where the path meets the level: on a slope it lands faster or
   *   slower than there, and skids with the square of that; 0 when unknown
   */
  march(
    path: Float32Array,
    first: number,
    points: number,
    lie: Lie,
    sinAim: number,
    cosAim: number,
    skidX: number,
    skidY: number,
    exact: boolean,
    levelRun_m?: number,
  ): void;
}>;

const MOST_ENDS = 48;
/** A disc in the lie's own cell has room to leave it. */
const FREE_START_M = 1.5;
/** Steps through the raster: fine for answers, coarser for the many paths of a search. */
const EXACT_STEP_M = 1;
const SEARCH_STEP_M = 1.5;
const SKID_STEP_M = 1;
/** Hits within this length of path are one end. */
const MERGE_M = 3;
const LEAST_TRANSMISSION = 0.01;
/** A disc that hits something drops about this far before it. */
const KNOCK_BACK_M = 0.7;
const LONGEST_SKID_M = 40;
/** Landing this many times faster than on the level is taken as the most. */
const MOST_PACE = 2.5;
// Skid on other ground relative to turf, and sliding friction, in the order of SURFACES (see flight/ground-play).
const SKID_FACTOR = [0.55, 1, 1.9] as const;
const SLIDE_FRICTION = [1.6, 0.9, 0.5] as const;

/**
 * @source transmission along a ray: Beer–Lambert law; ends and penalties: Official Rules of Disc Golf 804.01, 806.02, 806.05
 * (texts of 2013–2025). A missed mando is called on entering the plane, so it comes before out-of-bounds (QA-APP-2).
 */
export function createMarcher(world: World): Marcher {
  const r = world.raster;
  const { cells, hasOutOfBounds } = cellTable(r);
  const mandos = world.mandos;
  const dropX = world.dropZone ? world.dropZone[0] : Number.NaN;
  const dropY = world.dropZone ? world.dropZone[1] : Number.NaN;
  const inverseCell = 1 / r.cell_m;
  const inverseBlock = inverseCell / r.blockCells;
  const columns = r.columns;
  const lastColumn = columns - 1;
  const lastRow = r.rows - 1;
  const column = () => new Float64Array(MOST_ENDS);
  const ends: Ends = {
    count: 0,
    x: column(),
    y: column(),
    weight: column(),
    penalty: column(),
    kind: new Uint8Array(MOST_ENDS),
    restX: column(),
    restY: column(),
    clear: 1,
  };

  // the walk's state
  let transmission = 1;
  let lastInX = Number.NaN;
  let lastInY = Number.NaN;
  let hitX = 0;
  let hitY = 0;
  let hitWeight = 0;
  let hitRun = 0;
  let east = 0;
  let north = 0;

  function cellIndex(e: number, n: number): number {
    let c = ((e - r.x0_m) * inverseCell) | 0;
    let w = ((n - r.y0_m) * inverseCell) | 0;
    c = c < 0 ? 0 : Math.min(c, lastColumn);
    w = w < 0 ? 0 : Math.min(w, lastRow);
    return w * columns + c;
  }

  function blockTop(e: number, n: number): number {
    let c = ((e - r.x0_m) * inverseBlock) | 0;
    let w = ((n - r.y0_m) * inverseBlock) | 0;
    c = c < 0 ? 0 : c >= r.blockColumns ? r.blockColumns - 1 : c;
    w = w < 0 ? 0 : w >= r.blockRows ? r.blockRows - 1 : w;
    return r.blockTop_m[w * r.blockColumns + c];
  }

  function push(
    x: number,
    y: number,
    weight: number,
    penalty: number,
    kind: number,
    restX: number,
    restY: number,
  ): void {
    if (ends.count === MOST_ENDS) {
      ends.weight[MOST_ENDS - 1] += weight;
      return;
    }
    const at = ends.count++;
    ends.x[at] = x;
    ends.y[at] = y;
    ends.weight[at] = weight;
    ends.penalty[at] = penalty;
    ends.kind[at] = kind;
    ends.restX[at] = restX;
    ends.restY[at] = restY;
  }

  function endAt(e: number, n: number, weight: number, kind: number): void {
    const zone = r.zone[cellIndex(e, n)];
    if (zone & ZONE_OUT_OF_BOUNDS) push(lastInX, lastInY, weight, 1, RESULT.outOfBounds, e, n);
    else if (zone & ZONE_HAZARD) push(e, n, weight, 1, RESULT.hazard, e, n);
    else push(e, n, weight, 0, kind, e, n);
  }

  function flushHits(): void {
    if (hitWeight > 0) endAt(hitX / hitWeight, hitY / hitWeight, hitWeight, RESULT.hit);
    hitX = 0;
    hitY = 0;
    hitWeight = 0;
    hitRun = 0;
  }

  function skidToRest(skidX: number, skidY: number, sinAim: number, cosAim: number, exact: boolean): void {
    let dx = sinAim * skidX - cosAim * skidY;
    let dy = cosAim * skidX + sinAim * skidY;
    let length = Math.sqrt(dx * dx + dy * dy);
    if (length > 1e-6) {
      if (!exact) {
        const surface = r.surface[cellIndex(east, north)];
        // uphill shortens, downhill lengthens: v²/2g(μ + slope)
        const reach = 4 / length;
        const ahead = r.ground_m[cellIndex(east + reach * dx, north + reach * dy)];
        const behind = r.ground_m[cellIndex(east - reach * dx, north - reach * dy)];
        const friction = SLIDE_FRICTION[surface];
        const grade = friction / Math.max(0.12, friction + (ahead - behind) / 8);
        const factor = Math.min(SKID_FACTOR[surface] * Math.min(4, grade), LONGEST_SKID_M / length);
        dx *= factor;
        dy *= factor;
        length *= factor;
      }
      const steps = Math.max(1, Math.ceil(length / SKID_STEP_M));
      const stepLength = length / steps;
      for (let j = 0; j < steps; j++) {
        const e = east + dx / steps;
        const n = north + dy / steps;
        const cell = cellIndex(e, n);
        if (mandos.length > 0 && crossesLow(east, north, e - east, n - north)) {
          push(dropX, dropY, transmission, 1, RESULT.mando, e, n);
          return;
        }
        if (r.lowTop_m[cell] > 0) {
          const stopped = transmission * (1 - Math.exp(-r.lowDensity[cell] * stepLength));
          if (stopped > 0.005) {
            endAt(east, north, stopped, RESULT.rest);
            transmission -= stopped;
          }
        }
        east = e;
        north = n;
        if ((r.zone[cell] & ZONE_OUT_OF_BOUNDS) === 0) {
          lastInX = e;
          lastInY = n;
        }
      }
    }
    endAt(east, north, transmission, RESULT.rest);
  }

  /** True when a skid along the ground enters the plane of a mando. */
  function crossesLow(e: number, n: number, de: number, dn: number): boolean {
    for (const m of mandos) if (m.low_m <= 0 && crossing(e, n, de, dn, m.ax, m.ay, m.bx, m.by) <= 1) return true;
    return false;
  }

  function normalise(): void {
    let sum = 0;
    for (let i = 0; i < ends.count; i++) sum += ends.weight[i];
    const inverse = 1 / sum;
    for (let i = 0; i < ends.count; i++) ends.weight[i] *= inverse;
  }

  function march(
    path: Float32Array,
    first: number,
    points: number,
    lie: Lie,
    sinAim: number,
    cosAim: number,
    skidX: number,
    skidY: number,
    exact: boolean,
    levelRun_m = 0,
  ): void {
    const lieEast = lie.east_m;
    const lieNorth = lie.north_m;
    const lieGround = lie.ground_m;
    transmission = 1;
    lastInX = Number.NaN;
    lastInY = Number.NaN;
    hitX = 0;
    hitY = 0;
    hitWeight = 0;
    hitRun = 0;
    ends.count = 0;
    let px = path[first];
    let py = path[first + 1];
    east = lieEast + sinAim * px - cosAim * py;
    north = lieNorth + cosAim * px + sinAim * py;
    let z = lieGround + path[first + 2];
    let flown = 0;
    const stepsPerM = 1 / (exact ? EXACT_STEP_M : SEARCH_STEP_M);
    let landed = false;
    let lastRun = 0;
    if ((r.zone[cellIndex(east, north)] & ZONE_OUT_OF_BOUNDS) === 0) {
      lastInX = east;
      lastInY = north;
    }
    for (let i = 1; i < points && !landed; i++) {
      const at = first + 3 * i;
      px = path[at];
      py = path[at + 1];
      const east1 = lieEast + sinAim * px - cosAim * py;
      const north1 = lieNorth + cosAim * px + sinAim * py;
      const z1 = lieGround + path[at + 2];
      const de = east1 - east;
      const dn = north1 - north;
      const dz = z1 - z;
      const run = Math.sqrt(de * de + dn * dn);
      lastRun = run;
      let share = 1;
      let missed = false;
      for (let k = 0; k < mandos.length; k++) {
        const m = mandos[k];
        const f = crossing(east, north, de, dn, m.ax, m.ay, m.bx, m.by);
        if (f <= share) {
          const h = z + f * dz - r.ground_m[cellIndex(east + f * de, north + f * dn)];
          if (h >= m.low_m && h <= m.high_m) {
            share = f;
            missed = true;
          }
        }
      }
      const lower = Math.min(z1, z);
      if (missed || run > 7 || lower <= blockTop(east, north)) {
        const steps = Math.max(1, Math.ceil(run * share * stepsPerM));
        const grow = share / steps;
        const length = Math.sqrt(run * run + dz * dz) * grow;
        const stepColumn = grow * de * inverseCell;
        const stepRow = grow * dn * inverseCell;
        const rise = grow * dz;
        let column = (east - r.x0_m) * inverseCell + 0.5 * stepColumn;
        let row = (north - r.y0_m) * inverseCell + 0.5 * stepRow;
        let up = z + 0.5 * rise;
        for (let j = 0; j < steps; j++, column += stepColumn, row += stepRow, up += rise) {
          let c = column | 0;
          let w = row | 0;
          c = c < 0 ? 0 : Math.min(c, lastColumn);
          w = w < 0 ? 0 : Math.min(w, lastRow);
          const cell = (w * columns + c) * CELL_STRIDE;
          const h = up - cells[cell];
          if (h <= 0 && !exact) {
            // back to the ground along the fall of this step
            const f = (j + 0.5) * grow;
            const back = rise < -1e-6 ? Math.min(1, h / rise) : 0;
            east += (f - back * grow) * de;
            north += (f - back * grow) * dn;
            landed = true;
            break;
          }
          flown += length;
          if (h < cells[cell + CELL.top] && flown > FREE_START_M) {
            let density = h < cells[cell + CELL.lowTop] ? cells[cell + CELL.lowDensity] : 0;
            if (h >= cells[cell + CELL.highBase] && h < cells[cell + CELL.highTop])
              density += cells[cell + CELL.highDensity];
            if (density > 0) {
              const f = (j + 0.5) * grow;
              const stopped = transmission * (1 - Math.exp(-density * length));
              const knock = run > 0 ? Math.min(KNOCK_BACK_M, flown) / run : 0;
              transmission -= stopped;
              hitX += stopped * (east + (f - knock) * de);
              hitY += stopped * (north + (f - knock) * dn);
              hitWeight += stopped;
            }
          }
          if (hitWeight > 0) {
            hitRun += length;
            if (hitRun >= MERGE_M || transmission < LEAST_TRANSMISSION) {
              flushHits();
              if (transmission < LEAST_TRANSMISSION) {
                ends.clear = 0;
                normalise();
                return;
              }
            }
          }
          if (hasOutOfBounds && (cells[cell + CELL.zone] & ZONE_OUT_OF_BOUNDS) === 0) {
            const f = (j + 0.5) * grow;
            lastInX = east + f * de;
            lastInY = north + f * dn;
          }
        }
      } else {
        lastInX = east1;
        lastInY = north1;
        flown += run;
      }
      if (landed) break;
      if (missed) {
        flushHits();
        push(dropX, dropY, transmission, 1, RESULT.mando, east + share * de, north + share * dn);
        ends.clear = transmission;
        normalise();
        return;
      }
      east = east1;
      north = north1;
      z = z1;
    }
    flushHits();
    ends.clear = transmission;
    const pace = levelRun_m > 0 && landed ? Math.min(MOST_PACE, lastRun / levelRun_m) : 1;
    skidToRest(skidX * pace * pace, skidY * pace * pace, sinAim, cosAim, exact);
    normalise();
  }

  return { ends, march };
}

/** Share of the way p → p + d at which it crosses a–b, or Infinity. */
function crossing(
  px: number,
  py: number,
  dx: number,
  dy: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): number {
  const ex = bx - ax;
  const ey = by - ay;
  const det = dx * ey - dy * ex;
  if (det === 0) return Number.POSITIVE_INFINITY;
  const f = ((ax - px) * ey - (ay - py) * ex) / det;
  const g = ((ax - px) * dy - (ay - py) * dx) / det;
  return f > 0 && f <= 1 && g >= 0 && g <= 1 ? f : Number.POSITIVE_INFINITY;
}
