import { atStation } from '../../geometry/along-line.ts';
import type { HoleMap, LocalPoint, LocalPolygon } from '../../geometry/hole-map.ts';
import { lineLength_m } from '../../geometry/line-length.ts';
import { shortened } from '../markup.ts';
import { placeAtOneOf, placeInAreas, type Taken } from './label-places.ts';
import { type Place, word } from './svg.ts';
import type { ViewFrame } from './view-frame.ts';

const LONGEST_WORD = 14;
const MOST_WORDS = 6;
/** Beside a way of people, clear of its line. */
const BESIDE_MM = 0.8;

/** Names the ground a throw must not end on, and where people are; as many as find room. */
export function areaWords(map: HoleMap, frame: ViewFrame, taken: Taken): string {
  const areas: (readonly [string, readonly LocalPolygon[]])[] = [
    ...map.outOfBounds.map(area => [groundWord(area.what), area.polygons] as const),
    ...map.hazards.map(area => ['hazard', area.polygons] as const),
    ...(map.lostGrounds ?? []).map(area => ['discs get lost', area.polygons] as const),
    ...(map.islands.length > 0 ? [['island', map.islands.flatMap(({ polygons }) => polygons)] as const] : []),
  ];
  const named = areas
    .map(([text, polygons]) => ({ text, place: placeInAreas(text, polygons, frame, taken) }))
    .filter(({ place }) => place !== null)
    .slice(0, MOST_WORDS);
  const ways = map.people.map(({ what, lines }) => {
    const text = shortened(what, LONGEST_WORD);
    return { text, place: placeAtOneOf(text, besideLines(lines, frame), frame, taken) };
  });
  return [...named, ...ways.filter(({ place }) => place !== null).slice(0, MOST_WORDS)]
    .map(({ text, place }) => word(text, place!))
    .join('');
}

/** "water" or "out": names are in the words beside the drawing. */
function groundWord(what: string | undefined): string {
  return what !== undefined && /\bwater\b/.test(what) ? 'water' : 'out';
}

const EVERY_MM = 4;

function* besideLines(lines: readonly (readonly LocalPoint[])[], frame: ViewFrame): Generator<Place> {
  for (const line of lines) {
    const length_m = line.length < 2 ? 0 : lineLength_m(line);
    if (length_m === 0) continue;
    for (let station_m = 0; station_m <= length_m; station_m += EVERY_MM / frame.mmPerMetre) {
      const [x, y] = frame.place(atStation(line, station_m).point);
      yield [x, y - BESIDE_MM];
    }
  }
}
