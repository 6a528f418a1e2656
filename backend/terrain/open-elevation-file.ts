import { type FileHandle, open } from 'node:fs/promises';
import { basename } from 'node:path';
import { fromFile, type GeoTIFFImage } from 'geotiff';
import type { Problem, Result } from '../../core/units/result.ts';
import { limitDecoders } from './block-decoders.ts';
import { checkTiff } from './check-tiff.ts';
import { type CoordinateSystem, coordinateSystem, type GeoKeys } from './coordinate-system.ts';
import { type HeightDatum, heightDatum } from './height-datum.ts';
import { type PixelGrid, pixelGrid } from './pixel-grid.ts';

/** Public models are cut into tiles of some hundred megabytes; only windows of them are ever read. */
const LARGEST_BYTES = 20_000_000_000;

/** Columns and rows from the north-west corner, the ends not counted in. */
export type PixelWindow = Readonly<{ left: number; top: number; right: number; bottom: number }>;

/** An opened elevation model; heights are read window by window. */
export type ElevationFile = Readonly<{
  /** Without its folder. */
  name: string;
  width: number;
  height: number;
  crs: CoordinateSystem;
  grid: PixelGrid;
  datum: HeightDatum;
  /** Heights in metres, row by row, NaN where there are none. */
  read(window: PixelWindow): Promise<Result<Float32Array>>;
  close(): Promise<void>;
}>;

let limited = false;

/**
 * Opens a GeoTIFF elevation model.
 * @param path - a file on this machine
 * @returns the model, or one problem with path `file` that says what to do; then nothing stays open
 * @source OGC 19-008r4 (GeoTIFF 1.1)
 */
export async function openElevationFile(path: string): Promise<Result<ElevationFile>> {
  if (!limited) limitDecoders();
  limited = true;
  let handle: FileHandle | undefined;
  try {
    handle = await open(path, 'r');
    const stat = await handle.stat();
    if (!stat.isFile()) return refused('is a folder or a device: name the elevation model in it');
    if (stat.size > LARGEST_BYTES) return refused(`is ${(stat.size / 1e9).toFixed(0)} GB: cut out the part you need`);
    const sound = await checkTiff(handle, stat.size);
    if (!sound.ok) return sound;
  } catch (error) {
    return refused(inWords(error));
  } finally {
    await handle?.close().catch(() => undefined);
  }
  try {
    const tiff = await fromFile(path);
    const close = async () => {
      await tiff.close();
    };
    const described = await describe(await tiff.getImage(0));
    if (!described.ok) {
      await close();
      return described;
    }
    return { ok: true, value: { name: basename(path), ...described.value, close } };
  } catch (error) {
    return refused(`is damaged: ${error instanceof Error ? error.message : String(error)}`);
  }
}

async function describe(image: GeoTIFFImage): Promise<Result<Omit<ElevationFile, 'name' | 'close'>>> {
  const tags = image.fileDirectory;
  const keys = (image.getGeoKeys() ?? {}) as GeoKeys;
  const numbers = async (name: 'ModelPixelScale' | 'ModelTiepoint' | 'ModelTransformation') => {
    const value: unknown = tags.hasTag(name) ? await tags.loadValue(name) : undefined;
    return value !== null && typeof value === 'object' ? (value as ArrayLike<number>) : undefined;
  };
  const [scale, tiepoints, matrix] = [
    await numbers('ModelPixelScale'),
    await numbers('ModelTiepoint'),
    await numbers('ModelTransformation'),
  ];
  const crs = coordinateSystem(keys);
  const grid = pixelGrid({
    ...(scale && { scale }),
    ...(tiepoints && { tiepoints }),
    ...(matrix && { matrix }),
    isPoint: keys.GTRasterTypeGeoKey === 2,
  });
  if (!grid.ok) return grid;
  if (!crs.ok) return crs;
  const metadata = (await image.getGDALMetadata(0).catch(() => null)) ?? {};
  const text = (name: string) => (typeof metadata[name] === 'string' ? (metadata[name] as string) : undefined);
  const factor = (name: string, none: number) => {
    const value = Number(text(name) ?? none);
    return Number.isFinite(value) ? value : none;
  };
  const [scaleOf, offset] = [factor('SCALE', 1), factor('OFFSET', 0)];
  const datum = heightDatum(keys, text('UNITTYPE') ?? text('UnitType'));
  const noData = image.getGDALNoData();
  const width = image.getWidth();
  const height = image.getHeight();
  return {
    ok: true,
    value: {
      width,
      height,
      crs: crs.value,
      grid: grid.value,
      datum,
      read: async ({ left, top, right, bottom }) => {
        try {
          const bands = await image.readRasters({ window: [left, top, right, bottom], samples: [0] });
          const raw = bands[0] as ArrayLike<number>;
          const heights = new Float32Array(raw.length);
          for (let k = 0; k < raw.length; k++) {
            const value = raw[k]!;
            const isHeight = Number.isFinite(value) && !isNoData(value, noData);
            const height_m = (value * scaleOf + offset) * datum.unit_m;
            // No ground on Earth lies outside these (metres): a fill value the file forgot to name.
            heights[k] = isHeight && height_m > LOWEST_m && height_m < HIGHEST_m ? height_m : Number.NaN;
          }
          return { ok: true, value: heights };
        } catch (error) {
          return refused(
            `is damaged: its heights cannot be unpacked (${error instanceof Error ? error.message : String(error)})`,
          );
        }
      },
    },
  };
}

const LOWEST_m = -1000;
const HIGHEST_m = 9500;

/** The fill value is written as text: a 32-bit pixel may miss it by rounding. */
function isNoData(value: number, noData: number | null): boolean {
  return noData !== null && (value === noData || Math.fround(noData) === value);
}

function refused(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'file', message } satisfies Problem] };
}

const WORDS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file: check the name and the folder',
  ENOTDIR: 'there is no such file: a part of its path is not a folder',
  EISDIR: 'is a folder: name the elevation model in it',
  EACCES: 'may not be read: change its permissions',
  EPERM: 'may not be read: change its permissions',
};

function inWords(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException;
  return WORDS[code ?? ''] ?? `cannot be read (${code ?? String(error)})`;
}
