import { z } from 'zod';

/** An ellipse on the ground seen from above; `angle_deg` turns its long axis from the throwing line to the right. */
export const SpreadEllipseSchema = z.strictObject({
  share: z.number().describe('of the rests it holds, were they spread normally'),
  along_m: z.number().describe('centre, along the throwing line'),
  side_m: z.number().describe('centre, right positive'),
  semiMajor_m: z.number(),
  semiMinor_m: z.number(),
  angle_deg: z.number().describe('-90 to 90'),
});
export type SpreadEllipse = z.output<typeof SpreadEllipseSchema>;

export type RestPoint = Readonly<{ along_m: number; side_m: number; weight: number }>;

const SHARES = [0.5, 0.9] as const;
/** Fewer points than this say nothing of a spread. */
const FEWEST_POINTS = 4;

/**
 * Ellipses with half and nine tenths of the rests in them, were they spread normally about their weighted middle.
 * @returns none for fewer than four points (by weight)
 */
export function spreadEllipses(points: readonly RestPoint[]): SpreadEllipse[] {
  const total = points.reduce((sum, { weight }) => sum + weight, 0);
  if (total < FEWEST_POINTS) return [];
  const mean = (of: (point: RestPoint) => number) =>
    points.reduce((sum, point) => sum + point.weight * of(point), 0) / total;
  const along_m = mean(p => p.along_m);
  const side_m = mean(p => p.side_m);
  // the weighted mean takes one degree of freedom
  const freed = total / (total - 1);
  const xx = freed * mean(p => (p.along_m - along_m) ** 2);
  const yy = freed * mean(p => (p.side_m - side_m) ** 2);
  const xy = freed * mean(p => (p.along_m - along_m) * (p.side_m - side_m));
  const middle = (xx + yy) / 2;
  const half = Math.hypot((xx - yy) / 2, xy);
  const angle_deg = (Math.atan2(2 * xy, xx - yy) / 2) * (180 / Math.PI);
  return SHARES.map(share => {
    const reach = Math.sqrt(-2 * Math.log(1 - share)); // chi-square with 2 degrees of freedom
    return {
      share,
      along_m,
      side_m,
      semiMajor_m: reach * Math.sqrt(middle + half),
      semiMinor_m: reach * Math.sqrt(Math.max(0, middle - half)),
      angle_deg,
    };
  });
}

/** Centimetres: finer than any tape. */
export const cm = (value_m: number) => Math.round(value_m * 100) / 100 + 0;

export const roundedSpread = (ellipses: readonly SpreadEllipse[]) =>
  ellipses.map(({ share, along_m, side_m, semiMajor_m, semiMinor_m, angle_deg }) => ({
    share,
    along_m: cm(along_m),
    side_m: cm(side_m),
    semiMajor_m: cm(semiMajor_m),
    semiMinor_m: cm(semiMinor_m),
    angle_deg: Math.round(angle_deg * 10) / 10,
  }));
