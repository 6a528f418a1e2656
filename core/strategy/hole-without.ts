import type { Candidate } from './choose-shot.ts';
import { type Constraint, worldWithout } from './constraint.ts';
import { createExactThrower, PLAN_STEP_S } from './exact-thrower.ts';
import { kindOf } from './flown-as.ts';
import type { SolvedHole } from './hole-solver.ts';
import { landingValues } from './landing-value.ts';
import { createMarcher, type Lie } from './march.ts';
import { marchPromising } from './march-promising.ts';
import { createShotMarcher } from './shot-marcher.ts';
import { shotOutcome } from './shot-outcome.ts';
import type { ShotSpec } from './shots.ts';
import { addPath, expectedOf, resetThrowValue, type ThrowValue } from './throw-value.ts';
import { valueAt } from './value-field.ts';
import { windBins } from './wind-bins.ts';

const DEGREE = Math.PI / 180;
/** Aims looked along, from the line to the basket. */
const AIMS = Array.from({ length: 17 }, (_, i) => 6 * (i - 8));
/** Lines looked at with the library's samples, then flown, and the samples they are flown with. */
const SECOND_LIST = 10;
const FLOWN = 2;
const FLOWN_ROWS = 8;
/** Rows of the answer's own samples: a paired comparison needs no more to tell 0.05 throws. */
export const WITHOUT_ROWS = 48;

/** A hole from which one constraint was taken away, ready to be asked for a disc's best line. */
export type HoleWithout = Readonly<{
  /** The most promising lines there of a shot's disc and kind (flat, roller, overhead), by the library's few samples. */
  shortlist(shot: ShotSpec): readonly Line[];
  /** The best of a shot and some lines, answered on the first rows of the samples the plan answers on; later lies keep their values. */
  bestLine(candidate: Candidate, lines: readonly Line[]): Candidate;
  /** The same line there, on `rows` samples. */
  sameLine(candidate: Candidate, rows: number): Candidate;
}>;

/**
 * @param constraint - null: the hole as it is, searched in the same way, to compare with
 * @param lie - where the shots are thrown from
 */
export function holeWithout(solved: SolvedHole, constraint: Constraint | null, lie: Lie): HoleWithout {
  const { table, air } = solved;
  const { field, player, thrower: real } = table;
  const world = constraint === null ? solved.world : worldWithout(solved.world, constraint);
  const calm = constraint === 'wind';
  const bins = calm ? windBins({ ...table.bins.library, ringSpeed_mps: 0 }, 0, 0) : table.bins;
  const marcher = createMarcher(world);
  const shotMarcher = createShotMarcher(world, bins, marcher, player);
  const still = { speed_mps: 0, speedSd_mps: 0, directionSd_deg: 0 };
  const thrower = createExactThrower(
    world,
    player,
    calm ? { ...air, scatter: still } : air,
    real.flier,
    marcher,
    PLAN_STEP_S,
  );
  const [dropX, dropY] = world.dropZone ?? [Number.NaN, Number.NaN];
  const lieValue = valueAt(field, lie.east_m, lie.north_m);
  const running: ThrowValue = { paths: 0, sum: 0, replay: 0, lieValue };
  const toBasket = Math.atan2(field.basket[0] - lie.east_m, field.basket[1] - lie.north_m) / DEGREE;

  function flown(shot: ShotSpec, aim_deg: number): number {
    resetThrowValue(running);
    thrower.prepare(shot, lie, aim_deg);
    thrower.throwRows(table.searchNormals, 0, FLOWN_ROWS, () => addPath(running, thrower.ends, field, dropX, dropY, 0));
    return expectedOf(running);
  }

  function answered(shot: ShotSpec, aim_deg: number, rows: number): Candidate {
    const replayValue = valueAt(field, lie.east_m, lie.north_m);
    const outcome = shotOutcome(
      thrower,
      field,
      shot,
      lie,
      aim_deg,
      table.answerNormals,
      0,
      rows,
      world.dropZone,
      replayValue,
    );
    return { shot, aim_deg, outcome };
  }

  /** All lines of the disc by their middle, the best again with the library's samples. */
  function shortlist(like: ShotSpec): readonly Line[] {
    const kind = kindOf(like, player.throws.length);
    const { shots, samples } = bins.library;
    const marched = (shot: number, aim_deg: number, to: number) => {
      resetThrowValue(running);
      shotMarcher.add(shot, 0, to, lie, aim_deg, field, running);
      return expectedOf(running);
    };
    const aims = AIMS.map(turn_deg => toBasket + turn_deg);
    const own = shots.flatMap((shot, i) => (kindOf(shot, player.throws.length) === kind ? [i] : []));
    const bounds = new Float64Array(own.length * aims.length);
    landingValues(world, bins, field, lie, own, aims, Number.POSITIVE_INFINITY, bounds);
    const promising = marchPromising({
      shots: own.length,
      aims: aims.length,
      bounds,
      score: (shot, aim) => marched(own[shot], aims[aim], 1),
      most: SECOND_LIST,
      perGroup: 0,
      groupOf: () => 0,
      groups: 1,
    });
    const second = promising.slice(0, SECOND_LIST).map(pair => {
      const [shot, aim_deg] = [own[pair.shot], aims[pair.aim]];
      return { shot, aim_deg, score: marched(shot, aim_deg, samples) };
    });
    second.sort((a, b) => a.score - b.score);
    return second.slice(0, FLOWN).map(line => ({ ...line, shot: shots[line.shot] }));
  }

  const scored = ({ shot, aim_deg }: Aimed): Line => ({ shot, aim_deg, score: flown(shot, aim_deg) });
  return {
    shortlist,
    sameLine: (candidate, rows) => answered(candidate.shot, candidate.aim_deg, rows),
    bestLine(candidate, lines) {
      const first = leastOf([candidate, ...lines].map(scored));
      const best = leastOf([first, ...neighbours(first).map(scored)]);
      return answered(best.shot, best.aim_deg, WITHOUT_ROWS);
    },
  };
}

type Aimed = Readonly<{ shot: ShotSpec; aim_deg: number }>;
export type Line = Aimed & Readonly<{ score: number }>;

const leastOf = (lines: readonly Line[]): Line => lines.reduce((a, b) => (b.score < a.score ? b : a));

function neighbours({ shot, aim_deg }: Aimed): Aimed[] {
  const around: Aimed[] = [-3, 3].map(turn_deg => ({ shot, aim_deg: aim_deg + turn_deg }));
  for (const power of [shot.power - 0.04, shot.power + 0.04])
    if (power > 0.2 && power <= 1) around.push({ shot: { ...shot, power }, aim_deg });
  return around;
}
