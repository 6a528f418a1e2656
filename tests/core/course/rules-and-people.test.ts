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

describe('ceilings', () => {
  it('need the free height under them', () => {
    expect(problem(area(box, { obstacle: 'ceiling', name: 'Low bough' }))).toBe(
      'features[3]: ceiling "Low bough" has no min_height: add the free height under it in metres, such as "min_height": "3"',
    );
    expect(objects(area(box, { obstacle: 'ceiling', min_height: '10 ft' }))).toMatchObject([
      { ...place, kind: 'ceiling', clearance_m: 3.048, top_m: Number.POSITIVE_INFINITY, width_m: 0, assumed: [] },
    ]);
    expect(objects(line(strip, { obstacle: 'ceiling', min_height: 3, height: 5 }))).toMatchObject([
      { clearance_m: 3, top_m: 5, width_m: 3, assumed: ['width_m'] },
    ]);
  });
  it('have a top above that, and a shape', () => {
    expect(problem(area(box, { obstacle: 'ceiling', min_height: 5, height: 3 }))).toMatch(
      /^features\[3\]\.properties\.height: height 3 m is not above min_height 5 m/,
    );
    expect(problem(point([20, 5], { obstacle: 'ceiling', min_height: 5 }))).toBe(
      'features[3].geometry: ceiling is a Point: draw it as a Polygon or LineString',
    );
  });
});

describe('relief after out-of-bounds', () => {
  it('is as the course says, on out-of-bounds ground, water and islands; unsaid: any', () => {
    const read = (tags: object) => objects(area(box, tags as Record<string, string>))[0];
    expect(read({ disc_golf: 'out_of_bounds', relief: 'drop_zone' })).toMatchObject({ relief: ['dropZone'] });
    expect(read({ natural: 'water', relief: 'previous_lie; line' })).toMatchObject({
      kind: 'outOfBounds',
      relief: ['previousLie', 'line'],
    });
    expect(read({ disc_golf: 'island', relief: 'PREVIOUS_LIE' })).toMatchObject({
      kind: 'island',
      relief: ['previousLie'],
    });
    expect(read({ disc_golf: 'out_of_bounds' })).not.toHaveProperty('relief');
  });

  it('in other words is a problem that lists the words', () => {
    expect(problem(area(box, { disc_golf: 'out_of_bounds', relief: 'rethrow' }))).toBe(
      'features[3].properties.relief: relief=rethrow is not known: write line, previous_lie, drop_zone, or several with semicolons between',
    );
  });
});

describe('drop zones', () => {
  it('say what they are for, or not', () => {
    expect(objects(point([20, 5], { disc_golf: 'drop_zone', serves: 'mando;lost_disc' }))).toMatchObject([
      { ...place, kind: 'dropZone', uses: ['mando', 'lostDisc'] },
    ]);
    expect(objects(point([20, 5], { disc_golf: 'drop_zone' }))[0]).not.toHaveProperty('uses');
    expect(problem(point([20, 5], { disc_golf: 'drop_zone', serves: 'tee' }))).toBe(
      'features[3].properties.serves: serves=tee is not known: write out_of_bounds, mando, lost_disc, or several with semicolons between',
    );
  });
});

describe('ground where discs get lost', () => {
  it.each([
    { tags: { natural: 'wood', lost_disc: '0.04' }, share: 0.04, kinds: ['cover', 'lostGround'] },
    { tags: { disc_golf: 'hazard', lost_disc: '5%' }, share: 0.05, kinds: ['hazard', 'lostGround'] },
    { tags: { disc_golf: 'rough', lost_disc: 0.1 }, share: 0.1, kinds: ['lostGround'] },
    { tags: { landuse: 'meadow', lost_disc: '2 %' }, share: 0.02, kinds: ['lostGround'] },
  ])('is any area with its share: $tags', ({ tags, share, kinds }) => {
    const read = objects(area(box, tags as unknown as Record<string, string>));
    expect(read.map(({ kind }) => kind)).toEqual(kinds);
    expect(read.at(-1)).toMatchObject({ ...place, kind: 'lostGround', share });
  });

  it('is nothing without the tag, in the thickest wood, and with a share of none', () => {
    for (const tags of [
      { natural: 'wood', density: 'dense' },
      { disc_golf: 'rough' },
      { natural: 'wood', lost_disc: '0' },
    ])
      expect(
        objects(area(box, tags as unknown as Record<string, string>)).some(({ kind }) => kind === 'lostGround'),
      ).toBe(false);
  });

  it('needs a share and an area', () => {
    expect(problem(area(box, { natural: 'wood', lost_disc: 'often' }))).toBe(
      'features[3].properties.lost_disc: lost_disc often is not a share: write 0 to 1 (the share of discs at rest there that are not found), such as 0.03 or 3%',
    );
    expect(problem(area(box, { natural: 'wood', lost_disc: '1.2' }))).toMatch(/is not a share/);
    expect(problem(line(strip, { disc_golf: 'rough', lost_disc: '0.1' }))).toBe(
      'features[3].geometry: ground where discs get lost is a LineString: draw it as a Polygon',
    );
  });
});

describe('gaps', () => {
  it('stand between two posts', () => {
    expect(objects(line(strip, { obstacle: 'gap' }))).toEqual([
      { ...place, assumed: [], kind: 'gap', posts: strip.map(at), low_m: 0, high_m: Number.POSITIVE_INFINITY },
    ]);
    expect(objects(line(strip, { obstacle: 'gap', min_height: 1, height: 4, ref: '1' }))).toMatchObject([
      { ref: '1', low_m: 1, high_m: 4 },
    ]);
  });
  it('of other shapes or widths are sent back', () => {
    expect(problem(line([...strip, [40, 5]], { obstacle: 'gap' }))).toBe(
      'features[3].geometry: gap is a LineString: draw it as a LineString of two positions, post to post',
    );
    expect(
      problem(
        line(
          [
            [20, 5],
            [20, 5.1],
          ],
          { obstacle: 'gap' },
        ),
      ),
    ).toBe('features[3].geometry.coordinates: gap is 0.10 m wide: draw it from post to post, 0.21 to 100 m');
    expect(
      problem(
        line(
          [
            [20, 5],
            [320, 5],
          ],
          { obstacle: 'gap' },
        ),
      ),
    ).toBe('features[3].geometry.coordinates: gap is 300.00 m wide: draw it from post to post, 0.21 to 100 m');
    expect(problem(line(strip, { obstacle: 'gap', min_height: 4, height: 4 }))).toMatch(
      /height 4 m is not above min_height 4 m/,
    );
  });
});

describe('mandos', () => {
  it.each(['left', 'right'])('are passed %s', side => {
    expect(objects(point([20, 5], { disc_golf: 'mando', mando: side, ref: '1' }))).toEqual([
      { ...place, ref: '1', assumed: [], kind: 'mando', geometry: { type: 'Point', coordinates: at([20, 5]) }, side },
    ]);
  });
  it('above or below need a height', () => {
    expect(objects(line(strip, { disc_golf: 'mando', mando: 'Above', height: 4 }))).toMatchObject([
      { side: 'above', height_m: 4 },
    ]);
    expect(objects(line(strip, { disc_golf: 'mando', mando: 'below', min_height: 3, height: 5 }))).toMatchObject([
      { side: 'below', height_m: 3 },
    ]);
    expect(problem(line(strip, { disc_golf: 'mando', mando: 'below' }))).toBe(
      'features[3]: mando with mando=below has no height: add the height to pass below, in metres',
    );
  });
  it('name a side that is one', () => {
    const choices = 'mando=left, right, above or below (the side a throw must pass, seen from the tee)';
    expect(problem(point([20, 5], { disc_golf: 'mando', mando: 'north', ref: '1' }))).toBe(
      `features[3].properties.mando: mando 1: "north" is not a side: write ${choices}`,
    );
    expect(problem(point([20, 5], { disc_golf: 'mando' }))).toBe(
      `features[3]: mando does not say on which side to pass: add ${choices}`,
    );
    expect(problem(area(box, { disc_golf: 'mando', mando: 'left' }))).toBe(
      'features[3].geometry: mando is a Polygon: draw it as a Point or LineString',
    );
  });
});

describe('out-of-bounds', () => {
  const confirm = (what: string) =>
    `features[3]: ${what} is taken as out-of-bounds: to confirm; tag out_of_bounds=yes or no as the course decides`;
  it('is what is tagged so', () => {
    expect(objects(area(box, { disc_golf: 'out_of_bounds' }))).toMatchObject([
      { ...place, kind: 'outOfBounds', reason: 'tagged' },
    ]);
    const [edge] = objects(line(strip, { disc_golf: 'out_of_bounds' }));
    expect(edge).toMatchObject({ geometry: { type: 'LineString' }, reason: 'tagged' });
    expect(edge).not.toHaveProperty('strip_m');
    expect(problem(point([20, 5], { disc_golf: 'out_of_bounds' }))).toMatch(
      /^features\[3\]\.geometry: out_of_bounds is a Point: draw it as a Polygon, or a LineString/,
    );
  });
  it('drawn as a closed line is the ground inside, and says so', () => {
    expect(objects(line([...box, box[0]!], { disc_golf: 'out_of_bounds' }))).toMatchObject([
      { geometry: { type: 'Polygon' } },
    ]);
    expect(words(line([...box, box[0]!], { disc_golf: 'out_of_bounds' }))).toEqual([
      'features[3]: out-of-bounds is a closed line: the ground inside it is taken as out; if the ground outside is meant, open the line',
    ]);
  });
  it.each<[string, Record<string, unknown>, string]>([
    ['a pond', { natural: 'water' }, 'water'],
    ['a named lake', { natural: 'water', water: 'lake', name: 'Mere' }, 'lake "Mere"'],
    ['water=*', { water: 'fish_pond' }, 'fish pond'],
  ])('is %s, to confirm', (_, tags, what) => {
    expect(objects(area(box, tags))).toMatchObject([{ kind: 'outOfBounds', reason: 'water' }]);
    expect(words(area(box, tags))).toEqual([confirm(what)]);
    expect(objects(area(box, { ...tags, out_of_bounds: 'no' }))).toEqual([]);
    expect(words(area(box, { ...tags, out_of_bounds: 'no' }))).toEqual([]);
    expect(objects(area(box, { ...tags, out_of_bounds: 'yes' }))).toMatchObject([{ reason: 'tagged' }]);
    expect(words(area(box, { ...tags, out_of_bounds: true }))).toEqual([]);
  });
  it('is a stream over its width', () => {
    expect(objects(line(strip, { waterway: 'stream', width: 3 }))).toMatchObject([
      { geometry: { type: 'LineString' }, reason: 'water', strip_m: 3, assumed: [] },
    ]);
    expect(objects(line(strip, { waterway: 'stream' }))).toMatchObject([{ strip_m: 2, assumed: ['strip_m'] }]); // our own default
    expect(words(line(strip, { waterway: 'stream' }))).toEqual([
      confirm('stream'),
      'features[3]: 1 waterway has no width: 2 m assumed',
    ]);
  });
  it('is no dam, no culvert, no point', () => {
    expect(
      objects(
        line(strip, { waterway: 'dam' }),
        line(strip, { waterway: 'stream', tunnel: 'culvert' }),
        point([20, 5], { waterway: 'waterfall' }),
      ),
    ).toEqual([]);
  });
  it('is a road, building or wood only when tagged', () => {
    const road = line(strip, { highway: 'residential', out_of_bounds: 'yes', width: 6 });
    expect(objects(road).map(object => object.kind)).toEqual(['outOfBounds', 'people']);
    expect(objects(road)[0]).toMatchObject({ reason: 'tagged', strip_m: 6 });
    expect(objects(line(strip, { highway: 'footway', out_of_bounds: 'yes' }))[0]).toMatchObject({
      strip_m: 2,
      assumed: ['strip_m'],
    });
    expect(objects(line(strip, { highway: 'residential' })).map(object => object.kind)).toEqual(['people']);
    expect(objects(area(box, { building: 'barn', out_of_bounds: 'yes' })).map(object => object.kind)).toEqual([
      'cover',
      'outOfBounds',
      'people',
    ]);
    expect(objects(area(box, { natural: 'wood', out_of_bounds: 'yes' })).map(object => object.kind)).toEqual([
      'cover',
      'outOfBounds',
    ]);
    expect(objects(line(strip, { barrier: 'fence', out_of_bounds: 'yes' }))[1]).not.toHaveProperty('strip_m');
  });
  it('is yes or no', () => {
    expect(problem(area(box, { natural: 'water', out_of_bounds: 'casual' }))).toBe(
      'features[3].properties.out_of_bounds: out_of_bounds=casual is not known: write yes or no',
    );
  });
  it('over a tee or basket is doubted', () => {
    const pond = area(square(70, -10, 20), { disc_golf: 'out_of_bounds' });
    expect(words(pond)).toEqual([
      'features[3]: the basket of hole 1 lies in this out-of-bounds: check the area, or tag it out_of_bounds=no',
    ]);
    const diamond = [
      [70, 0],
      [80, -10],
      [90, 0],
      [80, 10],
    ] as const; // corners as far north as the basket
    expect(words(area(diamond, { disc_golf: 'out_of_bounds' }))).toHaveLength(1);
    expect(
      words(
        area(
          [
            [90, 0],
            [100, -10],
            [110, 0],
            [100, 10],
          ],
          { disc_golf: 'out_of_bounds' },
        ),
      ),
    ).toEqual([]);
    const ring = [square(70, -10, 20), square(75, -5, 10)].map(corners => [...corners, corners[0]!].map(at));
    expect(words(feature({ type: 'Polygon', coordinates: ring }, { disc_golf: 'out_of_bounds' }))).toEqual([]);
  });
});

describe('the rest of the course', () => {
  it('hazards, islands and fairways are areas', () => {
    expect(objects(area(box, { disc_golf: 'hazard' }))).toMatchObject([
      { kind: 'hazard', geometry: { type: 'Polygon' } },
    ]);
    expect(objects(area(box, { disc_golf: 'island', ref: '1' }))).toMatchObject([{ kind: 'island', ref: '1' }]);
    expect(objects(line([...box, box[0]!], { disc_golf: 'fairway', ref: '1', surface: 'grass' }))).toMatchObject([
      { kind: 'fairway', geometry: { type: 'Polygon' }, surface: 'grass' },
    ]);
    for (const disc_golf of ['hazard', 'island', 'fairway']) {
      expect(problem(point([20, 5], { disc_golf }))).toBe(
        `features[3].geometry: ${disc_golf} is a Point: draw it as a Polygon`,
      );
    }
  });
  it('a hazard in a pond is a hazard', () => {
    expect(objects(area(box, { disc_golf: 'hazard', natural: 'water' })).map(object => object.kind)).toEqual([
      'hazard',
    ]);
  });
  it('drop zones are points', () => {
    expect(objects(point([20, 5], { disc_golf: 'drop_zone', ref: '1' }))).toEqual([
      { ...place, ref: '1', assumed: [], kind: 'dropZone', position: at([20, 5]) },
    ]);
    expect(problem(line(strip, { disc_golf: 'drop_zone' }))).toBe(
      'features[3].geometry: drop_zone is a LineString: draw it as a Point',
    );
  });
  it.each<[string, unknown, string]>([
    ['path', line(strip, { highway: 'footway' }), 'path'],
    ['road', line(strip, { highway: 'service' }), 'road'],
    ['playground', area(box, { leisure: 'playground' }), 'playground'],
    ['playground point', point([20, 5], { leisure: 'playground' }), 'playground'],
    ['parking', area(box, { amenity: 'parking' }), 'parking'],
  ])('people are on a %s', (_, drawn, what) =>
    expect(objects(drawn)).toMatchObject([{ ...place, kind: 'people', what }]),
  );
  it('a round path goes round; street furniture is no way', () => {
    expect(objects(line([...box, box[0]!], { highway: 'path' }))).toMatchObject([{ geometry: { type: 'LineString' } }]);
    expect(objects(point([20, 5], { highway: 'street_lamp' }))).toEqual([]);
  });
  it('unknown words are left out with a word', () => {
    expect(words(point([20, 5], { disc_golf: 'bench' }))).toEqual([
      'features[3].properties.disc_golf: disc_golf=bench is not known here: left out',
    ]);
    expect(words(line(strip, { obstacle: 'net' }))).toEqual([
      'features[3].properties.obstacle: obstacle=net is not known here (ceiling and gap are): left out',
    ]);
  });
});

it('says what is not mapped, which is not the same as none', () => {
  expect(good(...one).notMapped).toEqual(['trees', 'out-of-bounds', 'mandos', 'ceilings', 'heights', 'paths']);
  const rich = [
    point([20, 5], { natural: 'tree', ele: 12 }),
    area(box, { natural: 'water', out_of_bounds: 'no' }),
    point([30, 5], { disc_golf: 'mando', mando: 'left' }),
    area(box, { obstacle: 'ceiling', min_height: 3 }),
    line(strip, { highway: 'path' }),
  ];
  expect(good(...one, ...rich).notMapped).toEqual([]);
  expect(good(...one, ...rich.slice(1)).notMapped).toEqual(['trees', 'heights']);
  const all = good(...one).notMapped;
  const alone: [string, unknown][] = [
    ['trees', area(box, { natural: 'scrub' })],
    ['out-of-bounds', area(box, { disc_golf: 'island' })],
    ['out-of-bounds', area(box, { disc_golf: 'out_of_bounds' })],
    ['mandos', rich[2]],
    ['ceilings', rich[3]],
    ['paths', rich[4]],
    ['none of them', area(box, { barrier: 'hedge' })],
  ];
  for (const [kind, drawn] of alone) expect(good(...one, drawn).notMapped).toEqual(all.filter(other => other !== kind));
});
