import { z } from 'zod';
import type { FittedPlayer, FittedThrow } from '../player/fitted-player.ts';

const Fitted = z.object({
  n: z.number().min(0).describe('throws used, outliers counted by their weight'),
  averageDay_m: z.number(),
  averageDaySd_m: z.number().describe('one standard deviation of what is known of it'),
  finish_m: z.number().describe('right positive'),
  basis: z.enum(['measured', 'borrowed', 'predicted']),
});

/** One disc from one hand, before and after throws are added. */
export const FitChangeSchema = z.object({
  discId: z.string(),
  disc: z.string(),
  hand: z.enum(['backhand', 'forehand']),
  added: z.int().min(0).describe('throws of it that would be added'),
  before: Fitted.nullable().describe('null: not known from this hand before'),
  after: Fitted.nullable(),
});
export type FitChange = z.output<typeof FitChangeSchema>;

/** The range table before and after, discs with added throws first, then those that change most. */
export function fitChange(
  before: FittedPlayer,
  after: FittedPlayer,
  added: readonly Readonly<{ discId: string; hand: string }>[],
): FitChange[] {
  const same = (a: FittedThrow) => (b: FittedThrow) => a.discId === b.discId && a.hand === b.hand;
  const gone = before.throws.filter(own => !after.throws.some(same(own)));
  return [...after.throws, ...gone]
    .map((own): FitChange => {
      const old = before.throws.find(same(own));
      const now = after.throws.find(same(own));
      return {
        discId: own.discId,
        disc: own.disc,
        hand: own.hand,
        added: added.filter(t => t.discId === own.discId && t.hand === own.hand).length,
        before: old === undefined ? null : line(old),
        after: now === undefined ? null : line(now),
      };
    })
    .sort((a, b) => Number(b.added > 0) - Number(a.added > 0) || moved_m(b) - moved_m(a));
}

function line({ n, averageDay_m, averageDaySd_m, finish_m, basis }: FittedThrow) {
  return { n, averageDay_m, averageDaySd_m, finish_m, basis };
}

function moved_m({ before, after }: FitChange): number {
  return before === null || after === null ? 0 : Math.abs(after.averageDay_m - before.averageDay_m);
}
