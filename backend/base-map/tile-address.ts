import type { TileAddress } from '../../core/geometry/web-tiles.ts';
import type { Result } from '../../core/units/result.ts';

const MARKS = /\{[^{}]*\}/g;
const KNOWN = new Set(['{z}', '{x}', '{y}', '{-y}']);

/**
 * An address with places for zoom, column and row, like https://tiles.example.org/{z}/{x}/{y}.png (`{-y}`: rows from the south).
 * @returns what makes a tile's address of it, or one problem with path `address`
 */
export function tileAddress(template: string): Result<Readonly<{ host: string; of(tile: TileAddress): string }>> {
  const marks: readonly string[] = template.match(MARKS) ?? [];
  const unknown = marks.filter(mark => !KNOWN.has(mark));
  if (unknown.length > 0) return refused(`holds ${unknown[0]}, which we do not know: only {z}, {x} and {y}`);
  const has = (mark: string) => marks.includes(mark);
  if (!has('{z}') || !has('{x}') || has('{y}') === has('{-y}'))
    return refused('must say where zoom, column and row go: {z}, {x} and {y} (or {-y}), each in the path');
  const of = ({ z, x, y }: TileAddress) =>
    template
      .replaceAll('{z}', String(z))
      .replaceAll('{x}', String(x))
      .replaceAll('{-y}', String(2 ** z - 1 - y))
      .replaceAll('{y}', String(y));
  const url = URL.parse(of({ z: 1, x: 0, y: 0 }));
  if (url === null) return refused('is no address: it begins like https://');
  const isHere = /^(localhost|127\.0\.0\.1|\[::1\])$/.test(url.hostname);
  if (url.protocol !== 'https:' && !(url.protocol === 'http:' && isHere))
    return refused('must begin with https:// (http:// for a server on this machine only)');
  if (url.username !== '' || url.password !== '') return refused('must not hold a user name or a password');
  // The places to fill must not lie in the server's name: one permission is for one server.
  const other = URL.parse(of({ z: 7, x: 9, y: 3 }));
  if (other === null || other.host !== url.host) return refused('must name one server: no {z}, {x} or {y} in its name');
  return { ok: true, value: { host: url.host, of } };
}

function refused(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'address', message }] };
}
