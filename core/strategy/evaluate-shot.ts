import { specialOf } from '../player/fitted-player.ts';
import { type Candidate, type Choice, TEE_EFFORT } from './choose-shot.ts';
import { isSpecialShape } from './flown-as.ts';
import { drawShot, type ShotDrawing } from './hole-drawing.ts';
import type { SolvedHole } from './hole-solver.ts';
import type { Lie } from './march.ts';
import type { HolePlan, ShotReport } from './plan-report.ts';
import { shotOutcome } from './shot-outcome.ts';
import { shotReport } from './shot-report.ts';
import type { ShotSpec } from './shots.ts';
import { valueAt } from './value-field.ts';

/** A shot off the tee as a player asks for it. */
export type AskedShot = Omit<ShotSpec, 'throwIndex'> &
  Readonly<{ discId: string; hand: 'backhand' | 'forehand'; aimBearing_deg: number }>;

const TEE: Lie = { east_m: 0, north_m: 0, ground_m: 0 };

/**
 * What a tee shot of the player's own choosing comes to, with the best play after it, on the samples the plan answered on.
 * @param against - the shot its cost is counted against; the plan's choice when left out
 * @returns undefined when the player has no such disc from that hand, or has not measured it as a roller or an overhead throw
 */
export function evaluateShot(
  { solved, choice, plan }: Readonly<{ solved: SolvedHole; choice: Choice; plan: HolePlan }>,
  asked: AskedShot,
  against?: AskedShot,
): Readonly<{ shot: ShotReport; drawing: ShotDrawing }> | undefined {
  const candidate = candidateOf(solved, asked);
  const best = against === undefined ? choice.best : candidateOf(solved, against);
  if (candidate === undefined || best === undefined) return undefined;
  const place = {
    fromTee: true,
    toBasket_m: plan.length_m,
    toBasket_deg: plan.bearing_deg,
    tailwind: plan.headwind_mps < -2,
  };
  return {
    shot: shotReport(solved.table, candidate, best, place),
    drawing: drawShot(solved.table, candidate.shot, TEE, candidate.aim_deg),
  };
}

function candidateOf({ table }: SolvedHole, asked: AskedShot): Candidate | undefined {
  const { discId, hand, aimBearing_deg, ...line } = asked;
  const throwIndex = table.player.throws.findIndex(t => t.discId === discId && t.hand === hand);
  if (throwIndex === -1) return undefined;
  if (isSpecialShape(line.shape) && specialOf(table.player.throws[throwIndex], line.shape) === null) return undefined;
  const shot: ShotSpec = { ...line, throwIndex };
  const aim_deg = ((aimBearing_deg % 360) + 360) % 360;
  const replayValue = valueAt(table.field, TEE.east_m, TEE.north_m);
  return {
    shot,
    aim_deg,
    outcome: shotOutcome(
      table.thrower,
      table.field,
      shot,
      TEE,
      aim_deg,
      table.answerNormals,
      0,
      TEE_EFFORT.answerRows,
      table.world.dropZone,
      replayValue,
    ),
  };
}
