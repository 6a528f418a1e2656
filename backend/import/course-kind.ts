import type { Result } from '../../core/units/result.ts';
import { decodeText } from './decode-text.ts';

export const COURSE_KINDS = ['geojson', 'overpass', 'osm', 'gpx', 'kml', 'kmz'] as const;
export type CourseKind = (typeof COURSE_KINDS)[number];

/** In words, for messages and reports. */
export const KIND_WORDS: Readonly<Record<CourseKind, string>> = {
  geojson: 'GeoJSON',
  overpass: 'OpenStreetMap data as JSON (Overpass)',
  osm: 'OpenStreetMap data as XML',
  gpx: 'GPX waypoints and tracks',
  kml: 'KML places',
  kmz: 'zipped KML places (KMZ)',
};

/** A file whose kind is known; an archive is still packed. */
export type KnownFile =
  | Readonly<{ kind: 'kmz'; bytes: Uint8Array }>
  | Readonly<{ kind: Exclude<CourseKind, 'kmz'>; text: string; encoding: string }>;

const TAKEN = 'GeoJSON, OpenStreetMap XML or Overpass JSON, GPX, KML and KMZ are read';

/**
 * Which kind of course file this is, by what stands in it: names lie.
 * @returns the kind with its text, or one problem that says what it looks like instead and what to do
 */
export function courseKind(bytes: Uint8Array): Result<KnownFile> {
  if (bytes.length === 0) return empty;
  if (startsWith(bytes, 'PK\x03\x04') || startsWith(bytes, 'PK\x05\x06'))
    return { ok: true, value: { kind: 'kmz', bytes } };
  const other = OTHERS.find(({ magic }) => startsWith(bytes, magic));
  if (other !== undefined) return refuse(`is ${other.words}. ${TAKEN}`);
  const decoded = decodeText(bytes);
  if (!decoded.ok) return decoded;
  const { text, encoding } = decoded.value;
  const start = text.trimStart().slice(0, 4000);
  if (start === '') return empty;
  if (start.startsWith('<')) return ofXml(text, encoding);
  if (start.startsWith('{'))
    return { ok: true, value: { kind: isOverpass(text) ? 'overpass' : 'geojson', text, encoding } };
  if (start.startsWith('['))
    return refuse(`is a JSON list, not a map: a GeoJSON file starts with {"type": "FeatureCollection". ${TAKEN}`);
  return refuse(`is no map file known here: it starts with ${JSON.stringify(start.slice(0, 20))}. ${TAKEN}`);
}

const ROOTS: Readonly<Record<string, Exclude<CourseKind, 'kmz'>>> = { osm: 'osm', gpx: 'gpx', kml: 'kml' };

function ofXml(text: string, encoding: string): Result<KnownFile> {
  const root = rootName(text);
  const kind = root === undefined ? undefined : ROOTS[root.toLowerCase()];
  if (kind !== undefined) return { ok: true, value: { kind, text, encoding } };
  if (/^(?:html|body|head)$/i.test(root ?? ''))
    return refuse(`is a web page, not a map: download the map itself, not the page about it. ${TAKEN}`);
  if (root === undefined) return refuse(`looks like XML but has no first element. ${TAKEN}`);
  return refuse(`is XML of another kind: its first element is <${root.slice(0, 40)}>. ${TAKEN}`);
}

/** The first element's name without prefix. What may stand before it is skipped by hand: a pattern over it could be made to try forever. */
function rootName(text: string): string | undefined {
  let at = 0;
  for (;;) {
    at = text.indexOf('<', at);
    if (at === -1) return undefined;
    const end = text.startsWith('<!--', at)
      ? text.indexOf('-->', at + 4)
      : text.startsWith('<?', at) || text.startsWith('<!', at)
        ? text.indexOf('>', at)
        : undefined;
    if (end === undefined) return /^<(?:[\w.-]{1,60}:)?([\w.-]{1,60})/.exec(text.slice(at, at + 200))?.[1];
    if (end === -1) return undefined;
    at = end + 1;
  }
}

/** Has the outermost object a member `elements` and none called `features`? Looked for before the text is parsed: it may not be whole. */
function isOverpass(text: string): boolean {
  const head = text.slice(0, 5000);
  if (/"type"\s*:\s*"Feature(?:Collection)?"/.test(head)) return false;
  return /"(?:osm3s|generator)"\s*:/.test(head) || /^\s*\{[^[\]]*"elements"\s*:\s*\[/.test(head);
}

const OTHERS: readonly { magic: string; words: string }[] = [
  { magic: '\x1f\x8b', words: 'packed with gzip: unpack it first' },
  { magic: 'BZh', words: 'packed with bzip2: unpack it first' },
  { magic: '7z\xbc\xaf', words: 'packed with 7-Zip: unpack it first' },
  { magic: '\xfd7zXZ', words: 'packed with xz: unpack it first' },
  { magic: 'Rar!', words: 'packed with RAR: unpack it first' },
  { magic: 'II*\0', words: 'a TIFF picture or elevation model, not a course' },
  { magic: 'MM\0*', words: 'a TIFF picture or elevation model, not a course' },
  { magic: '\x89PNG', words: 'a picture (PNG), not a map' },
  { magic: '\xff\xd8\xff', words: 'a picture (JPEG), not a map' },
  { magic: 'GIF8', words: 'a picture (GIF), not a map' },
  { magic: '%PDF', words: 'a PDF, not a map' },
  { magic: 'SQLite format 3', words: 'a database (base map tiles or another program’s data), not a course' },
  { magic: '\x7fELF', words: 'a program, not a map' },
  { magic: 'MZ', words: 'a program, not a map' },
];

function startsWith(bytes: Uint8Array, magic: string): boolean {
  return Array.from(magic).every((character, i) => bytes[i] === character.charCodeAt(0));
}

const empty: Result<never> = {
  ok: false,
  problems: [{ path: 'line 1, column 1', message: 'the file is empty: check that it was saved or copied whole' }],
};

function refuse(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'file', message }] };
}
