import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { coordinateSystem } from '../../../backend/terrain/coordinate-system.ts';
import { taken } from '../taken.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { rasterBytes, scaleAndTie } from './tiff-bytes.ts';

type Model = Readonly<{
  /** EPSG code: 4326, or a projected one. */
  code: number;
  /** Middle of the model. */
  lon_deg: number;
  lat_deg: number;
  /** Side of a pixel, units of the system. */
  pixel: number;
  side: number;
  /** Height as written, of a place in the system's own coordinates, counted from the middle. */
  height: (dx: number, dy: number) => number;
  isPoint?: boolean;
  noData?: string;
  verticalCode?: number;
  verticalUnit?: number;
  name?: string;
}> &
  Pick<Parameters<typeof rasterBytes>[0], 'compression' | 'pack' | 'bigEndian'>;

const isGeographic = (code: number) => code === 4326;

/** An invented elevation model as a file of the test's own. @returns its path */
export function modelFile(model: Model): string {
  const path = join(temporaryFolder(), model.name ?? 'model.tif');
  writeFileSync(path, modelBytes(model));
  return path;
}

export function modelBytes({
  code,
  lon_deg,
  lat_deg,
  pixel,
  side,
  height,
  isPoint,
  noData,
  ...rest
}: Model): Uint8Array {
  const keys = isGeographic(code)
    ? { GTModelTypeGeoKey: 2, GeographicTypeGeoKey: code }
    : { GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: code };
  const [x, y] = taken(coordinateSystem(keys)).toGrid(lon_deg, lat_deg);
  const half = (side - 1) / 2;
  const values = Array.from({ length: side * side }, (_, k) =>
    height(((k % side) - half) * pixel, (half - Math.floor(k / side)) * pixel),
  );
  const corner = isPoint ? half : half + 0.5;
  return rasterBytes({
    width: side,
    height: side,
    values,
    keys: [
      [1024, isGeographic(code) ? 2 : 1],
      [1025, isPoint ? 2 : 1],
      [isGeographic(code) ? 2048 : 3072, code],
      ...(rest.verticalCode === undefined ? [] : [[4096, rest.verticalCode] as const]),
      ...(rest.verticalUnit === undefined ? [] : [[4099, rest.verticalUnit] as const]),
    ],
    placing: scaleAndTie(pixel, pixel, [x - corner * pixel, y + corner * pixel]),
    ...(noData !== undefined && { noData }),
    ...(rest.compression !== undefined && { compression: rest.compression }),
    ...(rest.pack && { pack: rest.pack }),
    ...(rest.bigEndian !== undefined && { bigEndian: rest.bigEndian }),
  });
}
