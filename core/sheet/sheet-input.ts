import type { HoleMap } from '../geometry/hole-map.ts';
import type { HoleReport } from '../geometry/hole-report.ts';
import type { ShotDrawing } from '../strategy/hole-drawing.ts';
import type { HolePlan, PlanReport, ShotReport } from '../strategy/plan-report.ts';
import type { UnitsChoice } from '../units/units-choice.ts';

/**
 * `pocket`: one hole on each A7 page. `folded`: the same as booklets, eight panels on one side of A4 or Letter.
 * `fourAPage`: four holes on each page of A4 or Letter.
 */
export type SheetFormat = 'pocket' | 'folded' | 'fourAPage';
export type Paper = 'a4' | 'letter';

/** One hole of the sheet: its plan, and the ground it is played on. */
export type SheetHole = Readonly<{
  plan: HolePlan;
  map: HoleMap;
  report: HoleReport;
  /** Of the shot shown; without it the aim and the spread are drawn, the flight is not. */
  drawing?: ShotDrawing;
  /** The player's own choice: shown as the throw, with the plan's beside it. */
  pinned?: ShotReport;
  note?: string;
}>;

export type SheetInput = Readonly<{
  /** What stands over all holes; its own list of holes is not read. */
  plan: Omit<PlanReport, 'holes'>;
  /** At least one, in the order of play. */
  holes: readonly SheetHole[];
  format: SheetFormat;
  /** For `folded` and `fourAPage`; A4 when left out. */
  paper?: Paper;
  units: UnitsChoice;
}>;
