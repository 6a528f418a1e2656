import type { Feature, LineString } from 'geojson';
import { describe, expect, it } from 'vitest';
import { applyRoles } from '../../../../core/course/import/apply-roles.ts';
import { parseChoice } from '../../../../core/course/import/parse-choice.ts';
import { proposeRoles, type RoleChoice } from '../../../../core/course/import/propose-roles.ts';
import { ROLE_WORDS, ROLES } from '../../../../core/course/import/role.ts';
import { simplifyLine } from '../../../../core/course/import/simplify-line.ts';
import { parseCourse } from '../../../../core/course/parse-course.ts';
import { at as lonLat } from '../course-file.ts';

const place = (name: string, metres: readonly [number, number], more: object = {}): Feature => ({
  type: 'Feature',
  properties: { name, ...more },
  geometry: { type: 'Point', coordinates: lonLat(metres) },
});
const along = (name: string, metres: readonly (readonly [number, number])[], more: object = {}): Feature => ({
  type: 'Feature',
  properties: { name, ...more },
  geometry: { type: 'LineString', coordinates: metres.map(lonLat) },
});
const proposed = (features: readonly Feature[]) => proposeRoles(features, [...features.keys()]);
const asProposed = (features: readonly Feature[]) =>
  new Map<number, RoleChoice>(proposed(features).map(({ index, proposal }) => [index, proposal]));

describe('proposeRoles', () => {
  it('is sure of words, not of letters, folders or ends of lines', () => {
    const items = proposed([
      place('Tee 1', [0, 0]),
      place('B1', [90, 0]),
      place('2', [0, 50], { '@folder': 'Map / Tees' }),
      along('Morning walk', [
        [1, 1],
        [40, 10],
        [88, 2],
      ]),
      along('Hole 2', [
        [0, 50],
        [90, 50],
      ]),
    ]);
    expect(items.map(({ proposal: { role, ref, sure } }) => [role, ref, sure])).toEqual([
      ['tee', '1', true],
      ['basket', '1', false],
      ['tee', '2', false],
      ['lineOfPlay', '1', false],
      ['lineOfPlay', '2', true],
    ]);
  });

  it('asks where a name leaves it open', () => {
    const items = proposed([
      place('3', [0, 0]),
      place('Tee', [5, 5]),
      place('Tee 1 basket 2', [9, 9]),
      place('', [1, 1]),
    ]);
    for (const { proposal } of items) expect(proposal).toMatchObject({ role: 'leave', sure: false });
    expect(items[0]!.proposal).toMatchObject({ ref: '3', why: expect.stringContaining('not whether') as unknown });
  });

  it('takes a letter for the hole’s own only where tee and basket both carry it', () => {
    const [tee, basket, other] = proposed([
      place('Tee 3A', [0, 0]),
      place('Basket 3A', [90, 0]),
      place('Tee 4B', [0, 50]),
    ]);
    expect(tee!.proposal).toMatchObject({ ref: '3A' });
    expect(basket!.proposal).toMatchObject({ ref: '3A' });
    expect(other!.proposal).toMatchObject({ ref: '4', label: 'B' });
  });
});

describe('applyRoles', () => {
  it('makes a course of tees, bends and baskets', () => {
    const features = [
      place('Tee 1', [0, 0]),
      place('1 bend', [60, 0]),
      place('Basket 1', [60, 50]),
      place('Bench', [9, 9]),
    ];
    const applied = applyRoles(features, proposed(features), asProposed(features));
    if (!applied.ok) throw new Error(JSON.stringify(applied.problems));
    const course = parseCourse({ type: 'FeatureCollection', features: applied.value.features }, 'x');
    if (!course.ok) throw new Error(JSON.stringify(course.problems));
    expect(course.value.holes.map(({ ref, line }) => [ref, line.length])).toEqual([['1', 3]]);
    expect(applied.value.features).toHaveLength(3);
    expect(applied.value.features[0]!.properties).toEqual({ disc_golf: 'tee', ref: '1', '@name': 'Tee 1' });
  });

  it('straightens a recorded track and keeps a drawn line', () => {
    // 2 m to either side is inside the 4 m a walker may wander; the bend of 20 m is not.
    const walk = [
      [0, 0],
      [10, 2],
      [20, -2],
      [30, 2],
      [50, 20],
      [70, 0],
    ] as const;
    const features = [place('Tee 1', [0, 0]), place('Basket 1', [70, 0]), along('Hole 1', walk, { '@from': 'track' })];
    const lineOf = (file: readonly Feature[]) => {
      const applied = applyRoles(file, proposed(file), asProposed(file));
      if (!applied.ok) throw new Error(JSON.stringify(applied.problems));
      return (applied.value.features[2]!.geometry as LineString).coordinates;
    };
    expect(lineOf(features)).toHaveLength(4);
    const drawn = features.with(2, along('Hole 1', walk, { '@from': 'route' }));
    expect(lineOf(drawn)).toHaveLength(6);
  });

  it('gives a line of play the par its tee’s name says', () => {
    const features = [
      place('Tee 1 par 4', [0, 0]),
      place('Basket 1', [70, 0]),
      along('Hole 1', [
        [0, 0],
        [70, 0],
      ]),
    ];
    const applied = applyRoles(features, proposed(features), asProposed(features));
    expect(applied.ok && applied.value.features[2]!.properties).toMatchObject({ disc_golf: 'hole', par: '4' });
  });

  it.each<[string, RoleChoice, RegExp]>([
    ['a tee without a hole', { role: 'tee' }, /write the hole's number/],
    ['a point as a hedge', { role: 'hedge' }, /cannot be a hedge: choose tee/],
    ['a list for a hole', { role: 'tee', ref: '1;2' }, /is no hole/],
    ['a bend of no hole', { role: 'bend', ref: '9' }, /has no tee/],
  ])('refuses %s', (_, choice, says) => {
    const features = [place('Somewhere', [0, 0])];
    const applied = applyRoles(features, proposed(features), new Map([[0, choice]]));
    expect(applied.ok).toBe(false);
    if (!applied.ok)
      expect(applied.problems[0]).toMatchObject({
        path: '"Somewhere"',
        message: expect.stringMatching(says) as unknown,
      });
  });
});

describe('simplifyLine', () => {
  it('keeps what lies beyond the tolerance, and both ends', () => {
    const line = [
      [0, 0],
      [25, 0.9],
      [50, 1.1],
      [100, 0],
    ].map(metres => lonLat(metres as [number, number]));
    // By hand: 1.1 m is farther than 1 m from the straight line, 0.9 m is not (nor from the line to the kept corner).
    expect(simplifyLine(line, 1)).toEqual([line[0], line[2], line[3]]);
    expect(simplifyLine(line, 2)).toEqual([line[0], line[3]]);
    expect(() => simplifyLine([line[0]!], 1)).toThrow(RangeError);
  });

  it('takes a track of 50,000 corners', () => {
    const long = Array.from({ length: 50_000 }, (_, i) => [24 + i * 1e-7, 60 + (i % 2) * 1e-7]);
    expect(simplifyLine(long, 4)).toHaveLength(2);
  });
});

describe('parseChoice', () => {
  it.each(ROLES)('reads how %s is written', role => {
    const choice = parseChoice(`${ROLE_WORDS[role].toUpperCase()} 3`);
    expect(choice).toMatchObject({ ok: true, value: { role } });
  });
  it.each([
    ['tee 3', { role: 'tee', ref: '3' }],
    ['basket 10A long side', { role: 'basket', ref: '10A', label: 'long side' }],
    ['line 4', { role: 'lineOfPlay', ref: '4' }],
    ['tree row', { role: 'treeRow' }],
    ['tree Old oak', { role: 'tree', label: 'Old oak' }],
    ['leave', { role: 'leave' }],
  ])('%s', (text, value) => expect(parseChoice(text)).toEqual({ ok: true, value }));
  it.each(['tee', 'nonsense 3', '', 'teepee 4'])('refuses "%s"', text =>
    expect(parseChoice(text)).toMatchObject({ ok: false, problems: [{ path: 'choice' }] }),
  );
});
