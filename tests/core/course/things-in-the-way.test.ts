import { describe, expect, it } from 'vitest';
import type { CourseObject } from '../../../core/course/course.ts';
import { area, assumed, at, feature, good, hole, line, point, square, theProblem } from './course-file.ts';

const one = hole('1');
const objects = (...features: unknown[]): readonly CourseObject[] => good(...one, ...features).objects;
const words = (...features: unknown[]): string[] => assumed(good(...one, ...features));
const problem = (...features: unknown[]): string => theProblem(...one, ...features);
const box = square(20, 5, 10);
const strip = [
  [20, 5],
  [30, 5],
] as const;
const place = { featureIndex: 3, path: 'features[3]' };

describe('trees', () => {
  it('keep what is measured', () => {
    const measured = {
      natural: 'tree',
      height: '40 ft',
      diameter_crown: 6,
      min_height: '3',
      circumference: 2.3,
      name: 'Old oak',
    };
    expect(objects(point([20, 5], measured))).toEqual([
      {
        ...place,
        name: 'Old oak',
        assumed: [],
        kind: 'tree',
        position: at([20, 5]),
        height_m: 12.192,
        crownDiameter_m: 6,
        crownBase_m: 3,
        trunkDiameter_m: expect.closeTo(0.7321, 4),
      },
    ]); // [C] 2.3 m round is 0.732 m across; 40 × 0.3048 by hand
  });
  it('get stated defaults for the rest, summed up', () => {
    const trees = Array.from({ length: 12 }, (_, i) => point([20 + i, 5], { natural: 'tree' }));
    expect(objects(trees[0])).toEqual([
      {
        ...place,
        assumed: ['height_m', 'crownDiameter_m', 'crownBase_m', 'trunkDiameter_m'],
        kind: 'tree',
        position: at([20, 5]),
        height_m: 8,
        crownDiameter_m: expect.closeTo(4.4, 9),
        crownBase_m: 2,
        trunkDiameter_m: 0.3,
      },
    ]); // our own defaults
    expect(words(...trees)).toEqual([
      'features[3]: 12 trees have no height: 8 m assumed',
      'features[3]: 12 trees have no diameter_crown: 0.55 of the height assumed',
      'features[3]: 12 trees have no min_height (underside of the crown): 2 m assumed',
      'features[3]: 12 trees have no circumference: a trunk of 0.3 m assumed',
    ]);
    expect(words(trees[0])[0]).toBe('features[3]: 1 tree has no height: 8 m assumed');
  });
  it('with a high or low crown get defaults that fit it', () => {
    const [tree] = objects(point([20, 5], { natural: 'tree', min_height: 9 }));
    expect(tree).toMatchObject({ height_m: 13, crownBase_m: 9 }); // our own default: a crown of 4 m at least
    expect(objects(point([20, 5], { natural: 'tree', height: 1 }))[0]).toMatchObject({
      height_m: 1,
      crownBase_m: 0.5,
      trunkDiameter_m: 0.3,
    });
  });
  it('may come many in one feature, and must be points', () => {
    const many = feature(
      { type: 'MultiPoint', coordinates: [at([20, 5]), at([25, 5])] },
      { natural: 'tree', height: 5 },
    );
    expect(objects(many)).toMatchObject([
      { position: at([20, 5]), height_m: 5 },
      { position: at([25, 5]), height_m: 5 },
    ]);
    expect(words(area(box, { natural: 'tree' }))).toEqual([
      'features[3]: tree is not a Point: left out; draw it as a Point, or as natural=wood if it is a stand',
    ]);
  });
});

describe('numbers', () => {
  const tree = (tags: Record<string, unknown>) => problem(point([20, 5], { natural: 'tree', ...tags }));
  it.each<[string, Record<string, unknown>, string]>([
    ['absurd', { height: 900 }, 'height: height 900 is not believable: expected 0.1 to 120 m'],
    [
      'feet without a unit',
      { height: '130' },
      'height: height 130 is not believable: expected 0.1 to 120 m; if it is in feet, write "130 ft"',
    ],
    [
      'negative',
      { min_height: -2 },
      'min_height: min_height -2 is negative: it is measured upwards from the ground, in metres',
    ],
    [
      'not a length',
      { diameter_crown: 'wide' },
      'diameter_crown: diameter_crown "wide" is not a length: write a number in metres, such as 3.5, or with a unit, such as 12 ft or 120 yd',
    ],
    [
      'in centimetres without a unit',
      { circumference: 230 },
      'circumference: circumference 230 is not believable: expected 0.03 to 40 m',
    ],
    [
      'height below min_height',
      { height: 3, min_height: 4 },
      'height: height 3 m is not above min_height 4 m: height is the top, min_height the underside; swap or mend them',
    ],
  ])('%s', (_, tags, want) => expect(tree(tags)).toBe(`features[3].properties.${want}`));
});

describe('cover', () => {
  it.each<[string, unknown, Record<string, unknown>]>([
    [
      'wood',
      area(box, { natural: 'wood' }),
      { form: 'wood', height_m: 12, base_m: 2.5, density: 0.7, width_m: 0, assumed: ['height_m', 'base_m', 'density'] },
    ],
    [
      'forest',
      area(box, { landuse: 'forest', height: 20, min_height: 4, density: '0.4' }),
      { form: 'wood', height_m: 20, base_m: 4, density: 0.4, assumed: [] },
    ],
    ['light wood', area(box, { natural: 'wood', density: 'light' }), { density: 0.3, assumed: ['height_m', 'base_m'] }],
    ['wood in per cent', area(box, { natural: 'wood', density: '45 %' }), { density: 0.45 }],
    [
      'wood drawn as a closed line',
      line([...box, box[0]!], { natural: 'wood' }),
      { form: 'wood', geometry: { type: 'Polygon' } },
    ],
    ['low wood', area(box, { natural: 'wood', height: 4 }), { height_m: 4, base_m: 2 }],
    ['high-branched wood', area(box, { natural: 'wood', min_height: 15 }), { height_m: 27, base_m: 15 }],
    [
      'scrub',
      area(box, { natural: 'scrub' }),
      { form: 'scrub', height_m: 2, base_m: 0, density: 0.95, assumed: ['height_m', 'density'] },
    ],
    [
      'tree row',
      line(strip, { natural: 'tree_row' }),
      {
        form: 'treeRow',
        height_m: 8,
        base_m: 2,
        density: 0.5,
        width_m: 4,
        assumed: ['height_m', 'width_m', 'base_m', 'density'],
      },
    ],
    [
      'hedge',
      line(strip, { barrier: 'hedge' }),
      { form: 'hedge', height_m: 1.5, base_m: 0, density: 1, width_m: 1, assumed: ['height_m', 'width_m'] },
    ],
    [
      'hedge as an area',
      area(box, { barrier: 'hedge', height: 2 }),
      { form: 'hedge', geometry: { type: 'Polygon' }, height_m: 2, width_m: 0, assumed: [] },
    ],
    [
      'wall',
      line(strip, { barrier: 'retaining_wall', width: '50 cm' }),
      { form: 'wall', height_m: 1.5, width_m: 0.5, density: 1, assumed: ['height_m'] },
    ],
    [
      'wall round a place',
      area(box, { barrier: 'wall', height: 2 }),
      { form: 'wall', geometry: { type: 'LineString' }, width_m: 0.3 },
    ],
    [
      'wall as a block',
      area(box, { barrier: 'wall', height: 2, area: 'yes' }),
      { form: 'wall', geometry: { type: 'Polygon' } },
    ],
    ['airy wood', area(box, { natural: 'wood', density: 0.1 }), { density: 0.1 }],
    ['thin fence', line(strip, { barrier: 'fence', width: 0.05 }), { width_m: 0.05 }],
    ['fence', line(strip, { barrier: 'fence' }), { form: 'fence', height_m: 1.5, width_m: 0.1, density: 1 }],
    [
      'building',
      area(box, { building: 'yes' }),
      { form: 'building', height_m: 4, base_m: 0, density: 1, assumed: ['height_m'] },
    ],
    [
      'roof on posts',
      area(box, { building: 'roof', height: 4, min_height: 3 }),
      { form: 'building', base_m: 3, density: 0 },
    ],
  ])('%s', (_, drawn, want) => expect(objects(drawn)[0]).toMatchObject({ ...place, kind: 'cover', ...want })); // our own defaults

  it('without numbers says what is assumed, once for all', () => {
    expect(words(area(box, { natural: 'wood' }), area(square(40, 5, 5), { natural: 'wood' }))).toEqual([
      'features[3]: 2 woods have no height: 12 m assumed',
      'features[3]: 2 woods have no min_height (underside of the branches): 2.5 m assumed',
      'features[3]: 2 woods have no density: 0.7 assumed',
    ]);
  });
  it('can be two things at once', () => {
    expect(
      objects(area(box, { natural: 'wood', barrier: 'fence' })).map(object => object.kind === 'cover' && object.form),
    ).toEqual(['wood', 'fence']);
  });
  it('is not made of what stops no disc', () => {
    for (const barrier of ['kerb', 'gate', 'bollard']) expect(objects(line(strip, { barrier }))).toEqual([]);
    expect(objects(area(box, { building: 'no' }))).toEqual([]);
  });
  it('of a shape that covers nothing is left out with a word', () => {
    expect(words(point([20, 5], { natural: 'wood' }))).toEqual([
      'features[3]: wood is a Point: left out; draw it as a Polygon',
    ]);
    expect(words(point([20, 5], { natural: 'tree_row', name: 'Limes' }))).toEqual([
      'features[3]: tree row "Limes" is a Point: left out; draw it as a LineString or Polygon',
    ]);
  });
  it.each([['1.2'], ['-0.1'], ['thick'], ['120 %']])('of density %s is sent back', density => {
    expect(problem(area(box, { natural: 'wood', density }))).toBe(
      `features[3].properties.density: density ${density} is not a share: write 0 to 1 (the share of throws stopped on 10 m of level flight), such as 0.3, or light, open or dense`,
    );
  });
});
