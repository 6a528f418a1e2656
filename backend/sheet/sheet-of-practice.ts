import type { HoleMap } from '../../core/geometry/hole-map.ts';
import type { PracticeReport, PracticeRound } from '../../core/practice/practice-report.ts';
import type { TeedHole } from '../../core/practice/practice-round.ts';
import { practiceSheetHtml } from '../../core/sheet/practice-sheet.ts';
import type { Paper } from '../../core/sheet/sheet-input.ts';
import type { UnitsChoice } from '../../core/units/units-choice.ts';

export type PlayedHole = TeedHole & Readonly<{ map: HoleMap }>;

/**
 * The sheet of one practice round.
 * @param played - the round's holes as they were simulated, in the same order
 */
export function sheetOfPractice(
  report: Pick<PracticeReport, 'player' | 'limitWords' | 'air'>,
  round: PracticeRound,
  played: readonly PlayedHole[],
  form: Readonly<{ paper?: Paper; units: UnitsChoice }>,
): string {
  const { course, par, expectedThrows, target, drills, cautions } = round;
  return practiceSheetHtml({
    ...report,
    course,
    par,
    expectedThrows,
    target,
    drills,
    cautions,
    holes: round.holes.map((hole, i) => {
      const seen = played[i];
      if (seen === undefined || seen.hole.ref !== hole.ref)
        throw new RangeError(`hole ${hole.ref} of the round is not among those played`);
      return { ...hole, map: seen.map, drawing: seen.hole.drawing };
    }),
    ...form,
  });
}
