import { describe, expect, it } from 'vitest';
import { branchesAt, knownPlayer, librariesFor, planOf, reachOf, said, worthOf } from './plans.ts';

// Facts of the trade: common practice, no source. Each comes out of a plan; none is a rule in the code.

describe.each([22, 26])('branches over the hole of a player with an arm of %d m/s', arm_mps => {
  const player = knownPlayer(arm_mps);
  const libraries = librariesFor(player);
  const putter_m = reachOf(player, 'thimble');
  const midrange_m = reachOf(player, 'kettle');

  it('at 3 m, where the putter would need its whole distance: the midrange beats the putter', () => {
    for (const share of [1, 1.04]) {
      const length_m = share * putter_m;
      const plan = planOf(libraries, length_m, branchesAt(3, length_m));
      expect(plan.choice.class, said(plan)).toBe('midrange');
      expect(worthOf(plan, 'midrange'), said(plan)).toBeLessThan(worthOf(plan, 'putter'));
    }
  });

  it('are what moves it: the open hole of the same length is the putter’s', () => {
    const plan = planOf(libraries, putter_m);
    expect(worthOf(plan, 'putter'), said(plan)).toBeLessThan(worthOf(plan, 'midrange'));
  });

  it('still lower and longer, where the midrange would need its whole distance: the low-speed driver beats the midrange', () => {
    for (const clearance_m of [3, 2.5]) {
      const length_m = 1.04 * midrange_m;
      const plan = planOf(libraries, length_m, branchesAt(clearance_m, length_m));
      expect(worthOf(plan, 'fairway'), said(plan)).toBeLessThan(worthOf(plan, 'midrange'));
      expect(['fairway', 'control'], said(plan)).toContain(plan.choice.class);
    }
  });

  it('are said in the reasons: height that is not there, or distance a disc does not have under them', () => {
    const length_m = 1.04 * putter_m;
    const plan = planOf(libraries, length_m, branchesAt(3, length_m));
    const kinds = plan.reasons.flatMap(reason => reason.facts.map(fact => fact.kind));
    expect(
      kinds.some(kind => kind === 'height' || kind === 'clean' || kind === 'short'),
      kinds.join(' '),
    ).toBe(true);
    for (const reason of plan.reasons) expect(reason.facts.length).toBeGreaterThan(0);
  });
});
