import { parseCourseText } from '../../core/course/parse-course-text.ts';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import type { HoleMap, LocalPoint } from '../../core/geometry/hole-map.ts';
import { distance_m } from '../../core/geometry/line-length.ts';
import { isInAny } from '../../core/geometry/point-in-polygon.ts';
import { holeLies } from '../../core/review/hole-lies.ts';
import { ROUND_SCHEMA, type RoundHole, type RoundThrow } from '../../core/review/round-file.ts';
import { type SeededRandom, seededRandom } from './seeded-random.ts';
import { shortNine } from './short-nine.ts';

/** What the newer player reckons each disc goes, full and flat: the slowest that reaches is thrown. Invented. */
const REACH: readonly Readonly<{ discId: string; reach_m: number }>[] = [
  { discId: 'gliding-putter', reach_m: 52 },
  { discId: 'light-midrange', reach_m: 59 },
  { discId: 'fairway-driver', reach_m: 64 },
];
const PUTTER = 'soft-putter';
/** One standard deviation, shares of the distance; long throws land short more often than past. Invented. */
const LONG_SD = 0.1;
const SIDE_SD = 0.11;
const LONGEST_PUTT_M = 9;
const MOST_THROWS = 8;

/**
 * An invented round of the newer player on the short nine, planned for a light wind that turned out stronger. What is written of
 * the throws differs, as it does in life: all of the tee shots' lines, of later throws only the disc, once nothing at all.
 */
export function sampleRound(): string {
  const course = parseCourseText(shortNine(), 'short-nine.geojson');
  if (!course.ok) throw new RangeError(JSON.stringify(course.problems));
  const random = seededRandom(90210);
  const round = {
    schema: ROUND_SCHEMA,
    course: course.value.name,
    player: 'Newer player',
    date: '2026-07-12',
    day: { wind: { speed_mps: 2, from_deg: 250 } },
    realDay: { wind: { speed_mps: 5, from_deg: 290, gust_mps: 8 } },
    note: 'invented: made by a seeded script, nobody threw it',
    holes: course.value.holes.map(hole => playedHole(buildHoleMap(course.value, hole), random)),
  };
  return `${JSON.stringify(round, null, 1)}\n`;
}

function playedHole(map: HoleMap, random: SeededRandom): RoundHole {
  const throws: RoundThrow[] = [];
  for (;;) {
    const from = throws.length === 0 ? ([0, 0] as const) : (holeLies(map, throws).at(-1)!.next ?? map.basket);
    const away_m = distance_m(from, map.basket);
    const isLast = throws.length === MOST_THROWS - 1;
    if (away_m <= LONGEST_PUTT_M) throws.push(putt(away_m, isLast, random));
    else throws.push(thrown(map, from, away_m, throws.length === 0, random));
    if (throws.at(-1)!.holed) return { ref: map.ref, throws };
  }
}

function putt(away_m: number, isLast: boolean, random: SeededRandom): RoundThrow {
  const chance = 1 / (1 + (away_m / 5.3) ** 3.2); // the newer player's own putts
  if (isLast || random.between(0, 1) < chance) return { discId: PUTTER, shape: 'putt', holed: true };
  return { discId: PUTTER, shape: 'putt', rest: { toBasket_m: tenth(random.between(0.8, 2.5)) } };
}

function thrown(map: HoleMap, from: LocalPoint, away_m: number, isTee: boolean, random: SeededRandom): RoundThrow {
  const { discId, reach_m } = REACH.find(disc => disc.reach_m >= away_m) ?? REACH.at(-1)!;
  const power = Math.min(1, Math.max(0.4, Number((away_m / reach_m).toFixed(2))));
  const aim = Math.atan2(map.basket[0] - from[0], map.basket[1] - from[1]);
  const along_m = Math.min(away_m, reach_m * power) * (0.97 + LONG_SD * random.normal());
  const right_m = away_m * (SIDE_SD * random.normal() - 0.03);
  const isHit = isTee && random.between(0, 1) < 0.15;
  const share = isHit ? random.between(0.4, 0.8) : 1;
  const at: LocalPoint = [
    from[0] + share * (along_m * Math.sin(aim) + right_m * Math.cos(aim)),
    from[1] + share * (along_m * Math.cos(aim) - right_m * Math.sin(aim)),
  ];
  const isOut = map.outOfBounds.some(({ polygons }) => isInAny(at, polygons));
  const rest = { east_m: tenth(at[0]), north_m: tenth(at[1]) };
  return {
    ...(isTee ? { discId, hand: 'backhand', shape: 'flat', power, aimBearing_deg: bearing_deg(aim) } : {}),
    ...(!isTee && map.ref !== '4' ? { discId } : {}),
    ...(isHit && { hit: true }),
    rest,
    ...(isOut && { penalties: [{ kind: 'out-of-bounds' as const }] }),
  };
}

const tenth = (value: number) => Number(value.toFixed(1));
const bearing_deg = (angle: number) => tenth(((angle * 180) / Math.PI + 360) % 360);
