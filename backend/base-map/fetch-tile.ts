import { LARGEST_TILE_BYTES } from './open-mbtiles.ts';
import { pictureType } from './picture-type.ts';
import type { Tile } from './tile.ts';

const LONGEST_WAIT_ms = 10_000;

/**
 * Fetches one picture. No cookies, no referrer, no redirect: the permission was given for one server.
 * @returns null when the server has none, or answers with anything but a picture of a tile's size
 */
export async function fetchTile(address: string, userAgent: string, get: typeof fetch = fetch): Promise<Tile | null> {
  const stop = AbortSignal.timeout(LONGEST_WAIT_ms);
  try {
    const answer = await get(address, {
      headers: { 'User-Agent': userAgent, Accept: 'image/png, image/jpeg, image/webp' },
      redirect: 'error',
      credentials: 'omit',
      referrerPolicy: 'no-referrer',
      signal: stop,
    });
    if (!answer.ok || answer.body === null) {
      await answer.body?.cancel();
      return null;
    }
    const bytes = await capped(answer.body);
    const type = bytes === null ? undefined : pictureType(bytes);
    return bytes === null || type === undefined ? null : { bytes, type };
  } catch {
    // No network, a server that hangs up: the map is drawn without this tile.
    return null;
  }
}

/** @returns null as soon as there is more than a tile may have; the rest is not fetched */
async function capped(body: ReadableStream<Uint8Array>): Promise<Uint8Array | null> {
  const parts: Uint8Array[] = [];
  let size = 0;
  for await (const part of body) {
    size += part.length;
    if (size > LARGEST_TILE_BYTES) return null;
    parts.push(part);
  }
  return Buffer.concat(parts);
}
