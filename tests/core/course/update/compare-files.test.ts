import fc from 'fast-check';
import type { Feature, FeatureCollection } from 'geojson';
import { describe, expect, it } from 'vitest';
import { parseCourse } from '../../../../core/course/parse-course.ts';
import { compareFiles } from '../../../../core/course/update/compare-files.ts';
import { compareHoles } from '../../../../core/course/update/compare-holes.ts';
import { matchFeatures } from '../../../../core/course/update/match-features.ts';
import { collection, hole, point } from '../course-file.ts';

const file = (...features: unknown[]) => collection(...features) as unknown as FeatureCollection;
const tree = (xy: readonly [number, number], more: object = {}) => point(xy, { natural: 'tree', ...more });
/** Without the line of play, which would move too. */
const sites = (ref: string, y: number, basket_m = 80) => [
  point([0, y], { disc_golf: 'tee', ref }),
  point([basket_m, y], { disc_golf: 'basket', ref }),
];
const said = ({ differences }: ReturnType<typeof compareFiles>) =>
  differences.map(({ does, by, what, ref, isTaken }) => [does, by, what, ref ?? '', isTaken]);

describe('compareFiles', () => {
  const map = file(...sites('1', 0), ...sites('2', 100), tree([30, 20]));

  it('finds nothing where nothing changed, and merging changes nothing', () => {
    const same = compareFiles(map, map, structuredClone(map), true);
    expect(same.differences).toEqual([]);
    expect(same.same).toBe(5);
    expect(same.merge(new Set())).toEqual(map);
  });

  it('tells what the map changed from what the user did', () => {
    const stored = file(...sites('1', 0), ...sites('2', 100, 90), tree([30, 20]), tree([50, 50]));
    const fresh = file(...sites('1', 0, 85), ...sites('2', 100), ...sites('3', 200), tree([60, 20]));
    expect(said(compareFiles(stored, map, fresh, true))).toEqual([
      ['change', 'file', 'basket', '1', true],
      ['change', 'you', 'basket', '2', false],
      ['add', 'file', 'tee', '3', true],
      ['add', 'file', 'basket', '3', true],
      ['add', 'file', 'tree', '', true],
      ['remove', 'file', 'tree', '', true],
      ['remove', 'you', 'tree', '', false],
    ]);
  });

  it('says how far a basket moved', () => {
    const fresh = file(...sites('1', 0, 92.5), ...sites('2', 100), tree([30, 20]));
    const [moved] = compareFiles(map, map, fresh, true).differences;
    // 12.5 m by the sketch; its metres a degree are those of 60° north, where it lies: within a centimetre.
    expect(Math.abs(moved!.moved_m! - 12.5)).toBeLessThan(0.01);
  });

  it('notices a thing that both changed, and one the user deleted', () => {
    const stored = file(...sites('1', 0, 90), ...sites('2', 100));
    const fresh = file(...sites('1', 0, 70), ...sites('2', 100), tree([30, 20]));
    expect(said(compareFiles(stored, map, fresh, true))).toEqual([
      ['change', 'both', 'basket', '1', false],
      ['add', 'you', 'tree', '', false],
    ]);
  });

  it('does not take away what the map never speaks of', () => {
    const withPar = file(point([0, 0], { disc_golf: 'tee', ref: '1', par: '4' }), sites('1', 0)[1], tree([30, 20]));
    const waypoints = file(...sites('1', 0));
    const comparison = compareFiles(withPar, withPar, waypoints, false);
    expect(said(comparison)).toEqual([['remove', 'file', 'tree', '', false]]);
    expect(comparison.merge(new Set()).features[0]!.properties).toMatchObject({ par: '4' });
  });

  it('takes all that is ticked and nothing else', () => {
    const fresh = file(...sites('1', 0, 85), ...sites('2', 100), tree([60, 20]));
    const comparison = compareFiles(map, map, fresh, true);
    const all = comparison.merge(new Set(comparison.differences.map(({ key }) => key)));
    expect(compareFiles(all, all, fresh, true).differences).toEqual([]);
    const basketOnly = comparison.merge(
      new Set(comparison.differences.filter(({ what }) => what === 'basket').map(({ key }) => key)),
    );
    expect(basketOnly.features).toHaveLength(5);
    expect(said(compareFiles(basketOnly, fresh, fresh, true))).toHaveLength(2);
  });

  it('keeps unknown members and features', () => {
    const stored = {
      ...file(...sites('1', 0), point([5, 5], { amenity: 'bench', odd: { deep: [1] } })),
      mine: 1,
    } as unknown as FeatureCollection;
    const fresh = file(...sites('1', 0, 85));
    const comparison = compareFiles(stored, stored, fresh, true);
    const merged = comparison.merge(
      new Set(comparison.differences.filter(({ isTaken }) => isTaken).map(({ key }) => key)),
    );
    expect(merged).toMatchObject({ mine: 1 });
    expect(merged.features[2]).toEqual(stored.features[2]);
  });

  it('any choice of differences leaves each feature once, and all of them make the map', () => {
    const place = fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 20 }));
    const things = fc.array(
      fc
        .tuple(place, fc.constantFrom('tree', 'bench', 'rock'), fc.option(fc.integer({ min: 1, max: 30 })))
        .map(
          ([[x, y], kind, id]) =>
            ({ ...point([x * 7, y * 7], { natural: kind }), ...(id === null ? {} : { id }) }) as unknown as Feature,
        ),
      { maxLength: 15 },
    );
    fc.assert(
      fc.property(things, things, things, fc.nat(), (origin, stored, fresh, pick) => {
        const comparison = compareFiles(file(...stored), file(...origin), file(...fresh), true);
        const keys = comparison.differences.map(({ key }) => key);
        expect(new Set(keys).size).toBe(keys.length);
        const some = new Set(keys.filter((_, i) => (pick >> (i % 30)) & 1));
        const { differences } = comparison;
        const count = (does: string) =>
          differences.filter(({ key, does: own }) => own === does && some.has(key)).length;
        expect(comparison.merge(some).features).toHaveLength(stored.length + count('add') - count('remove'));
        expect(comparison.merge(new Set(keys)).features).toHaveLength(fresh.length);
      }),
      { numRuns: 300, seed: 6 },
    );
  });
});

describe('matchFeatures', () => {
  it('gives no partner twice, and finds every feature of the same file', () => {
    const things = fc.array(
      fc
        .tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }), fc.constantFrom('1', '2'))
        .map(([x, y, ref]) => point([x * 2, y * 2], { disc_golf: 'tee', ref }) as unknown as Feature),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(things, things, (a, b) => {
        const partners = matchFeatures(a, b);
        expect(new Set(partners.values()).size).toBe(partners.size);
        expect(matchFeatures(a, a).size).toBe(a.length);
      }),
      { numRuns: 300, seed: 7 },
    );
  });
  it('believes an id before a place', () => {
    const [a, b] = [
      { ...tree([0, 0]), id: 'node/1' },
      { ...tree([3, 0]), id: 'node/2' },
    ] as unknown as Feature[];
    const moved = { ...tree([0, 0]), id: 'node/2' } as unknown as Feature;
    expect([...matchFeatures([a!, b!], [moved])]).toEqual([[0, 1]]);
  });
});

describe('compareHoles', () => {
  const courseOf = (...features: unknown[]) => {
    const course = parseCourse(file(...features), 'x');
    if (!course.ok) throw new Error(JSON.stringify(course.problems));
    return course.value;
  };
  it('numbers what changes', () => {
    const before = courseOf(...hole('1'), ...sites('2', 100));
    const after = courseOf(...hole('1'), ...sites('3', 200, 60));
    expect(compareHoles(before, before)).toEqual([]);
    const [added, removed] = compareHoles(before, after);
    expect(added).toMatchObject({ ref: '3', does: 'add' });
    expect(Math.abs(added!.lengthAfter_m! - 60)).toBeLessThan(0.02);
    expect(removed).toMatchObject({ ref: '2', does: 'remove' });
    const [longer] = compareHoles(before, courseOf(...hole('1'), ...sites('2', 100, 95)));
    expect(longer).toMatchObject({ ref: '2', does: 'change' });
    expect(Math.abs(longer!.basketMoved_m! - 15)).toBeLessThan(0.02);
    expect(longer!.teeMoved_m).toBeUndefined();
  });
});
