import { SPECIAL_SHAPES, type SpecialShape, type SpecialThrow } from '../player/fitted-player.ts';

/** Common practice, no source. */
const CAUTION: Readonly<Record<SpecialShape, string>> = {
  roller:
    'ROLLER: it runs far along the ground, towards paths and people you may not see: look along its whole way, both sides, and wait until nobody is there.',
  overhead: 'OVERHEAD: hard on shoulder and elbow: warm up, ease in with soft ones, throw few, and stop at any pain.',
};

/** One for each special shape among those to be thrown. */
export function specialCautions(shapes: readonly string[]): string[] {
  return SPECIAL_SHAPES.filter(shape => shapes.includes(shape)).map(shape => CAUTION[shape]);
}

/** What a shot of such a shape rests on. */
export function specialNote({ shape, n }: SpecialThrow): string {
  return shape === 'roller'
    ? `Fitted to ${Math.round(n)} rollers of yours; how ground and slope hold it is assumed, so see what your ground does first.`
    : `Fitted to ${Math.round(n)} overhead throws of yours by a plain curve: its height on the way is assumed.`;
}

/**
 * How a roller or an overhead throw leaves the hand: "on its edge, top face 4° up".
 * @param hyzer_deg - of the shot
 */
export function specialRelease({ shape, hyzer_deg }: Readonly<{ shape: SpecialShape; hyzer_deg: number }>): string {
  if (shape === 'overhead') return 'over the shoulder, on its edge';
  const lean_deg = Math.round(hyzer_deg + 90);
  return lean_deg === 0
    ? 'on its edge, upright'
    : `on its edge, top face ${Math.abs(lean_deg)}° ${lean_deg > 0 ? 'up' : 'down'}`;
}
