import { nearestStation } from '../../core/geometry/along-line.ts';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import { distance_m, lineLength_m } from '../../core/geometry/line-length.ts';
import { besideLine, stations } from './beside-line.ts';
import type { HolePlan } from './hole-plan.ts';

/** How a wood stands along one side of a hole. */
export type WoodEdge = Readonly<{
  side: 'left' | 'right';
  /** Distance of its edge from the line of play, by station. */
  edge_m: (station_m: number) => number;
  /** How far it reaches back from its edge where nothing else is in the way. */
  depth_m: number;
  from_m: number;
  to_m: number;
}>;

const STEP_M = 5;
/** A wood stands at least this far from tees and baskets of other holes, and no nearer to their lines than to its own. */
const CLEARING_M = 9;
const LEAST_DEPTH_M = 3;
const LEAST_STEP_M = 1;

/**
 * The wood as rings (not closed), broken where there is no room for it.
 * @param others - the other holes of the course
 * @param isFree - where a wood may stand at all
 */
export function woodsBeside(
  hole: HolePlan,
  others: readonly HolePlan[],
  edge: WoodEdge,
  isFree: (p: LocalPoint) => boolean,
): LocalPoint[][] {
  const sign = edge.side === 'left' ? 1 : -1;
  const hasRoom = (p: LocalPoint, offset_m: number) => {
    const own_m = nearestStation(hole.line, p).distance_m;
    // inside a bend the offsets meet: past there the ring would cross itself
    if (own_m < 0.85 * offset_m || !isFree(p)) return false;
    return others.every(other => {
      const ends_m = Math.min(distance_m(other.line[0]!, p), distance_m(other.line.at(-1)!, p));
      return ends_m > CLEARING_M && nearestStation(other.line, p).distance_m > own_m + 0.5;
    });
  };
  const depthAt = (s: number) => {
    let depth_m = 0;
    for (; depth_m < edge.depth_m; depth_m += 1) {
      const offset_m = edge.edge_m(s) + depth_m + 1;
      if (!hasRoom(besideLine(hole.line, s, sign * offset_m), offset_m)) break;
    }
    return depth_m;
  };
  const rings: LocalPoint[][] = [];
  let run: number[] = [];
  const close = () => {
    if (run.length >= 3)
      rings.push(
        ringOf(
          hole,
          run,
          s => sign * edge.edge_m(s),
          s => sign * (edge.edge_m(s) + depthAt(s)),
        ),
      );
    run = [];
  };
  for (const s of stations(edge.from_m, Math.min(edge.to_m, lineLength_m(hole.line) + 6), STEP_M)) {
    if (depthAt(s) >= LEAST_DEPTH_M) run.push(s);
    else close();
  }
  close();
  return rings;
}

/** Along the edge and back along the far side; far points that would step backwards (inside a bend) are left out. */
function ringOf(
  hole: HolePlan,
  run: readonly number[],
  near_m: (s: number) => number,
  far_m: (s: number) => number,
): LocalPoint[] {
  const near = run.map(s => besideLine(hole.line, s, near_m(s)));
  const far: LocalPoint[] = [];
  for (const s of run) {
    const p = besideLine(hole.line, s, far_m(s));
    const [before, after] = [besideLine(hole.line, s - 1, 0), besideLine(hole.line, s + 1, 0)];
    const last = far.at(-1);
    const ahead_m = last && ((p[0] - last[0]) * (after[0] - before[0]) + (p[1] - last[1]) * (after[1] - before[1])) / 2;
    if (ahead_m === undefined || ahead_m > LEAST_STEP_M) far.push(p);
  }
  return [...near, ...far.toReversed()];
}
