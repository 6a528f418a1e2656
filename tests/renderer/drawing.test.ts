import type { FeatureCollection } from 'geojson';
import { describe, expect, it } from 'vitest';
import { offset_m } from '../../core/course/edit/shift-position.ts';
import { verticesOf } from '../../core/course/edit/vertices.ts';
import { aimOf, heldShape, thingUnder, vertexUnder } from '../../renderer/course/edit/editing.ts';
import { indexesOfHole, nextRef, refsOf, startOf } from '../../renderer/course/edit/hole-parts.ts';
import { mapKey } from '../../renderer/course/edit/map-keys.ts';
import { thingWords } from '../../renderer/course/edit/thing-words.ts';
import { readPlace, type WalkTexts, walkedEntry } from '../../renderer/course/edit/walk-numbers.ts';
import { area, at, collection, hole, point, square } from '../core/course/course-file.ts';

const file = collection(
  ...hole('1'),
  area(square(20, 20, 40), { natural: 'wood' }),
  area(square(30, 30, 10), { disc_golf: 'hazard', name: 'Pit' }),
  point([0, 300], { disc_golf: 'basket', ref: '1;10', name: 'B' }),
) as unknown as FeatureCollection;

describe('keys of the map', () => {
  const plain = { shiftKey: false, ctrlKey: false, metaKey: false, altKey: false };
  it.each([
    [
      { ...plain, key: 'ArrowUp' },
      { does: 'shift', east_m: 0, north_m: 1 },
    ],
    [
      { ...plain, key: 'ArrowLeft', shiftKey: true },
      { does: 'shift', east_m: -10, north_m: 0 },
    ],
    [
      { ...plain, key: 'ArrowRight', ctrlKey: true },
      { does: 'shift', east_m: 0.1, north_m: 0 },
    ],
    [{ ...plain, key: 'F' }, { does: 'finish' }],
    [
      { ...plain, key: 'n' },
      { does: 'step', by: 1 },
    ],
    [{ ...plain, key: 'z', ctrlKey: true }, null],
    [{ ...plain, key: 'ArrowLeft', altKey: true }, null],
    [{ ...plain, key: 'Tab' }, null],
  ])('%j does %j', (pressed, does) => expect(mapKey(pressed)).toEqual(does));
});

describe('what lies under the cross', () => {
  it('is the nearest point or line, else the innermost area', () => {
    expect(thingUnder(file, at([1, 1]))).toBe(0);
    expect(thingUnder(file, at([35, 35]))).toBe(4);
    expect(thingUnder(file, at([50, 50]))).toBe(3);
    expect(thingUnder(file, at([300, 300]))).toBeNull();
    expect(vertexUnder(file.features[3]!.geometry, at([59, 59]))).toBe(2);
    expect(vertexUnder(file.features[3]!.geometry, at([40, 40]))).toBeNull();
  });

  it('is held on to within reach only, and not by a whole thing in hand', () => {
    expect(aimOf(file, { cross: at([79, 0]), held: null }, 2).held?.to).toBe('site');
    expect(aimOf(file, { cross: at([79, 0]), held: null }, null).held).toBeNull();
    const held = { index: 3, vertex: null, from: at([20, 20]), geometry: file.features[3]!.geometry };
    expect(aimOf(file, { cross: at([79, 0]), held }, 2).held).toBeNull();
    const moved = verticesOf(heldShape(held, at([0, 0]), [5, -5]));
    for (const [i, { position }] of moved.entries()) {
      const [east_m, north_m] = offset_m(verticesOf(held.geometry)[i]!.position, position);
      expect(Math.hypot(east_m - 5, north_m + 5)).toBeLessThan(0.005);
    }
  });
});

describe('holes of a map being drawn', () => {
  it('are those begun too', () => {
    expect(refsOf(file, null)).toEqual(['1', '10']);
    expect(nextRef(refsOf(file, null))).toBe('11');
    expect(nextRef([])).toBe('1');
    expect(indexesOfHole(file, '10')).toEqual([5]);
    expect(startOf(file)).toEqual(at([0, 0]));
    expect(startOf({ type: 'FeatureCollection', features: [], start: [7, 8] } as never)).toEqual([7, 8]);
  });

  it('have things called by name', () => {
    expect(file.features.map(thingWords)).toEqual([
      'tee 1',
      'basket 1',
      'line of play 1',
      'wood',
      'hazard, Pit',
      'basket 1;10, B',
    ]);
  });
});

describe('numbers of a walk', () => {
  const texts: WalkTexts = {
    ...{
      ref: '4',
      name: '',
      par: '',
      unit: 'paces',
      pace: '0,8',
      sizes: 'm',
      length: '110',
      bearing: 'SW',
      rise: '−2',
    },
    ...{ bends: [{ at: '60', turn: '20', side: 'left' }], ceilings: [], gaps: [], trees: [], out: [] },
  };

  it('are read as typed: decimal commas, minus signs, compass points', () => {
    expect(walkedEntry(texts)).toMatchObject({
      ok: true,
      value: {
        distances: { unit: 'paces', pace_m: 0.8 },
        bearing_deg: 225,
        rise: -2,
        bends: [{ at: 60, turn_deg: -20 }],
      },
    });
  });

  it('are asked for where they are missing or no numbers', () => {
    const wrong = walkedEntry({ ...texts, length: '', bends: [{ at: 'half', turn: '20', side: 'left' }], bearing: '' });
    expect(wrong.ok ? [] : wrong.problems.map(({ path }) => path)).toEqual(['bearing_deg', 'length', 'bends[0].at']);
  });

  it('have a place, latitude first', () => {
    expect(readPlace('46.916, 11.247')).toEqual({ ok: true, value: [11.247, 46.916] });
    expect(readPlace('−33.9; 18.4°')).toEqual({ ok: true, value: [18.4, -33.9] });
    expect(readPlace('here').ok).toBe(false);
    expect(readPlace('95, 10').ok).toBe(false);
  });
});
