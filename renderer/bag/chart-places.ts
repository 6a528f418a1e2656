/** A box in CSS pixels: its middle and half its size. */
type Box = Readonly<{ x: number; y: number; halfWidth: number; halfHeight: number }>;

const AWAY = 12;
const ROUND: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [0.8, -0.8],
  [-0.8, -0.8],
  [0.8, 0.8],
  [-0.8, 0.8],
  [0, -1],
  [0, 1],
];

/**
 * A place beside each dot for its label: the first round about that is clear of dots and labels, else the least crowded one.
 * @param dots - where the dots are, CSS pixels
 * @param half - half the size of the labels, CSS pixels
 */
export function labelPlaces(
  dots: readonly Readonly<{ x: number; y: number }>[],
  half: Readonly<{ width: number; height: number }>,
): { x: number; y: number }[] {
  const dotBoxes = dots.map(({ x, y }): Box => ({ x, y, halfWidth: 4, halfHeight: 4 }));
  const taken: Box[] = [];
  return dots.map(({ x, y }) => {
    const places = [1, 1.8, 2.6].flatMap(far =>
      ROUND.map(([dx, dy]): Box => {
        const reach = AWAY * far;
        return {
          x: x + dx * (reach + half.width - 6),
          y: y + dy * reach,
          halfWidth: half.width,
          halfHeight: half.height,
        };
      }),
    );
    const crowding = (box: Box) => [...dotBoxes, ...taken].reduce((sum, other) => sum + overlap(box, other), 0);
    const best = places.reduce((a, b) => (crowding(b) < crowding(a) ? b : a));
    taken.push(best);
    return { x: best.x, y: best.y };
  });
}

function overlap(a: Box, b: Box): number {
  const wide = a.halfWidth + b.halfWidth - Math.abs(a.x - b.x);
  const high = a.halfHeight + b.halfHeight - Math.abs(a.y - b.y);
  return wide > 0 && high > 0 ? wide * high : 0;
}
