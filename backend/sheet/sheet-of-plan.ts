import type { Day } from '../../core/air/day.ts';
import type { Course } from '../../core/course/course.ts';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import { describeHole } from '../../core/geometry/describe-hole.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import { sheetHtml } from '../../core/sheet/sheet-html.ts';
import type { SheetHole, SheetInput } from '../../core/sheet/sheet-input.ts';
import { drawPlannedShot } from '../../core/strategy/draw-planned-shot.ts';
import type { HolePlan, PlanReport } from '../../core/strategy/plan-report.ts';

/** The sheet of a plan just made, with the flights drawn. */
export function sheetOfPlan(
  { course, player, day, plan }: Readonly<{ course: Course; player: FittedPlayer; day: Day; plan: PlanReport }>,
  form: Pick<SheetInput, 'format' | 'paper' | 'units'>,
): string {
  const holes = plan.holes.map((holePlan): SheetHole => {
    const hole = course.holes.find(({ ref }) => ref === holePlan.ref);
    if (hole === undefined) throw new RangeError(`the course ${course.name} has no hole ${holePlan.ref}`);
    const map = buildHoleMap(course, hole);
    return {
      plan: holePlan,
      map,
      report: describeHole(map, course.notMapped),
      drawing: drawPlannedShot(map, holePlan, player, dayOf(day, holePlan), plan.seed),
    };
  });
  return sheetHtml({ plan, holes, ...form });
}

/** The day with the hole's own wind, where it has one. */
function dayOf(day: Day, { wind }: HolePlan): Day {
  if (wind === undefined) return day;
  const { speed_mps, from_deg, gust_mps } = wind;
  return { ...day, wind: { ...day.wind, speed_mps, from_deg, gust_mps } };
}
