import type { Result } from '../../core/units/result.ts';

const POINTS = 'N NNE NE ENE E ESE SE SSE S SSW SW WSW W WNW NW NNW'.split(' ');

/** Degrees clockwise from north, from "250", "250°" or a compass point such as "WSW". */
export function parseBearing(text: string): Result<number> {
  const clean = text
    .trim()
    .toUpperCase()
    .replace(/\s*(°|DEG|DEGREES)$/, '');
  const point = POINTS.indexOf(clean);
  if (point >= 0) return { ok: true, value: point * 22.5 };
  const value = /^-?\d+(\.\d+)?$/.test(clean) ? Number(clean) : Number.NaN;
  if (value >= -360 && value <= 360) return { ok: true, value: (value + 360) % 360 };
  return {
    ok: false,
    problems: [{ path: 'from', message: 'write degrees from north, like 250, or a compass point, like WSW' }],
  };
}
