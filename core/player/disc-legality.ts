/** What a disc weighs and measures, as far as it is known. */
type DiscBody = Readonly<{ mass_g?: number | undefined; diameter_mm?: number | undefined }>;

/** Legal for sanctioned play as far as the given numbers tell; the reasons say which limit is broken. */
export type DiscLegality = Readonly<{ legal: boolean; reasons: readonly string[] }>;

const SMALLEST_CM = 21;
const LARGEST_CM = 40;
const HEAVIEST_G = 200;
const HEAVIEST_G_PER_CM = 8.3;
const ROUNDING = 1e-9; // 8.3 × 21 is not exact in binary; a disc on the limit is legal

/**
 * The published limits on size and weight; what isn't given isn't judged.
 * @throws {RangeError} for a number that is not positive and finite
 * @source PDGA rules of play, disc technical standards (section 805 of an older edition): 21–40 cm, at most 8.3 g per cm and 200 g
 */
export function discLegality({ mass_g, diameter_mm }: DiscBody): DiscLegality {
  for (const [name, value] of Object.entries({ mass_g, diameter_mm }))
    if (value !== undefined && !(value > 0 && value < Number.POSITIVE_INFINITY))
      throw new RangeError(`${name} must be positive and finite, got ${value}`);
  const reasons: string[] = [];
  if (diameter_mm !== undefined) {
    const diameter_cm = diameter_mm / 10;
    if (diameter_cm < SMALLEST_CM - ROUNDING)
      reasons.push(`${diameter_cm} cm across, the least allowed is ${SMALLEST_CM} cm`);
    if (diameter_cm > LARGEST_CM + ROUNDING)
      reasons.push(`${diameter_cm} cm across, the most allowed is ${LARGEST_CM} cm`);
  }
  const limit_g = heaviestLegal_g(diameter_mm);
  if (mass_g !== undefined && mass_g > limit_g + ROUNDING)
    reasons.push(
      diameter_mm === undefined || limit_g === HEAVIEST_G
        ? `${mass_g} g, the most allowed is ${HEAVIEST_G} g`
        : `${mass_g} g, the most allowed at this width is ${limit_g.toFixed(1)} g (8.3 g per cm)`,
    );
  return { legal: reasons.length === 0, reasons };
}

/** Greatest legal mass for a width; without a width only the cap is known. */
export function heaviestLegal_g(diameter_mm?: number): number {
  return diameter_mm === undefined ? HEAVIEST_G : Math.min(HEAVIEST_G, (HEAVIEST_G_PER_CM * diameter_mm) / 10);
}
