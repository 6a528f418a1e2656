import { ZONE_OUT_OF_BOUNDS } from '../geometry/obstacle-raster.ts';
import { CELL, CELL_STRIDE, cellTable } from './cell-table.ts';
import { createEndList, type Ends, RESULT } from './end-list.ts';
import { createHoleOut, type Spread } from './hole-out.ts';
import { createRollPath, type RollOff, type RollPath } from './roll-path.ts';
import type { World } from './world.ts';

export { CHOICE, type Ends, RESULT } from './end-list.ts';

/** Where a throw starts: local metres, and the ground there above the tee's ground. */
export type Lie = Readonly<{ east_m: number; north_m: number; ground_m: number }>;

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
   * @param spread - the flight's place in its throw's scatter, for the chance that it goes in; without it nothing is holed
   * @param rollsOff - a roller: rolls from where it comes down, instead of the skid; then only what stands on the ground stops it,
   *   out-of-bounds ground takes it (water, or whatever is beyond the line: assumed), and `clear` counts the roll too
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
    spread?: Spread,
    rollsOff?: RollOff,
  ): void;
  /** The last roll; of an exact one, to where it would have come to rest with nothing in the way. */
  rolled: RollPath;
}>;

/** A disc in the lie's own cell has room to leave it. */
const FREE_START_M = 1.5;
/** Steps through the raster: fine for answers, coarser for the many paths of a search. */
const EXACT_STEP_M = 1;
const SEARCH_STEP_M = 1.5;
const SKID_STEP_M = 1;
/** Hits within this length of path are one end. */
const MERGE_M = 3;
const LEAST_TRANSMISSION = 0.01;
/** A flight that strikes the basket less often than this is taken to miss it: two more ends are not worth their time. */
const LEAST_STRIKE = 5e-5;
/** A disc that hits something drops about this far before it. */
const KNOCK_BACK_M = 0.7;
const LONGEST_SKID_M = 40;
/** Landing this many times faster than on the level is taken as the most. */
const MOST_PACE = 2.5;
// Skid on other ground relative to turf, and sliding friction, in the order of SURFACES (see flight/ground-play).
const SKID_FACTOR = [0.55, 1, 1.9] as const;
const SLIDE_FRICTION = [1.6, 0.9, 0.5] as const;

/**
 * @source transmission along a ray: Beer–Lambert law; ends and penalties: Official Rules of Disc Golf 804.01, 805.03, 806.02,
 * 806.05 (texts of 2013–2025). A missed mando is called on entering the plane, so it comes before out-of-bounds (QA-APP-2).
 */
export function createMarcher(world: World): Marcher {
  const r = world.raster;
  const { cells, hasOutOfBounds } = cellTable(r);
  const mandos = world.mandos;
  const holeOut = createHoleOut(world);
  const list = createEndList(world);
  const { ends } = list;
  const inverseCell = 1 / r.cell_m;
  const inverseBlock = inverseCell / r.blockCells;
  const lastBlockColumn = r.blockColumns - 1;
  const lastBlockRow = r.blockRows - 1;
  let isOutside = 0;
  const columns = r.columns;
  const lastColumn = columns - 1;
  const lastRow = r.rows - 1;
  const rolled = createRollPath(r);

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

  /**
   * True when nothing can be met on the straight way between two points no lower than `lower`: over all blocks it can touch.
   * Leaves in `isOutside` whether that is over out-of-bounds.
   */
  function isFree(e: number, n: number, toEast: number, toNorth: number, lower: number): boolean {
    const column = blockAlong(e - r.x0_m, lastBlockColumn);
    const row = blockAlong(n - r.y0_m, lastBlockRow);
    const from = row * r.blockColumns + column;
    if (lower <= r.blockTop_m[from]) return false;
    isOutside = r.blockOut[from];
    const toColumn = blockAlong(toEast - r.x0_m, lastBlockColumn);
    const toRow = blockAlong(toNorth - r.y0_m, lastBlockRow);
    const columnsOn = toColumn - column;
    const rowsOn = toRow - row;
    if (columnsOn === 0 && rowsOn === 0) return true;
    if (columnsOn > 1 || columnsOn < -1 || rowsOn > 1 || rowsOn < -1) return false;
    if (!isLike(from + rowsOn * r.blockColumns + columnsOn, lower)) return false;
    if (columnsOn === 0 || rowsOn === 0) return true;
    return isLike(from + columnsOn, lower) && isLike(from + rowsOn * r.blockColumns, lower);
  }

  function isLike(block: number, lower: number): boolean {
    return lower > r.blockTop_m[block] && r.blockOut[block] === isOutside;
  }

  function blockAlong(offset_m: number, last: number): number {
    const block = (offset_m * inverseBlock) | 0;
    return block < 0 ? 0 : Math.min(block, last);
  }

  function endAt(e: number, n: number, weight: number, kind: number): void {
    list.endAt(e, n, weight, kind, lastInX, lastInY);
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
          list.missedMando(transmission, e, n);
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

  function rollToRest(rollsOff: RollOff, sinAim: number, cosAim: number, exact: boolean): void {
    rolled.start(rollsOff, east, north, sinAim, cosAim, exact);
    let isOver = false;
    while (!isOver && rolled.roll()) {
      const { east: e, north: n } = rolled;
      const cell = cellIndex(e, n);
      if (mandos.length > 0 && crossesLow(east, north, e - east, n - north)) {
        flushHits();
        list.missedMando(transmission, e, n);
        ends.clear = transmission;
        transmission = 0;
        isOver = true;
      } else {
        if (r.lowTop_m[cell] > 0 && r.lowDensity[cell] > 0) {
          const stopped = transmission * (1 - Math.exp(-r.lowDensity[cell] * rolled.step_m));
          hitX += stopped * east;
          hitY += stopped * north;
          hitWeight += stopped;
          transmission -= stopped;
        }
        if (hitWeight > 0) {
          hitRun += rolled.step_m;
          if (hitRun >= MERGE_M || transmission < LEAST_TRANSMISSION) flushHits();
        }
        east = e;
        north = n;
        if (r.zone[cell] & ZONE_OUT_OF_BOUNDS) isOver = true;
        else {
          lastInX = e;
          lastInY = n;
        }
        if (transmission < LEAST_TRANSMISSION) isOver = true;
      }
    }
    if (exact) while (rolled.roll());
    if (transmission === 0) return;
    flushHits();
    ends.clear = transmission < LEAST_TRANSMISSION ? 0 : transmission;
    if (ends.clear > 0) endAt(east, north, transmission, RESULT.rest);
  }

  /** True when a skid along the ground enters the plane of a mando. */
  function crossesLow(e: number, n: number, de: number, dn: number): boolean {
    for (const m of mandos) if (m.low_m <= 0 && crossing(e, n, de, dn, m.ax, m.ay, m.bx, m.by) <= 1) return true;
    return false;
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
    spread?: Spread,
    rollsOff?: RollOff,
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
      if (missed || hitWeight > 0 || !isFree(east, north, east1, north1, lower)) {
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
                list.normalise();
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
        if (hasOutOfBounds && !landed && !missed && (r.zone[cellIndex(east1, north1)] & ZONE_OUT_OF_BOUNDS) === 0) {
          lastInX = east1;
          lastInY = north1;
        }
      } else {
        if (isOutside === 0) {
          lastInX = east1;
          lastInY = north1;
        }
        flown += run;
      }
      if (landed) break;
      if (missed) {
        flushHits();
        list.missedMando(transmission, east + share * de, north + share * dn);
        ends.clear = transmission;
        list.normalise();
        return;
      }
      east = east1;
      north = north1;
      z = z1;
    }
    flushHits();
    ends.clear = transmission;
    if (rollsOff !== undefined) {
      rollToRest(rollsOff, sinAim, cosAim, exact);
      list.normalise();
      return;
    }
    const landedEast = east;
    const landedNorth = north;
    const pace = levelRun_m > 0 && landed ? Math.min(MOST_PACE, lastRun / levelRun_m) : 1;
    skidToRest(skidX * pace * pace, skidY * pace * pace, sinAim, cosAim, exact);
    list.normalise();
    if (spread === undefined) return;
    const struck =
      ends.clear * holeOut.struck(path, first, points, lie, sinAim, cosAim, landedEast, landedNorth, spread);
    if (struck > LEAST_STRIKE) list.strikeBasket(struck, holeOut.stays(), lieEast, lieNorth);
  }

  return { ends, march, rolled };
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
