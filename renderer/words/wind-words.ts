const CALM_mps = 0.3; // Beaufort 0, WMO-No. 8

const POINTS = [
  'north',
  'north-north-east',
  'north-east',
  'east-north-east',
  'east',
  'east-south-east',
  'south-east',
  'south-south-east',
  'south',
  'south-south-west',
  'south-west',
  'west-south-west',
  'west',
  'west-north-west',
  'north-west',
  'north-north-west',
] as const;

/** The compass point a bearing lies nearest to, sixteen points. */
export function compassPoint(bearing_deg: number): string {
  return POINTS[Math.round((((bearing_deg % 360) + 360) % 360) / 22.5) % 16]!;
}

/**
 * The wind as the thrower feels it: "headwind from the left", "tailwind".
 * @param holeBearing_deg - true bearing of the basket from the tee
 */
export function feltWind(speed_mps: number, from_deg: number, holeBearing_deg: number): string {
  if (speed_mps < CALM_mps) return 'calm';
  const off = ((((from_deg - holeBearing_deg) % 360) + 540) % 360) - 180;
  const side = off > 0 ? 'right' : 'left';
  const size = Math.abs(off);
  if (size <= 15) return 'headwind';
  if (size < 70) return `headwind from the ${side}`;
  if (size <= 110) return `crosswind from the ${side}`;
  if (size < 165) return `tailwind from the ${side}`;
  return 'tailwind';
}
