import { describe, expect, it } from 'vitest';
import type { FittedPlayer } from '../../../core/player/fitted-player.ts';
import { makeDayLibraries } from '../../../core/strategy/day-libraries.ts';
import { planHole } from '../../../core/strategy/plan-hole.ts';
import { aDay } from './a-day.ts';
import { BAG, inventedPlayer } from './invented-player.ts';
import { elbow, shortOpen } from './sketched-holes.ts';

// design, section 8: one disc is the putting putter and is never spent on drives
describe('the putting putter', () => {
  const bag = inventedPlayer({ arm_mps: 23, discs: [BAG[0]!, BAG[1]!, BAG[3]!] });
  const asPutting = (discId: string): FittedPlayer => ({
    ...bag,
    throws: bag.throws.map(t => (t.discId === discId ? { ...t, role: 'putting' as const } : t)),
  });

  it.each([{ map: shortOpen() }, { map: elbow() }])(
    'is thrown by no shot of a plan, though it would be chosen otherwise',
    ({ map }) => {
      const free = planHole({ map, libraries: makeDayLibraries(bag, aDay(0), {}, 5, 1) });
      const kept = free.choice.discId;
      const plan = planHole({
        map,
        libraries: makeDayLibraries(asPutting(kept), aDay(0), {}, 5, 1),
        flips: true,
        bag: true,
      });
      const thrown = [
        plan.choice,
        ...plan.alternatives,
        ...Object.values(plan.byClass),
        ...plan.next.flatMap(next => next.shot ?? []),
        ...plan.flips.map(flip => flip.choice),
        ...plan.next.flatMap(next => next.byDisc),
      ].map(shot => shot.discId);
      expect(thrown.length).toBeGreaterThan(2);
      expect(thrown).not.toContain(kept);
    },
  );
});
