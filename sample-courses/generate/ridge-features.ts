import { atStation } from '../../core/geometry/along-line.ts';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import { besideLine, stations, strip } from './beside-line.ts';
import type { HolePlan } from './hole-plan.ts';
import { area, blob, line, type MapItem, point, rectangle } from './map-item.ts';
import { reservoir } from './ridge-ground.ts';

/** Water, out-of-bounds, hazards, mandos, drop zones, roads and buildings of the ridge course. */
export function ridgeFeatures(holes: readonly HolePlan[]): MapItem[] {
  const lineOf = (ref: number) => holes[ref - 1]!.line;
  return [...water(lineOf), ...boundaries(lineOf), ...mandos(lineOf), ...people(lineOf)];
}

type LineOf = (ref: number) => readonly LocalPoint[];

function water(lineOf: LineOf): MapItem[] {
  const green = lineOf(14).at(-1)!;
  const island = blob([green[0] - 0.5, green[1] + 1], [10, 9], 14, i => 0.06 * Math.sin(3 * i));
  const pond: MapItem = {
    ...area(
      blob([green[0] - 1, green[1] + 6], [25, 27], 18, i => 0.05 * Math.sin(2 * i)),
      { water: 'pond', name: 'Island pond' },
    ),
    cutouts: [island],
  };
  return [
    area(reservoir, { natural: 'water', water: 'reservoir', name: 'Lower reservoir' }),
    pond,
    area(island, { disc_golf: 'island', ref: '14' }),
    line(
      [
        [486, 300],
        [505, 250],
        [508, 205],
        [503, 170],
      ],
      { waterway: 'stream', width: '1.5' },
    ),
    line(
      [
        [514, 120],
        [528, 92],
        [533, 62],
        [548, 42],
        [556, 27],
      ],
      { waterway: 'stream', width: '2' },
    ),
    line(
      [
        [18, 306],
        [52, 300],
        [96, 303],
      ],
      { waterway: 'ditch', width: '0.8', out_of_bounds: 'no' },
    ),
  ];
}

function boundaries(lineOf: LineOf): MapItem[] {
  return [
    area(
      [
        [205, 408],
        [122, 393],
        [62, 404],
        [60, 440],
        [205, 445],
      ],
      { disc_golf: 'out_of_bounds', name: 'Pasture' },
    ),
    line(
      [
        [612, 432],
        [560, 444],
        [510, 454],
        [440, 443],
      ],
      { disc_golf: 'out_of_bounds', name: 'Boundary' },
    ),
    line(
      [
        [646, 120],
        [642, 195],
        [662, 240],
        [684, 284],
      ],
      { highway: 'service', out_of_bounds: 'yes', width: '4' },
    ),
    area(rectangle([596, 76], [606, 84]), { building: 'yes', out_of_bounds: 'yes', name: 'Pump house', height: '4' }),
    area(
      strip(
        lineOf(3),
        stations(120, 148, 7),
        () => -13,
        s => -5 + 0.06 * (s - 134),
      ),
      { disc_golf: 'hazard', name: 'Marsh', natural: 'wetland' },
    ),
    area(
      blob(besideLine(lineOf(12), 176, 10), [8, 6], 12, i => 0.1 * Math.sin(2 * i)),
      { disc_golf: 'hazard', name: 'Quarry pit' },
    ),
    area(
      blob(besideLine(lineOf(2), 128, -8), [5, 5], 10, () => 0),
      { disc_golf: 'hazard', name: 'Sand' },
    ),
    point(besideLine(lineOf(7), 62, 9), { disc_golf: 'drop_zone', ref: '7' }),
    point(besideLine(lineOf(14), 58, 4), { disc_golf: 'drop_zone', ref: '14' }),
    point(besideLine(lineOf(12), 70, 3), { disc_golf: 'drop_zone', ref: '12' }),
    point(besideLine(lineOf(5), 78, 4), { disc_golf: 'drop_zone', ref: '5' }),
  ];
}

function mandos(lineOf: LineOf): MapItem[] {
  const wire = [besideLine(lineOf(17), 48, 14), besideLine(lineOf(17), 48, -14)];
  const wall = [besideLine(lineOf(16), 46, 12), besideLine(lineOf(16), 46, -12)];
  return [
    point(besideLine(lineOf(12), 101, 6), { disc_golf: 'mando', ref: '12', mando: 'right' }),
    point(besideLine(lineOf(9), 116, -7), { disc_golf: 'mando', ref: '9', mando: 'left' }),
    line([besideLine(lineOf(18), 70, -6), besideLine(lineOf(18), 70, -30)], {
      disc_golf: 'mando',
      ref: '18',
      mando: 'left',
    }),
    line(wire, { disc_golf: 'mando', ref: '17', mando: 'below', height: '6' }),
    line(wall, { barrier: 'wall', height: '1.2' }),
    line(wall, { disc_golf: 'mando', ref: '16', mando: 'above', height: '1.2' }),
  ];
}

function people(lineOf: LineOf): MapItem[] {
  const jetty = atStation(lineOf(6), 40).point;
  return [
    area(rectangle([352, 452], [386, 478]), { amenity: 'parking' }),
    area(rectangle([330, 484], [344, 493]), { building: 'yes', name: 'Clubhouse', height: '12 ft' }),
    line(
      [
        [340, 560],
        [356, 515],
        [368, 478],
      ],
      { highway: 'service' },
    ),
    line(
      [
        [760, 470],
        [660, 476],
        [540, 500],
        [430, 540],
        [356, 580],
      ],
      { highway: 'tertiary', name: 'Ridge road' },
    ),
    line(
      [
        [-60, 150],
        [20, 128],
        [103, 116],
        [160, 140],
        [250, 150],
        [300, 140],
        [360, 150],
        [420, 165],
      ],
      { highway: 'path' },
    ),
    line(
      [
        [jetty[0], jetty[1] - 14],
        [jetty[0] + 4, jetty[1] - 40],
      ],
      { man_made: 'pier' },
    ),
    line(
      [
        [502, 138],
        [512, 118],
        [514, 110],
        [496, 104],
      ],
      { highway: 'footway', bridge: 'yes' },
    ),
    line(
      [
        [372, 60],
        [392, 68],
        [420, 74],
        [452, 66],
      ],
      { natural: 'tree_row', height: '9', min_height: '1.5' },
    ),
    line(
      [
        [40, 160],
        [66, 150],
        [84, 128],
      ],
      { barrier: 'hedge', height: '1.4' },
    ),
  ];
}
