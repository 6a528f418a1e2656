import { atStation, nearestStation } from './along-line.ts';
import { dissolve } from './dissolve.ts';
import type { LocalPoint, LocalPolygon } from './hole-map.ts';
import { crossingShare } from './line-crossings.ts';
import { distance_m, lineLength_m } from './line-length.ts';
import { isInPolygon } from './point-in-polygon.ts';

type Leg = Readonly<{ a: LocalPoint; b: LocalPoint; along: LocalPoint; far: LocalPoint }>;

/**
 * Ground beyond a boundary line, seen from the line of play: straight out to `depth_m`, only abreast of the boundary.
 * @returns `polygons`; `sure` is false when the line of play lies on both sides, so that the side is a guess
 * @throws {RangeError} when either line has no length
 */
export function farSide(
  boundary: readonly LocalPoint[],
  play: readonly LocalPoint[],
  depth_m: number,
): Readonly<{ polygons: LocalPolygon[]; sure: boolean }> {
  const { isLeft, sure } = sideOfPlay(boundary, play);
  const legs = legsOf(boundary, isLeft ? -1 : 1);
  const pieces: LocalPoint[][] = [];
  for (const [i, leg] of legs.entries()) {
    const out = (p: LocalPoint): LocalPoint => [p[0] + leg.far[0] * depth_m, p[1] + leg.far[1] * depth_m];
    let piece: LocalPoint[] = [leg.a, leg.b, out(leg.b), out(leg.a)];
    const [before, after] = [legs[i - 1], legs[i + 1]];
    // Where the boundary folds towards its far side, neighbours share the ground along the bisector.
    if (before !== undefined && foldsFarward(before, leg)) piece = clip(piece, leg.a, sum(before.along, leg.along));
    if (after !== undefined && foldsFarward(leg, after))
      piece = clip(piece, leg.b, negative(sum(leg.along, after.along)));
    pieces.push(clipByOthers(piece, legs, [i - 1, i, i + 1]));
    if (after !== undefined && !foldsFarward(leg, after))
      pieces.push(clipByOthers(fan(leg.b, leg.far, after.far, depth_m), legs, [i, i + 1]));
  }
  const solid = pieces.filter(piece => piece.length >= 3 && area_m2(piece) > 1e-6);
  return { polygons: dissolve(solid.map(piece => [[...piece, piece[0]!]])), sure };
}

function sideOfPlay(boundary: readonly LocalPoint[], play: readonly LocalPoint[]) {
  const boundaryLength_m = lineLength_m(boundary);
  const playLength_m = lineLength_m(play);
  let [left, right] = [0, 0];
  const steps = Math.max(2, Math.ceil(playLength_m / 2));
  for (let k = 0; k <= steps; k++) {
    const nearest = nearestStation(boundary, atStation(play, (playLength_m * k) / steps).point);
    // Past the boundary's ends "which side" says little; near ground counts most.
    const abreast = nearest.station_m > 0 && nearest.station_m < boundaryLength_m ? 1 : 0.02;
    const weight = abreast / (1 + nearest.distance_m);
    if (nearest.left_m > 0) left += weight;
    else right += weight;
  }
  return { isLeft: left > right, sure: Math.min(left, right) <= 0.2 * (left + right) };
}

function legsOf(boundary: readonly LocalPoint[], leftSign: 1 | -1): Leg[] {
  const legs: Leg[] = [];
  for (let i = 1; i < boundary.length; i++) {
    const [a, b] = [boundary[i - 1]!, boundary[i]!];
    const length_m = distance_m(a, b);
    if (length_m === 0) continue;
    const along: LocalPoint = [(b[0] - a[0]) / length_m, (b[1] - a[1]) / length_m];
    legs.push({ a, b, along, far: [-along[1] * leftSign, along[0] * leftSign] });
  }
  return legs;
}

const foldsFarward = (first: Leg, second: Leg): boolean => dot(second.along, first.far) > 1e-9;
const dot = (p: LocalPoint, q: LocalPoint): number => p[0] * q[0] + p[1] * q[1];
const sum = (p: LocalPoint, q: LocalPoint): LocalPoint => [p[0] + q[0], p[1] + q[1]];
const negative = (p: LocalPoint): LocalPoint => [-p[0], -p[1]];

/** The corner of ground between two legs that fold away from the far side. */
function fan(centre: LocalPoint, from: LocalPoint, to: LocalPoint, radius_m: number): LocalPoint[] {
  const start = Math.atan2(from[1], from[0]);
  const turn = Math.atan2(from[0] * to[1] - from[1] * to[0], dot(from, to));
  const steps = Math.max(1, Math.ceil(Math.abs(turn) / 0.3));
  const arc = Array.from({ length: steps + 1 }, (_, k): LocalPoint => {
    const angle = start + (turn * k) / steps;
    return [centre[0] + radius_m * Math.cos(angle), centre[1] + radius_m * Math.sin(angle)];
  });
  return [centre, ...arc];
}

/** Where a distant leg of the boundary runs through the piece, only the piece's part on that leg's far side stays. */
function clipByOthers(piece: LocalPoint[], legs: readonly Leg[], own: readonly number[]): LocalPoint[] {
  let rest = piece;
  for (const [j, leg] of legs.entries()) {
    if (own.includes(j) || rest.length < 3) continue;
    const ring = [...rest, rest[0]!];
    const meets =
      isInPolygon(leg.a, [ring]) ||
      isInPolygon(leg.b, [ring]) ||
      ring.some((p, k) => k > 0 && crossingShare(ring[k - 1]!, p, leg.a, leg.b) !== undefined);
    if (meets) rest = clip(rest, leg.a, leg.far);
  }
  return rest;
}

/** The part of a convex piece on the side of `through` that `inward` points to (Sutherland & Hodgman 1974). */
function clip(piece: readonly LocalPoint[], through: LocalPoint, inward: LocalPoint): LocalPoint[] {
  const depth = (p: LocalPoint): number => (p[0] - through[0]) * inward[0] + (p[1] - through[1]) * inward[1];
  const kept: LocalPoint[] = [];
  for (const [k, p] of piece.entries()) {
    const before = piece[(k + piece.length - 1) % piece.length]!;
    const [dBefore, dHere] = [depth(before), depth(p)];
    if (dBefore >= 0 !== dHere >= 0) {
      const t = dBefore / (dBefore - dHere);
      kept.push([before[0] + t * (p[0] - before[0]), before[1] + t * (p[1] - before[1])]);
    }
    if (dHere >= 0) kept.push(p);
  }
  return kept;
}

function area_m2(piece: readonly LocalPoint[]): number {
  let twice = 0;
  for (const [k, p] of piece.entries()) {
    const q = piece[(k + 1) % piece.length]!;
    twice += p[0] * q[1] - p[1] * q[0];
  }
  return Math.abs(twice) / 2;
}
