type Point = readonly [x: number, y: number];

/** Rounding of the plain determinant stays under this share of its terms: Shewchuk (1997), "Adaptive Precision Floating-Point Arithmetic", eq. for orient2d bound A. */
const errorShare = (3 + 16 * 2 ** -53) * 2 ** -53;

/**
 * On which side of the line a→b lies c? Exact: the sign is that of the true determinant of the given doubles.
 * @returns 1 left, −1 right, 0 on the line
 */
export function orientation(a: Point, b: Point, c: Point): -1 | 0 | 1 {
  const left = (a[0] - c[0]) * (b[1] - c[1]);
  const right = (a[1] - c[1]) * (b[0] - c[0]);
  const determinant = left - right;
  if (Math.abs(determinant) > errorShare * (Math.abs(left) + Math.abs(right))) return determinant > 0 ? 1 : -1;
  const [ax, ay, bx, by, cx, cy] = [a[0], a[1], b[0], b[1], c[0], c[1]].map(scaledInteger) as [
    bigint,
    bigint,
    bigint,
    bigint,
    bigint,
    bigint,
  ];
  const exact = (ax - cx) * (by - cy) - (ay - cy) * (bx - cx);
  return exact === 0n ? 0 : exact > 0n ? 1 : -1;
}

const words = new DataView(new ArrayBuffer(8));

/** The double times 2^1074: every finite double is then a whole number. */
function scaledInteger(value: number): bigint {
  words.setFloat64(0, value);
  const bits = words.getBigUint64(0);
  const exponent = (bits >> 52n) & 0x7ffn;
  const fraction = bits & 0xfffffffffffffn;
  const magnitude = exponent === 0n ? fraction : (fraction | 0x10000000000000n) << (exponent - 1n);
  return bits >> 63n === 1n ? -magnitude : magnitude;
}
