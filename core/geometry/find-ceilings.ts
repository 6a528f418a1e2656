import { atStation, nearestStation } from './along-line.ts';
import { closestOnRings } from './closest-point.ts';
import type { HoleMap, LocalPoint, LocalPolygon } from './hole-map.ts';
import type { CeilingReport } from './hole-report.ts';
import { type Stretch, stretchesInside } from './line-crossings.ts';
import { distance_m, lineLength_m } from './line-length.ts';

/** A mapped ceiling this close beside the line of play still hangs in the throw's way. */
const BESIDE_m = 2;
/** Crowns whose undersides differ by less are one ceiling. */
const SAME_HEIGHT_m = 0.25;

type Piece = Stretch & Readonly<{ clearance_m: number; sources: readonly string[] }>;

/** Free heights over the line of play: mapped ceilings as they are, crowns of trees and of woods joined where they hang alike. */
export function findCeilings(map: HoleMap): CeilingReport[] {
  const found: CeilingReport[] = [];
  for (const { polygons, clearance_m, source } of map.ceilings) {
    const over = stretchesInside(map.line, polygons);
    for (const stretch of over) found.push({ ...stretch, clearance_m, source: `${source} (mapped)` });
    if (over.length === 0)
      for (const stretch of stretchesBeside(map.line, polygons))
        found.push({ ...stretch, clearance_m, source: `${source} (mapped, beside the line of play)` });
  }
  const crowns = map.trees
    .filter(tree => tree.height_m > tree.crownBase_m)
    .flatMap(tree =>
      underCircle(map.line, tree.at, tree.crownRadius_m).map(stretch => ({
        ...stretch,
        clearance_m: tree.crownBase_m,
        sources: [tree.source],
      })),
    );
  found.push(...joined(crowns).map(piece => report(piece, 'tree crowns')));
  const canopies = map.covers
    .filter(cover => cover.base_m > 0 && cover.height_m > cover.base_m)
    .flatMap(cover =>
      stretchesInside(map.line, cover.polygons).map(stretch => ({
        ...stretch,
        clearance_m: cover.base_m,
        sources: [cover.source],
        roof: cover.form === 'building' || cover.form === 'wall' || cover.form === 'fence' || cover.form === 'hedge',
      })),
    );
  found.push(...joined(canopies.filter(c => !c.roof)).map(piece => report(piece, 'wood crowns')));
  found.push(...joined(canopies.filter(c => c.roof)).map(piece => report(piece, 'roof')));
  return found.sort((a, b) => a.from_m - b.from_m || a.to_m - b.to_m);
}

const report = ({ from_m, to_m, clearance_m, sources }: Piece, what: string): CeilingReport => ({
  from_m,
  to_m,
  clearance_m,
  source: `${what}: ${[...new Set(sources)].join(', ')}`,
});

/** Cuts overlapping stretches so that each place has its lowest height, then joins neighbours that hang alike. */
function joined(pieces: readonly Piece[]): Piece[] {
  const cuts = [...new Set(pieces.flatMap(piece => [piece.from_m, piece.to_m]))].sort((a, b) => a - b);
  const result: Piece[] = [];
  for (let k = 1; k < cuts.length; k++) {
    const [from_m, to_m] = [cuts[k - 1]!, cuts[k]!];
    const middle_m = (from_m + to_m) / 2;
    const over = pieces.filter(piece => piece.from_m <= middle_m && piece.to_m >= middle_m);
    if (over.length === 0) continue;
    const clearance_m = Math.min(...over.map(piece => piece.clearance_m));
    const sources = over
      .filter(piece => piece.clearance_m <= clearance_m + SAME_HEIGHT_m)
      .flatMap(piece => piece.sources);
    const last = result.at(-1);
    if (last !== undefined && last.to_m === from_m && Math.abs(last.clearance_m - clearance_m) <= SAME_HEIGHT_m)
      result[result.length - 1] = {
        from_m: last.from_m,
        to_m,
        clearance_m: Math.min(last.clearance_m, clearance_m),
        sources: [...last.sources, ...sources],
      };
    else result.push({ from_m, to_m, clearance_m, sources });
  }
  return result;
}

/** Stretches of the line within a circle. */
function underCircle(line: readonly LocalPoint[], centre: LocalPoint, radius_m: number): Stretch[] {
  const stretches: Stretch[] = [];
  let start_m = 0;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const leg_m = distance_m(a, b);
    if (leg_m === 0) continue;
    const [ux, uy] = [(b[0] - a[0]) / leg_m, (b[1] - a[1]) / leg_m];
    const [dx, dy] = [centre[0] - a[0], centre[1] - a[1]];
    const along_m = dx * ux + dy * uy;
    const half_m = Math.sqrt(Math.max(0, radius_m ** 2 - (dx * uy - dy * ux) ** 2));
    const [from_m, to_m] = [Math.max(0, along_m - half_m), Math.min(leg_m, along_m + half_m)];
    if (half_m > 0 && to_m > from_m) stretches.push({ from_m: start_m + from_m, to_m: start_m + to_m });
    start_m += leg_m;
  }
  return stretches;
}

/** Stretches that pass within `BESIDE_m` of polygons the line does not enter, to a quarter of a metre. */
function stretchesBeside(line: readonly LocalPoint[], polygons: readonly LocalPolygon[]): Stretch[] {
  const stretches: Stretch[] = [];
  const steps = Math.ceil(lineLength_m(line) / 0.25);
  const nearest = polygons.flatMap(polygon => polygon.flat()).map(p => nearestStation(line, p).distance_m);
  // The rings' corners or the line's own points are nearest; skip the walk for ceilings plainly elsewhere.
  if (Math.min(...nearest) > 50) return stretches;
  let open: { from_m: number; to_m: number } | undefined;
  for (let k = 0; k <= steps; k++) {
    const station_m = (lineLength_m(line) * k) / steps;
    if (closestOnRings(atStation(line, station_m).point, polygons).distance_m > BESIDE_m) open = undefined;
    else if (open !== undefined) open.to_m = station_m;
    else {
      open = { from_m: station_m, to_m: station_m };
      stretches.push(open);
    }
  }
  return stretches;
}
