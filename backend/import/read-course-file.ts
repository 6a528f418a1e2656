import type { Feature } from 'geojson';
import { checkStructure } from '../../core/course/check-structure.ts';
import { duplicateKeys } from '../../core/course/duplicate-keys.ts';
import { type CourseInFile, coursesInFile } from '../../core/course/import/courses-in-file.ts';
import { type LooseItem, proposeRoles } from '../../core/course/import/propose-roles.ts';
import { oversizedJson } from '../../core/course/json-size.ts';
import { jsonSyntaxProblem } from '../../core/course/parse-course-text.ts';
import { positionsOf } from '../../core/course/positions.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import { sharedIn } from '../share/shared-bytes.ts';
import { type CourseKind, courseKind, type KnownFile } from './course-kind.ts';
import { decodeText } from './decode-text.ts';
import { importLimits } from './import-limits.ts';
import type { LooseMap } from './loose-map.ts';
import type { LeftOut } from './osm-element.ts';
import { osmFeatures } from './osm-features.ts';
import { readGpx } from './read-gpx.ts';
import { readKml } from './read-kml.ts';
import { readOsmXml } from './read-osm-xml.ts';
import { readOverpass } from './read-overpass.ts';
import { unzipMap } from './unzip-map.ts';

/** A course file as far as it speaks for itself: features, and what the user has to say of them. */
export type ReadFile = Readonly<{
  kind: CourseKind;
  encoding: string;
  /** The file's own name for the whole, when it has one. */
  name?: string;
  /** All members of the collection but its features: unknown ones survive. */
  members: Readonly<Record<string, unknown>>;
  features: readonly Feature[];
  /** The text as it came, when nothing has to be said: it is then kept letter for letter. */
  text?: string;
  /** Places and lines whose role the file does not say. */
  items: readonly LooseItem[];
  /** Courses to choose from, when there are several; else empty. */
  courses: readonly CourseInFile[];
  /** The only course, as indices; empty for files that speak of one course only. */
  own: readonly number[];
  /** What heights of the file are measured from; null when it has none or they are the course's own business. */
  heightsFrom: 'sea level' | null;
  leftOut: readonly LeftOut[];
  assumptions: readonly Problem[];
}>;

/**
 * Reads a course file of any kind; nothing is kept or changed.
 * @param bytes - the whole file
 * @returns its features, or every problem with its place in the file
 */
export function readCourseFile(bytes: Uint8Array): Result<ReadFile> {
  if (bytes.length > importLimits.file_bytes)
    return refuse(
      'file',
      `is ${(bytes.length / 1e6).toFixed(0)} MB, larger than the ${importLimits.file_bytes / 1e6} MB taken: cut it down to one course`,
    );
  // A course that was handed on as a page: its file lies in it, as it was exported.
  const shared = sharedIn(bytes);
  if (shared?.ok === false) return shared;
  const known = courseKind(shared === null ? bytes : Buffer.from(shared.value.course));
  if (!known.ok) return known;
  const read = readKnown(known.value);
  return read.ok ? withinLimits(read.value) : read;
}

function readKnown(file: KnownFile): Result<ReadFile> {
  switch (file.kind) {
    case 'geojson':
      return readGeojson(file.text, file.encoding);
    case 'overpass':
      return fromOsm(file.kind, file.encoding, readOverpass(file.text));
    case 'osm':
      return fromOsm(file.kind, file.encoding, readOsmXml(file.text));
    case 'gpx':
      return fromLoose(file.kind, file.encoding, readGpx(file.text));
    case 'kml':
      return fromLoose(file.kind, file.encoding, readKml(file.text));
    case 'kmz':
      return readKmz(file.bytes);
    default:
      return file satisfies never;
  }
}

const NOTHING = {
  members: {},
  items: [],
  courses: [],
  own: [],
  heightsFrom: null,
  leftOut: [],
  assumptions: [],
} as const;

function readGeojson(text: string, encoding: string): Result<ReadFile> {
  const large = oversizedJson(text);
  if (large !== undefined) return { ok: false, problems: [large] };
  let input: unknown;
  try {
    input = JSON.parse(text);
  } catch {
    return { ok: false, problems: [jsonSyntaxProblem(text)] };
  }
  const twice = duplicateKeys(text);
  if (twice.length > 0) return { ok: false, problems: twice };
  const structure = checkStructure(input);
  if (!structure.ok) return structure;
  const { features, ...members } = structure.value;
  // A file that speaks of discs at all is a course; others may hold named places, as from a drawing program.
  const isCourse = features.some(({ properties }) =>
    [properties, properties?.tags].some(tags => tags?.disc_golf !== undefined),
  );
  const loose = isCourse ? [] : looseIndices(features);
  const items = proposeRoles(features, loose);
  return {
    ok: true,
    value: { ...NOTHING, kind: 'geojson', encoding, members, features, items, ...(items.length === 0 ? { text } : {}) },
  };
}

function fromOsm(kind: 'osm' | 'overpass', encoding: string, data: ReturnType<typeof readOsmXml>): Result<ReadFile> {
  if (!data.ok) return data;
  const { features, relations, leftOut, assumptions } = osmFeatures(data.value);
  const found = coursesInFile(features, relations).filter(({ features: own }) => own.length > 0);
  if (found.length === 0)
    return refuse(
      'file',
      `holds no disc golf hole, tee or basket (${features.length} other things are there): download the map again with the course inside, or map its tees and baskets first`,
    );
  const [only] = found;
  return {
    ok: true,
    value: {
      ...NOTHING,
      kind,
      encoding,
      ...(found.length === 1 && only!.name !== '' ? { name: only!.name } : {}),
      members: { type: 'FeatureCollection', attribution: '© OpenStreetMap contributors, ODbL 1.0' },
      features,
      courses: found.length > 1 ? found : [],
      own: found.length === 1 ? only!.features : [],
      leftOut,
      assumptions,
    },
  };
}

function fromLoose(kind: 'gpx' | 'kml' | 'kmz', encoding: string, map: Result<LooseMap>): Result<ReadFile> {
  if (!map.ok) return map;
  const { features, name, leftOut, assumptions, heightsFrom } = map.value;
  if (features.length === 0)
    return refuse('file', 'holds no places, lines or areas: check that they were exported with it');
  const loose = features.flatMap(({ properties }, index) =>
    typeof properties?.disc_golf === 'string' || typeof properties?.leisure === 'string' ? [] : [index],
  );
  if (loose.length > importLimits.looseItems)
    return refuse(
      'file',
      `holds ${loose.length} places and lines; at most ${importLimits.looseItems} are taken, as each has to be confirmed: cut it down to the course`,
    );
  return {
    ok: true,
    value: {
      ...NOTHING,
      kind,
      encoding,
      ...(name === undefined ? {} : { name }),
      members: { type: 'FeatureCollection' },
      features,
      items: proposeRoles(features, loose),
      heightsFrom,
      leftOut,
      assumptions,
    },
  };
}

function readKmz(archive: Uint8Array): Result<ReadFile> {
  const unzipped = unzipMap(archive);
  if (!unzipped.ok) return unzipped;
  const { name, bytes, others } = unzipped.value;
  const inside = (problems: readonly Problem[]): Result<never> => ({
    ok: false,
    problems: problems.map(({ path, message }) => ({ path: `${name}: ${path}`, message })),
  });
  const decoded = decodeText(bytes);
  if (!decoded.ok) return inside(decoded.problems);
  const read = fromLoose('kmz', decoded.value.encoding, readKml(decoded.value.text));
  if (!read.ok) return inside(read.problems);
  const leftOut =
    others.length === 0
      ? []
      : [{ what: 'other files of the archive', count: others.length, why: 'pictures and parts that are no map' }];
  return { ok: true, value: { ...read.value, leftOut: [...read.value.leftOut, ...leftOut] } };
}

/** Things with a shape that mean nothing to a course by their tags but carry a name. */
function looseIndices(features: readonly Feature[]): number[] {
  const named = features.flatMap(({ geometry, properties }, index) =>
    geometry !== null && typeof properties?.name === 'string' ? [index] : [],
  );
  return named.length > importLimits.looseItems ? [] : named;
}

function withinLimits(file: ReadFile): Result<ReadFile> {
  const { features } = file;
  if (features.length > importLimits.features)
    return refuse(
      'file',
      `holds ${features.length} things; at most ${importLimits.features} are taken: cut it down to the course`,
    );
  const positions = features.reduce((sum, { geometry }) => sum + positionsOf(geometry).length, 0);
  if (positions > importLimits.positions)
    return refuse(
      'file',
      `holds ${positions} corners; at most ${importLimits.positions} are taken: cut it down to the course`,
    );
  return { ok: true, value: file };
}

function refuse(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
