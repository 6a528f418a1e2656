import type { Result } from '../../core/units/result.ts';

/** A place from "60.12345, 24.98765": latitude first, as phones and maps write it; letters N, S, E, W may follow. */
export function readPlace(text: string): Result<readonly [lon: number, lat: number]> {
  const wrong = (message: string): Result<never> => ({ ok: false, problems: [{ path: 'place', message }] });
  const match = /^\s*([+-]?\d+(?:\.\d+)?)\s*°?\s*([NS])?[\s,;]+([+-]?\d+(?:\.\d+)?)\s*°?\s*([EW])?\s*$/i.exec(
    text.replace(/−/g, '-'),
  );
  if (match === null) return wrong('write latitude and longitude in degrees, like 60.12345, 24.98765');
  const lat = Number(match[1]) * (match[2]?.toUpperCase() === 'S' ? -1 : 1);
  const lon = Number(match[3]) * (match[4]?.toUpperCase() === 'W' ? -1 : 1);
  if (Math.abs(lat) > 85) return wrong(`latitude ${lat} is not on the map: it comes first, −85 to 85`);
  if (Math.abs(lon) > 180) return wrong(`longitude ${lon} is not on the map: it comes second, −180 to 180`);
  return { ok: true, value: [lon, lat] };
}
