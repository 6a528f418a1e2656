import { describe, expect, it } from 'vitest';
import { exportCourse } from '../../../core/course/export-course.ts';
import { groundDistance_m, lineLength_m } from '../../../core/course/ground-distance.ts';
import { parseCourse } from '../../../core/course/parse-course.ts';
import { siteKey } from '../../../core/course/site-key.ts';
import { withLayout } from '../../../core/course/with-layout.ts';
import { bad, collection, feature, good, hole, line, point } from './course-file.ts';

/** Hole 1 with a second tee 30 m on, a third aside, and a second basket past a bend; hole 2 plain. */
const manyTees = [
  point([0, 0], { disc_golf: 'tee', ref: '1', name: 'Long' }),
  point([30, 2], { disc_golf: 'tee', ref: '1', name: 'Short' }),
  point([-5, 8], { disc_golf: 'tee', ref: '1' }),
  point([60, 50], { disc_golf: 'basket', ref: '1', name: 'A' }),
  point([90, 70], { disc_golf: 'basket', ref: '1', name: 'B' }),
  line(
    [
      [0, 0],
      [60, 0],
      [60, 50],
    ],
    { disc_golf: 'hole', ref: '1', par: '3', dist: '110' },
  ),
  ...hole('2', 200),
];
const layout = (name: string | null, holes: unknown) =>
  feature(null, { disc_golf: 'layout', ...(name !== null && { name }), holes });
const played = (name: string, ...features: unknown[]) => {
  const course = withLayout(good(...manyTees, ...features), name);
  if (!course.ok) throw new Error(JSON.stringify(course.problems));
  return course.value;
};

describe('a layout', () => {
  it('plays its holes in its order, from its tees to its baskets', () => {
    const course = played(
      ' short TEES',
      layout('Short tees', [{ ref: '2' }, { ref: '01', tee: 'short', basket: 'B', par: 4, colour: 'red' }]),
    );
    expect(course.holes.map(({ ref }) => ref)).toEqual(['2', '1']);
    const [, first] = course.holes;
    expect([first!.tee.name, first!.basket.name, first!.par, first!.taggedLength_m]).toEqual([
      'Short',
      'B',
      4,
      undefined,
    ]);
    // The bend at [60, 0] is still ahead of a tee at [30, 2]: by hand, √(30² + 2²) + √(30² + 70²).
    expect(Math.abs(lineLength_m(first!.line) - (Math.hypot(30, 2) + Math.hypot(30, 70)))).toBeLessThan(0.05);
    expect(first!.tees).toHaveLength(3);
  });

  it('keeps the hole as mapped where it chooses nothing else', () => {
    const course = good(...manyTees, layout('All', [{ ref: 1 }, { ref: '2' }]));
    const same = withLayout(course, 'All');
    expect(same.ok && same.value.holes).toEqual(course.holes);
  });

  it('calls a tee without a name by its number', () => {
    const course = good(...manyTees);
    const { tees } = course.holes[0]!;
    expect(tees.map(tee => siteKey(tee, tees))).toEqual(['Long', 'Short', '#3']);
    const { holes } = played('Aside', layout('Aside', [{ ref: '1', tee: '#3' }]));
    expect(groundDistance_m(holes[0]!.tee.position, tees[2]!.position)).toBe(0);
  });

  it('drops the bends behind a tee', () => {
    const past = point([62, 20], { disc_golf: 'tee', ref: '1', name: 'Past the bend' });
    const { holes } = played('Near', past, layout('Near', [{ ref: '1', tee: 'Past the bend' }]));
    expect(holes[0]!.line).toHaveLength(2);
  });

  it('follows the line drawn from its own tee', () => {
    const own = line(
      [
        [30, 2],
        [30, 40],
        [60, 50],
      ],
      { disc_golf: 'hole', ref: '1' },
    );
    const { holes } = played('Short', own, layout('Short', [{ ref: '1', tee: 'Short' }]));
    // By hand: 38 m north, then √(30² + 10²).
    expect(Math.abs(lineLength_m(holes[0]!.line) - (38 + Math.hypot(30, 10)))).toBeLessThan(0.05);
  });

  it('may have one tee with lines to two baskets', () => {
    const toB = line(
      [
        [0, 0],
        [90, 70],
      ],
      { disc_golf: 'hole', ref: '1' },
    );
    const { holes } = played('Far', toB, layout('Far', [{ ref: '1', basket: 'B' }]));
    expect(Math.abs(lineLength_m(holes[0]!.line) - Math.hypot(90, 70))).toBeLessThan(0.05);
  });

  it('may have its list as JSON text, and nested tags', () => {
    const text = JSON.stringify([{ ref: '2', basket: '#1' }]);
    expect(played('T', layout('T', text)).holes.map(({ ref }) => ref)).toEqual(['2']);
    const nested = feature(null, { type: 'way', tags: { disc_golf: 'layout', name: 'N', holes: [{ ref: '2' }] } });
    expect(played('N', nested).holes.map(({ ref }) => ref)).toEqual(['2']);
  });

  it('survives export', () => {
    const file = collection(...manyTees, layout('Short tees', [{ ref: '1', tee: 'Short', colour: 'red' }]));
    const course = parseCourse(file, 'a');
    if (!course.ok) throw new Error('unreachable');
    expect(exportCourse(course.value)).toEqual(file);
  });

  it.each([
    [layout(null, [{ ref: '1' }]), 'features[9]: the layout has no name: give it one, such as "Short tees"'],
    [
      layout('X', [{ ref: '7' }]),
      'features[9].properties.holes[0].ref: layout "X": the course has no hole "7"; it has 1, 2',
    ],
    [
      layout('X', [{ ref: '1', tee: 'Red' }]),
      'features[9].properties.holes[0].tee: layout "X": hole 1 has no tee "Red"; it has Long, Short, #3',
    ],
    [
      layout('X', [{ ref: '1', basket: '#4' }]),
      'features[9].properties.holes[0].basket: layout "X": hole 1 has no basket "#4"; it has A, B',
    ],
    [
      layout('X', [{ ref: '1' }, { ref: '#1' }]),
      'features[9].properties.holes[1].ref: layout "X" plays hole #1 twice: give its second tee or basket a hole of its own (ref "#1;10" on what both share)',
    ],
    [layout('X', []), 'features[9].properties.holes: the layout has no hole: list at least one'],
    [
      layout('X', 'one, two'),
      'features[9].properties.holes: must list the holes in order of play, such as [{"ref": "1", "tee": "long", "basket": "A"}, {"ref": "2"}]',
    ],
    [
      layout('X', [{ ref: '1', par: 12 }]),
      'features[9].properties.holes[0].par: par must be a whole number from 2 to 9',
    ],
    [layout('X', [{ tee: 'Long' }]), 'features[9].properties.holes[0].ref: must be text, such as "1" or "long"'],
  ])('that is wrong says so: %#', (wrong, message) => {
    expect(bad(...manyTees, wrong).map(({ path, message }) => `${path}: ${message}`)).toEqual([message]);
  });

  it('called like another is refused', () => {
    expect(bad(...manyTees, layout('X', [{ ref: '1' }]), layout('x ', [{ ref: '2' }]))).toEqual([
      { path: 'features[10]', message: 'a second layout is called "x": give it another name' },
    ]);
  });

  it('that is not there is named with those that are', () => {
    expect(withLayout(good(...manyTees, layout('Short', [{ ref: '1' }])), 'long')).toEqual({
      ok: false,
      problems: [{ path: 'layout', message: 'the course has no layout "long": it has "Short"' }],
    });
  });
});
