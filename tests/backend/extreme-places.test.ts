import type { FeatureCollection } from 'geojson';
import { describe, expect, it } from 'vitest';
import { courseMap } from '../../backend/api/course-map.ts';
import { describeCourse } from '../../backend/api/describe-course.ts';
import { planRound } from '../../backend/planning/plan-round.ts';
import { sheetOfPlan } from '../../backend/sheet/sheet-of-plan.ts';
import { readGround } from '../../backend/terrain/read-ground.ts';
import { makeDay } from '../../core/air/day.ts';
import { parseCourse } from '../../core/course/parse-course.ts';
import { withGround } from '../../core/geometry/with-ground.ts';
import { fitPlayer } from '../../core/player/fit-player.ts';
import { parsePlayer } from '../../core/player/player-file.ts';
import { sketcher } from '../core/geometry/sketch.ts';
import { taken } from './taken.ts';
import { modelFile } from './terrain/model-file.ts';
import { tinyPlayer } from './tiny-round.ts';

/** One invented hole, the same metres wherever it is laid: 70 m north-east with a tree beside it and water behind. */
function courseAt(lon_deg: number, lat_deg: number) {
  const sketch = sketcher({ lon_deg, lat_deg, turn_deg: 0, mirrored: false });
  const feature = (geometry: object, properties: object) => ({ type: 'Feature', geometry, properties });
  const point = (at: readonly [number, number], properties: object) =>
    feature({ type: 'Point', coordinates: wrapped(sketch.at(at)) }, properties);
  const collection = {
    type: 'FeatureCollection',
    features: [
      point([0, 0], { disc_golf: 'tee', ref: '1' }),
      point([42, 56], { disc_golf: 'basket', ref: '1' }),
      feature(
        {
          type: 'LineString',
          coordinates: [
            [0, 0],
            [42, 56],
          ].map(at => wrapped(sketch.at(at as [number, number]))),
        },
        { disc_golf: 'hole', ref: '1', par: '3' },
      ),
      point([28, 20], { natural: 'tree', height: '9', min_height: '2', diameter_crown: '5', circumference: '1' }),
      feature(
        { ...water(sketch), coordinates: water(sketch).coordinates.map(ring => ring.map(wrapped)) },
        { natural: 'water' },
      ),
    ],
  } as FeatureCollection;
  return taken(parseCourse(collection, 'far.geojson'));
}

const water = (sketch: ReturnType<typeof sketcher>) => sketch.box(30, 75, 80, 100);
/** As a file would have it: 180.0003 is −179.9997. */
const wrapped = ([lon, lat]: readonly number[]): [number, number] => [lon! >= 180 ? lon! - 360 : lon!, lat!];

const player = fitPlayer(taken(parsePlayer(tinyPlayer())));
const planOf = async (course: ReturnType<typeof courseAt>, altitude_m?: number) => {
  const day = taken(makeDay({ wind: { speed_mps: 3, from_deg: 40 }, ...(altitude_m !== undefined && { altitude_m }) }));
  const limits = { classes: ['putter'], hands: ['backhand'] } as const;
  const plan = taken(await planRound({ course, player, day, limits, seed: 7 }, { threads: 1 }));
  return { course, player, day, plan };
};
const UNITS = { length: 'm', speed: 'mps' } as const;

describe('the same hole', async () => {
  const usual = await planOf(courseAt(24.9, 60.2));

  // Half of these crosses: 42 m east of 179.9998° lies at −179.9998°.
  it.each([
    ['at 70° north', 20, 70],
    ['at 70° south', -60, -70],
    ['across the antimeridian', 179.9998, -16.8],
    ['on the equator and the meridian of Greenwich', -0.0002, -0.0003],
  ])('%s is measured, planned and drawn the same', async (_, lon, lat) => {
    const course = courseAt(lon, lat);
    const report = describeCourse(course).holes[0]!;
    // Pythagoras: √(42² + 56²) = 70; the frame is held against geodesics elsewhere.
    expect(Math.abs(report.length_m - 70)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(report.bearing_deg - (Math.atan2(42, 56) * 180) / Math.PI)).toBeLessThanOrEqual(0.01);
    const made = await planOf(course);
    const [here, there] = [made.plan.holes[0]!, usual.plan.holes[0]!];
    expect(here.choice.discId).toBe(there.choice.discId);
    // Micrometres turn a tie the other way now and then: the shots may differ, what they are worth may not (its sampling error).
    expect(Math.abs(here.expectedThrows - there.expectedThrows)).toBeLessThanOrEqual(0.05);
    const html = sheetOfPlan(made, { format: 'fourAPage', paper: 'a4', units: UNITS });
    expect(html).toContain('<svg');
    expect(html).not.toMatch(/NaN|Infinity|undefined/);
    const { southWest, northEast } = courseMap(course).bounds;
    // In one piece: 42 m are some thousandths of a degree, also where the longitude turns over.
    expect(northEast[0] - southWest[0]).toBeLessThan(0.002);
    expect(northEast[0] - southWest[0]).toBeGreaterThan(0);
  });
});

describe('at 3,000 m', () => {
  it('is planned in its thinner air, on ground read at that height, and drawn', async () => {
    const course = courseAt(10.3, 46.6);
    const terrain = modelFile({
      code: 32632,
      lon_deg: 10.3,
      lat_deg: 46.6,
      pixel: 4,
      side: 201,
      height: (dx, dy) => 3000 + 0.05 * dx + 0.02 * dy,
    });
    const surveyed = withGround(course, taken(await readGround(course, { terrain })));
    const report = describeCourse(surveyed).holes[0]!;
    // By hand: 0.05 × 42 + 0.02 × 56 = 3.22 m; the grid is turned by 0.9° (0.05 m).
    expect(Math.abs(report.rise_m! - 3.22)).toBeLessThanOrEqual(0.08);
    const made = await planOf(surveyed, 3000);
    // ICAO standard atmosphere (Doc 7488): 0.9093 kg/m³ at 3,000 m.
    expect(Math.abs(made.plan.air.density_kgpm3 - 0.9093)).toBeLessThanOrEqual(0.02);
    expect(made.plan.holes[0]!.expectedThrows).toBeGreaterThan(2);
    expect(sheetOfPlan(made, { format: 'pocket', paper: 'a4', units: UNITS })).not.toMatch(/NaN|Infinity|undefined/);
  });
});
