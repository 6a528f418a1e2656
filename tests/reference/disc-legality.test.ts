import { describe, expect, it } from 'vitest';
import { discLegality, heaviestLegal_g } from '../../core/player/disc-legality.ts';

const SOURCE = 'PDGA rules of play, disc technical standards (805, older edition): 21–40 cm, ≤ 8.3 g/cm, ≤ 200 g';

describe(`disc legality (${SOURCE})`, () => {
  // [C] 8.3 g/cm × diameter, capped at 200 g
  it.each([
    { diameter_mm: 210, limit_g: 174.3 },
    { diameter_mm: 212, limit_g: 175.96 },
    { diameter_mm: 220, limit_g: 182.6 },
    { diameter_mm: 240, limit_g: 199.2 },
    { diameter_mm: 241, limit_g: 200 },
    { diameter_mm: 300, limit_g: 200 },
  ])('$diameter_mm mm may weigh $limit_g g', ({ diameter_mm, limit_g }) => {
    expect(Math.abs(heaviestLegal_g(diameter_mm) - limit_g)).toBeLessThanOrEqual(1e-9);
    expect(discLegality({ diameter_mm, mass_g: limit_g }).legal).toBe(true);
    expect(discLegality({ diameter_mm, mass_g: limit_g + 0.01 }).legal).toBe(false);
  });

  it.each([
    { name: 'smallest', diameter_mm: 210, legal: true },
    { name: 'too small', diameter_mm: 209.9, legal: false },
    { name: 'largest', diameter_mm: 400, legal: true },
    { name: 'too large', diameter_mm: 400.1, legal: false },
  ])('$name: $diameter_mm mm', ({ diameter_mm, legal }) => {
    const verdict = discLegality({ diameter_mm });
    expect(verdict.legal).toBe(legal);
    expect(verdict.reasons).toHaveLength(legal ? 0 : 1);
  });

  it('judges only what is given', () => {
    expect(discLegality({})).toEqual({ legal: true, reasons: [] });
    expect(discLegality({ mass_g: 200 }).legal).toBe(true);
    expect(discLegality({ mass_g: 200.5 }).reasons[0]).toContain('200.5 g');
  });

  it('refuses impossible numbers', () => {
    expect(() => discLegality({ mass_g: 0 })).toThrow('mass_g');
    expect(() => discLegality({ diameter_mm: Number.NaN })).toThrow('diameter_mm');
  });
});
