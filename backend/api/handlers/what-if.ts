import { FEWEST_SPECIAL_THROWS, specialOf } from '../../../core/player/fitted-player.ts';
import { isSpecialShape } from '../../../core/strategy/flown-as.ts';
import type { Result } from '../../../core/units/result.ts';
import { readyRound } from '../../library/ready-round.ts';
import type { ShotAnswer } from '../../planning/plan-task.ts';
import type { AppContext } from '../app-context.ts';
import type { PlanRequestData } from '../contract/plans.ts';
import type { ShotChoice } from '../contract/values.ts';
import type { whatIf } from '../contract/what-if.ts';
import type { Handlers } from '../dispatch.ts';

export function whatIfHandlers(app: AppContext): Pick<Handlers, keyof typeof whatIf> {
  return {
    evaluateShot: ({ ref, shot, choice, ...asked }) => evaluate(app, asked, ref, shot, choice),
  };
}

/** One shot of the player's own choosing, on the hole as the plan sees it. */
export async function evaluate(
  app: Pick<AppContext, 'courses' | 'players' | 'threads'>,
  asked: Omit<PlanRequestData, 'attitude' | 'target' | 'holes'>,
  ref: string,
  shot: ShotChoice,
  against?: ShotChoice,
): Promise<Result<ShotAnswer>> {
  const ready = await readyRound(app, asked);
  if (!ready.ok) return ready;
  const { maps, roundOf, request } = ready.value;
  const map = maps.find(map => map.ref === ref);
  if (map === undefined)
    return refused('ref', `the course has no hole "${ref}": ${maps.map(map => map.ref).join(', ')}`);
  for (const [path, { discId, hand, shape }] of Object.entries({ shot, ...(against && { choice: against }) })) {
    const ofDisc = request.player.throws.filter(t => t.discId === discId);
    if (ofDisc.length === 0) return refused(`${path}.discId`, `"${discId}" is no disc of ${request.player.name}`);
    if (!ofDisc.some(t => t.hand === hand))
      return refused(`${path}.hand`, `${ofDisc[0]!.disc} has no ${hand}: no ${hand} throw is measured`);
    if (isSpecialShape(shape) && !ofDisc.some(t => t.hand === hand && specialOf(t, shape) !== null))
      return refused(
        `${path}.shape`,
        `no ${shape} of ${ofDisc[0]!.disc}, ${hand}, is fitted: measure at least ${FEWEST_SPECIAL_THROWS}, with distance and sideways finish`,
      );
  }
  const answer = await app.threads.evaluate(map, roundOf(map), shot, against);
  if (answer === null) throw new RangeError(`hole ${ref}: the thread knows no ${shot.discId} ${shot.hand}`);
  return { ok: true, value: answer };
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
