import { describeHole } from '../../../core/geometry/describe-hole.ts';
import { sheetHtml } from '../../../core/sheet/sheet-html.ts';
import type { SheetHole } from '../../../core/sheet/sheet-input.ts';
import type { Result } from '../../../core/units/result.ts';
import type { AppContext } from '../app-context.ts';
import type { PlannedHole, PlanState } from '../contract/plans.ts';
import type { sheet } from '../contract/sheet.ts';
import { type ShotChoice, ShotChoiceSchema } from '../contract/values.ts';
import type { Handlers } from '../dispatch.ts';
import { fileNameOf } from '../file-name.ts';
import { evaluate } from './what-if.ts';

export function sheetHandlers(app: AppContext): Pick<Handlers, keyof typeof sheet> {
  return {
    renderSheet: async ({ planId, form, holes: refs, paper, length, speed }) => {
      const found = app.plans.get(planId);
      if (!found.ok) return found;
      const { summary, request } = found.value;
      if (summary === null) return refused('planId', 'is not done: wait for it, or make the plan anew');
      const holes = inOrderOfPlay(found.value.holes, request.startRef);
      const unknown = (refs ?? []).filter(ref => !holes.some(({ plan }) => plan.ref === ref));
      if (unknown.length > 0) return refused('holes', `the plan has no hole ${unknown.join(', ')}`);
      const sheetHoles: SheetHole[] = [];
      for (const hole of holes) {
        if (refs !== undefined && !refs.includes(hole.plan.ref)) continue;
        const made = await sheetHole(app, found.value, hole);
        if (!made.ok) return made;
        sheetHoles.push(made.value);
      }
      const html = sheetHtml({
        plan: summary,
        holes: sheetHoles,
        format: form,
        paper,
        units: { length, speed },
      });
      const title = `${summary.course}, ${summary.player}`;
      return { ok: true, value: { title, fileName: fileNameOf(`${title} sheet`, 'html'), html } };
    },
  };
}

/** From the hole that is thrown off first, round the course. */
function inOrderOfPlay(holes: readonly PlannedHole[], startRef: string | undefined): readonly PlannedHole[] {
  const at = Math.max(
    0,
    holes.findIndex(({ plan }) => plan.ref === startRef),
  );
  return [...holes.slice(at), ...holes.slice(0, at)];
}

/** One hole with the player's own pin, worked out for the plan's day, and note. */
async function sheetHole(app: AppContext, { request }: PlanState, hole: PlannedHole): Promise<Result<SheetHole>> {
  const { courseId, playerId, layout } = request;
  const { plan, drawing } = hole;
  const course = app.courses.get(courseId, layout);
  const map = app.courses.map(courseId, plan.ref, layout);
  if (!course.ok) return course;
  if (!map.ok) return map;
  const { tables } = app.store;
  const pin = tables.pins.get({ courseId, playerId, layout: layout ?? '', ref: plan.ref });
  const note = tables.notes.get({ courseId, layout: layout ?? '', ref: plan.ref })?.text;
  const base = {
    plan,
    map: map.value,
    report: describeHole(map.value, course.value.notMapped),
    ...(note === undefined ? {} : { note }),
  };
  if (pin === undefined) return { ok: true, value: { ...base, drawing: drawing.choice } };
  const shot = ShotChoiceSchema.parse(JSON.parse(pin.shot));
  if (sameShot(shot, plan.choice)) return { ok: true, value: { ...base, drawing: drawing.choice } };
  const answer = await evaluate(app, request, plan.ref, shot, choiceOf(plan.choice));
  if (!answer.ok)
    return {
      ok: false,
      problems: answer.problems.map(({ path, message }) => ({
        path: `pin of hole ${plan.ref}: ${path}`,
        message: `${message}. Unpin it, or pin another shot`,
      })),
    };
  return { ok: true, value: { ...base, pinned: answer.value.shot, drawing: answer.value.drawing } };
}

function choiceOf(shot: PlannedHole['plan']['choice']): ShotChoice {
  const { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg } = shot;
  return { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg };
}

function sameShot(pinned: ShotChoice, shot: PlannedHole['plan']['choice']): boolean {
  return Object.entries(choiceOf(shot)).every(([name, value]) => pinned[name as keyof ShotChoice] === value);
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
