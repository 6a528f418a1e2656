import { nearestStation } from './along-line.ts';
import { bearing_deg } from './bearing.ts';
import { findBarriers } from './find-barriers.ts';
import { findBends } from './find-bends.ts';
import { findBlindSpots } from './find-blind-spots.ts';
import { findCeilings } from './find-ceilings.ts';
import { findGaps } from './find-gaps.ts';
import { findOutOfBounds } from './find-out-of-bounds.ts';
import { findPeople } from './find-people.ts';
import type { HoleMap, LocalMando } from './hole-map.ts';
import type { HoleReport } from './hole-report.ts';
import { distance_m, lineLength_m } from './line-length.ts';
import { groundHeight } from './terrain.ts';

/**
 * What the map says of a hole, along its line of play by station from the tee.
 * @param notMapped - kinds of thing the course's map says nothing about (Course.notMapped), passed through
 */
export function describeHole(map: HoleMap, notMapped: readonly string[] = []): HoleReport {
  const tee = map.line[0]!;
  const length_m = distance_m(tee, map.basket);
  const rise_m = map.terrain.known
    ? groundHeight(map.terrain, map.basket[0], map.basket[1]) - groundHeight(map.terrain, tee[0], tee[1])
    : null;
  const bends = findBends(map.line);
  const ceilings = findCeilings(map);
  return {
    ref: map.ref,
    ...(map.name === undefined ? {} : { name: map.name }),
    par: map.par,
    parSource: map.parSource,
    length_m,
    playLength_m: lineLength_m(map.line),
    bearing_deg: bearing_deg(tee, map.basket),
    rise_m,
    slopeLength_m: rise_m === null ? null : Math.hypot(length_m, rise_m),
    bends,
    ceilings,
    ...findGaps(map, ceilings),
    barriers: findBarriers(map),
    outOfBounds: findOutOfBounds(map),
    mandos: map.mandos.map(mando => describeMando(map, mando)).sort((a, b) => a.station_m - b.station_m),
    ...findPeople(map),
    blindSpots: findBlindSpots(map, bends),
    assumptions: [...map.assumptions],
    notMapped: [...notMapped],
  };
}

function describeMando(map: HoleMap, mando: LocalMando): HoleReport['mandos'][number] {
  return {
    station_m: nearestStation(map.line, mando.at).station_m,
    side: mando.side,
    low_m: mando.low_m,
    high_m: Number.isFinite(mando.high_m) ? mando.high_m : null,
    assumed: [...mando.assumed],
    source: mando.source,
  };
}
