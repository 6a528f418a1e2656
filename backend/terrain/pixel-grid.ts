import type { Result } from '../../core/units/result.ts';

/** How pixels of a raster lie in its coordinate system: affine, pixel centres at whole numbers of column and row. */
export type PixelGrid = Readonly<{
  /** Centre of a pixel; fractions lie between centres. */
  at(column: number, row: number): readonly [x: number, y: number];
  /** @returns column and row as fractions, whole numbers at pixel centres */
  pixelOf(x: number, y: number): readonly [column: number, row: number];
  /** Size of a pixel along its two sides, in units of the coordinate system. */
  pixel: readonly [number, number];
}>;

export type PlacingTags = Readonly<{
  /** Tag 33550. */
  scale?: ArrayLike<number>;
  /** Tag 33922: (I, J, K, X, Y, Z) a point. */
  tiepoints?: ArrayLike<number>;
  /** Tag 34264: 4 × 4, row by row. */
  matrix?: ArrayLike<number>;
  /** Key 1025: in an area raster whole numbers are pixel corners, in a point raster pixel centres. */
  isPoint: boolean;
}>;

/**
 * @returns the grid, or one problem with path `file`
 * @source OGC 19-008r4 (GeoTIFF 1.1), 7.2 and annex B
 */
export function pixelGrid({ scale, tiepoints, matrix, isPoint }: PlacingTags): Result<PixelGrid> {
  const affine = matrix === undefined ? fromScale(scale, tiepoints) : fromMatrix(matrix);
  if (affine === undefined)
    return refused('does not say where its pixels lie (no pixel scale with one tie point, and no transformation)');
  const [a, b, x0, d, e, y0] = affine;
  const determinant = a * e - b * d;
  if (!affine.every(Number.isFinite) || !(Math.abs(determinant) > 0))
    return refused('places its pixels with numbers that make no sense');
  // Whole numbers of the file are corners in an area raster: its pixel centres lie half a pixel further.
  const half = isPoint ? 0 : 0.5;
  return {
    ok: true,
    value: {
      at: (column, row) => {
        const [i, j] = [column + half, row + half];
        return [x0 + a * i + b * j, y0 + d * i + e * j];
      },
      pixelOf: (x, y) => {
        const [dx, dy] = [x - x0, y - y0];
        return [(e * dx - b * dy) / determinant - half, (a * dy - d * dx) / determinant - half];
      },
      pixel: [Math.hypot(a, d), Math.hypot(b, e)],
    },
  };
}

type Affine = readonly [a: number, b: number, x0: number, d: number, e: number, y0: number];

function fromScale(scale: ArrayLike<number> | undefined, tie: ArrayLike<number> | undefined): Affine | undefined {
  if (scale === undefined || tie === undefined || scale.length < 2 || tie.length < 6) return undefined;
  const [sx, sy] = [scale[0]!, scale[1]!];
  if (!(sx > 0 && sy > 0)) return undefined;
  // Rows run south.
  return [sx, 0, tie[3]! - tie[0]! * sx, 0, -sy, tie[4]! + tie[1]! * sy];
}

function fromMatrix(m: ArrayLike<number>): Affine | undefined {
  return m.length < 16 ? undefined : [m[0]!, m[1]!, m[3]!, m[4]!, m[5]!, m[7]!];
}

function refused(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'file', message }] };
}
