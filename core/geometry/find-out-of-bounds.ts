import { atStation, nearestStation } from './along-line.ts';
import { closestOnSegment } from './closest-point.ts';
import type { HoleMap, LocalPoint, LocalPolygon } from './hole-map.ts';
import type { HoleReport } from './hole-report.ts';
import { crossingShare, stretchesInside } from './line-crossings.ts';
import { distance_m, lineLength_m } from './line-length.ts';

/** Penalty ground farther from the line of play than this is not named. */
const REACH_m = 30;
const STEP_m = 0.5;
/** On an island the edges are measured over this last stretch before the basket. */
const LANDING_m = 5;

type Entry = HoleReport['outOfBounds'][number];

/** Out-of-bounds by side: where it runs abreast within 30 m, where it comes closest; where the line crosses it; what waits behind the basket. */
export function findOutOfBounds(map: HoleMap): Entry[] {
  const entries: Entry[] = [];
  for (const { polygons, what, name, source } of map.outOfBounds)
    entries.push(
      ...sidesOf(map.line, polygons, `${[name, what ?? 'out-of-bounds'].filter(Boolean).join(', ')} (${source})`),
    );
  for (const { polygons, source } of map.islands)
    entries.push(...outsideOf(map.line, polygons, `outside the island (${source})`));
  return entries.sort((a, b) => a.from_m - b.from_m || a.closest_m - b.closest_m);
}

function sidesOf(line: readonly LocalPoint[], polygons: readonly LocalPolygon[], what: string): Entry[] {
  const across = stretchesInside(line, polygons).map(
    (stretch): Entry => ({ side: 'across', ...stretch, closest_m: 0, station_m: stretch.from_m, what }),
  );
  const beside = (['left', 'right'] as const).flatMap(side => {
    const entry = besideLine(line, polygons, side, what);
    return entry === undefined ? [] : [entry];
  });
  // Where the line runs through it, its two halves on either side add nothing.
  if (across.length > 0) return across;
  const behind = beyondBasket(line, polygons, what);
  return behind === undefined ? beside : [...beside, behind];
}

function besideLine(
  line: readonly LocalPoint[],
  polygons: readonly LocalPolygon[],
  side: 'left' | 'right',
  what: string,
): Entry | undefined {
  const sign = side === 'left' ? 1 : -1;
  const length_m = lineLength_m(line);
  const steps = Math.ceil(length_m / STEP_m);
  let range: { from_m: number; to_m: number } | undefined;
  let closest: { closest_m: number; station_m: number } | undefined;
  for (let k = 0; k <= steps; k++) {
    const station_m = (length_m * k) / steps;
    const { point, along } = atStation(line, Math.min(station_m, length_m - 1e-9));
    const end: LocalPoint = [point[0] - along[1] * sign * REACH_m, point[1] + along[0] * sign * REACH_m];
    const away_m = rayTo(point, end, polygons);
    if (away_m === undefined) continue;
    if (range === undefined) range = { from_m: station_m, to_m: station_m };
    else range.to_m = station_m;
    if (closest === undefined || away_m < closest.closest_m) closest = { closest_m: away_m, station_m };
  }
  // At a bend's outside or off the line's end no ray meets it; a corner may also come nearer than any ray finds.
  for (const polygon of polygons)
    for (const ring of polygon)
      for (const corner of ring) {
        const near = nearestStation(line, corner);
        const isAbreast = near.station_m > 0 && near.station_m < length_m;
        if (near.left_m * sign <= 0 || near.distance_m > REACH_m || !isAbreast) continue;
        if (closest === undefined || near.distance_m < closest.closest_m)
          closest = { closest_m: near.distance_m, station_m: near.station_m };
      }
  if (closest === undefined) return undefined;
  const { station_m } = closest;
  return {
    side,
    from_m: Math.min(range?.from_m ?? station_m, station_m),
    to_m: Math.max(range?.to_m ?? station_m, station_m),
    ...closest,
    what,
  };
}

function rayTo(from: LocalPoint, to: LocalPoint, polygons: readonly LocalPolygon[]): number | undefined {
  let nearest: number | undefined;
  for (const polygon of polygons)
    for (const ring of polygon)
      for (let i = 1; i < ring.length; i++) {
        const t = crossingShare(from, to, ring[i - 1]!, ring[i]!);
        if (t !== undefined && (nearest === undefined || t < nearest)) nearest = t;
      }
  return nearest === undefined ? undefined : nearest * REACH_m;
}

function beyondBasket(line: readonly LocalPoint[], polygons: readonly LocalPolygon[], what: string): Entry | undefined {
  const basket = line.at(-1)!;
  const station_m = lineLength_m(line);
  const { along } = atStation(line, station_m);
  let closest_m = Number.POSITIVE_INFINITY;
  for (const polygon of polygons)
    for (const ring of polygon)
      for (let i = 1; i < ring.length; i++) {
        const { point } = closestOnSegment(basket, ring[i - 1]!, ring[i]!);
        const away_m = distance_m(basket, point);
        // Behind means within 45° of straight on.
        const on_m = (point[0] - basket[0]) * along[0] + (point[1] - basket[1]) * along[1];
        if (on_m > away_m * Math.SQRT1_2) closest_m = Math.min(closest_m, away_m);
      }
  return closest_m <= REACH_m
    ? { side: 'beyond', from_m: station_m, to_m: station_m, closest_m, station_m, what }
    : undefined;
}

/** On an island hole everything else is out: the edge is met from inside, where the line of play enters and round the basket. */
function outsideOf(line: readonly LocalPoint[], polygons: readonly LocalPolygon[], what: string): Entry[] {
  const length_m = lineLength_m(line);
  const inside = stretchesInside(line, polygons);
  const entries: Entry[] = [];
  let from_m = 0;
  for (const stretch of [...inside, { from_m: length_m, to_m: length_m }]) {
    if (stretch.from_m - from_m > 1e-6)
      entries.push({ side: 'across', from_m, to_m: stretch.from_m, closest_m: 0, station_m: from_m, what });
    from_m = stretch.to_m;
  }
  const last = inside.at(-1);
  if (last === undefined) return entries;
  // The landing by the basket is what matters: farther out the edge the line came in over would always be the closest.
  const start_m = Math.max((last.from_m + last.to_m) / 2, last.to_m - LANDING_m);
  for (const side of ['left', 'right'] as const) {
    const onIsland = stretchLine(line, start_m, last.to_m);
    const entry = onIsland.length < 2 ? undefined : besideLine(onIsland, polygons, side, what);
    if (entry !== undefined)
      entries.push({
        ...entry,
        from_m: entry.from_m + start_m,
        to_m: entry.to_m + start_m,
        station_m: entry.station_m + start_m,
      });
  }
  const behind = beyondBasket(line, polygons, what);
  return behind === undefined ? entries : [...entries, behind];
}

function stretchLine(line: readonly LocalPoint[], from_m: number, to_m: number): LocalPoint[] {
  const points: LocalPoint[] = [atStation(line, from_m).point];
  let station_m = 0;
  for (let i = 1; i < line.length; i++) {
    station_m += distance_m(line[i - 1]!, line[i]!);
    if (station_m > from_m + 1e-6 && station_m < to_m - 1e-6) points.push(line[i]!);
  }
  points.push(atStation(line, to_m).point);
  return points;
}
