import { z } from 'zod';
import { SPECIAL_SHAPES, type SpecialStatus } from './fitted-player.ts';
import { specialText } from './special-text.ts';

const distance = z.number().describe('metres');

/** What is known of the rollers or overhead throws of one disc from one hand. */
export const SpecialReportSchema = z.object({
  shape: z.enum(SPECIAL_SHAPES),
  counted: z.int().min(0).describe('throws that can be used: sideways finish and power known'),
  needed: z.int().min(0).describe('how many more before it is fitted and planned with'),
  unusable: z.int().min(0),
  fit: z
    .object({
      n: z.number().min(0).describe('throws used, outliers counted by their weight'),
      averageDay_m: distance,
      averageDaySd_m: distance.describe('one standard deviation of the fitted value'),
      finish_m: distance.describe('right positive'),
      finishSd_m: distance.describe('one standard deviation of the fitted value'),
      distanceSd_m: distance.describe('one standard deviation of one throw'),
      sideSd_m: distance.describe('one standard deviation of one throw'),
    })
    .nullable()
    .describe('calm air, level turf, full power, at rest'),
  problem: z.string().nullable().describe('why enough throws were not fitted'),
  text: z.string(),
});
export type SpecialReport = z.output<typeof SpecialReportSchema>;

export function specialReports(specials: readonly SpecialStatus[] = []): SpecialReport[] {
  return specials.map(status => ({
    shape: status.shape,
    counted: status.counted,
    needed: status.needed,
    unusable: status.unusable,
    fit: status.fit && {
      n: status.fit.n,
      averageDay_m: tenth(status.fit.averageDay_m),
      averageDaySd_m: tenth(status.fit.averageDaySd_m),
      finish_m: tenth(status.fit.finish_m),
      finishSd_m: tenth(status.fit.finishSd_m),
      distanceSd_m: tenth(status.fit.distanceSd_m),
      sideSd_m: tenth(status.fit.sideSd_m),
    },
    problem: status.problem,
    text: specialText(status, { length: 'm', speed: 'mps' }),
  }));
}

const tenth = (value_m: number) => Math.round(10 * value_m) / 10 + 0; // + 0: no minus zero
