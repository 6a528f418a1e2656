import type { Position } from 'geojson';
import { wrapLongitude_deg } from './ground-distance.ts';
import type { Notes } from './notes.ts';
import { findCrossing, type RingPoint } from './ring-crossing.ts';
import type { TaggedFeature } from './tags.ts';

/** A step of more than this is no part of a course drawn across the antimeridian: which way round it goes cannot be told. */
const mostStep_deg = 90;

/**
 * Notes a problem for every polygon of the feature that crosses itself, has no area, or cannot be read across the
 * antimeridian; and for lines that cannot.
 */
export function checkShape(feature: TaggedFeature, what: string, notes: Notes): void {
  const { geometry } = feature;
  const at = `${feature.path}.geometry.coordinates`;
  if (geometry?.type === 'LineString') checkSteps(geometry.coordinates, at, what, notes);
  if (geometry?.type === 'MultiLineString') {
    for (const [i, line] of geometry.coordinates.entries()) checkSteps(line, `${at}[${i}]`, what, notes);
  }
  if (geometry?.type === 'Polygon') checkPolygon(geometry.coordinates, at, what, notes);
  if (geometry?.type === 'MultiPolygon') {
    for (const [i, polygon] of geometry.coordinates.entries()) checkPolygon(polygon, `${at}[${i}]`, what, notes);
  }
}

function checkSteps(line: readonly Position[], path: string, what: string, notes: Notes): boolean {
  const steps = line.slice(1).map((position, i) => wrapLongitude_deg(position[0]! - line[i]![0]!));
  const far = steps.findIndex(step => Math.abs(step) > mostStep_deg);
  if (far >= 0) {
    notes.problems.push({
      path: `${path}[${far}]`,
      message: `${what}: from longitude ${line[far]![0]} to ${line[far + 1]![0]} it could go either way round the world; cut it at the antimeridian or mend the positions`,
    });
  }
  return far < 0;
}

function checkPolygon(rings: readonly (readonly Position[])[], path: string, what: string, notes: Notes): void {
  if (!rings.map((ring, i) => checkSteps(ring, `${path}[${i}]`, what, notes)).every(Boolean)) return;
  const plane = unwrap(rings);
  const round = plane.findIndex(ring => ring.length > 0 && Math.abs(ring.at(-1)![0] - ring[0]![0]) > 180);
  if (round >= 0) {
    notes.problems.push({
      path: `${path}[${round}]`,
      message: `${what}: the ring runs right round a pole; draw the area itself`,
    });
    return;
  }
  const flat = plane.findIndex(ring => ring.every(point => point[0] === ring[0]![0] && point[1] === ring[0]![1]));
  if (flat >= 0) {
    notes.problems.push({
      path: `${path}[${flat}]`,
      message: `${what}: all positions of the ring are the same; draw an area or delete it`,
    });
    return;
  }
  const crossing = findCrossing(plane);
  if (crossing === undefined) return;
  const { first, second, at, how } = crossing;
  const place = `near [${wrapLongitude_deg(at[0]).toFixed(7)}, ${at[1].toFixed(7)}]`;
  const part = (s: { ring: number; index: number }) =>
    `${first.ring === second.ring ? '' : `ring ${s.ring}, `}positions ${s.index}–${s.index + 1}`;
  const does = how === 'overlaps' ? 'runs along itself' : 'crosses itself';
  const outline =
    first.ring === second.ring
      ? `${ringName(first.ring)} ${does}`
      : `rings ${how === 'overlaps' ? 'run along' : 'cross'} one another`;
  notes.problems.push({
    path: `${path}[${first.ring}]`,
    message: `${what}: the ${outline} ${place} (${part(first)} and ${part(second)}); put its corners in order round the outline`,
  });
}

function ringName(ring: number): string {
  return ring === 0 ? 'outer ring' : `ring ${ring}`;
}

/** Longitudes brought to one side of the antimeridian: each step goes the short way, each ring starts near the first. */
function unwrap(rings: readonly (readonly Position[])[]): RingPoint[][] {
  const origin = rings[0]?.[0]?.[0] ?? 0;
  return rings.map(ring => {
    let lon = origin;
    return ring.map(position => {
      // Away from the antimeridian the number itself is kept, so that equal positions stay exactly equal.
      const plain = position[0]!;
      lon = Math.abs(plain - lon) <= 180 ? plain : plain + 360 * Math.round((lon - plain) / 360);
      return [lon, position[1]!];
    });
  });
}
