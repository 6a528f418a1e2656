import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holeAxes } from '../../renderer/frame/hole-axes.ts';
import { niceSteps } from '../../renderer/side-view/nice-steps.ts';
import { noHistory, remember, steppedBack, steppedForward } from '../../renderer/state/undo-history.ts';
import { parseBearing } from '../../renderer/wind/parse-bearing.ts';
import { aimWords } from '../../renderer/words/aim-words.ts';
import { percent } from '../../renderer/words/percent.ts';
import { compassPoint, feltWind } from '../../renderer/words/wind-words.ts';

describe('the hole laid on its side', () => {
  const metre = fc.double({ min: -300, max: 300, noNaN: true });
  it('keeps every distance and comes back', () => {
    fc.assert(
      fc.property(fc.tuple(metre, metre), fc.tuple(metre, metre), (basket, point) => {
        fc.pre(Math.hypot(...basket) > 1);
        const axes = holeAxes(basket);
        const [east, north] = axes.toLocal(axes.toHole(point));
        expect(Math.abs(east - point[0]) + Math.abs(north - point[1])).toBeLessThan(1e-9);
        expect(Math.abs(Math.hypot(...axes.toHole(point)) - Math.hypot(...point))).toBeLessThan(1e-9);
      }),
      { seed: 7 },
    );
  });
  it('has the basket straight along and the thrower’s left to the left', () => {
    const axes = holeAxes([0, 100]); // due north
    expect(axes.bearing_deg).toBe(0);
    expect(axes.toHole([0, 100])).toEqual([100, 0]);
    expect(axes.toHole([-10, 0])[1]).toBe(10); // west is left of north
  });
});

describe('words', () => {
  // Definitions: the wind is named after where it comes from; on a hole played north, a north wind blows into the face.
  it.each([
    { speed: 5, from: 0, bearing: 0, felt: 'headwind' },
    { speed: 5, from: 180, bearing: 0, felt: 'tailwind' },
    { speed: 5, from: 90, bearing: 0, felt: 'crosswind from the right' },
    { speed: 5, from: 310, bearing: 350, felt: 'headwind from the left' },
    { speed: 5, from: 10, bearing: 230, felt: 'tailwind from the right' },
    { speed: 0.1, from: 10, bearing: 230, felt: 'calm' },
  ])('$speed m/s from $from° on a hole towards $bearing° is a $felt', ({ speed, from, bearing, felt }) => {
    expect(feltWind(speed, from, bearing)).toBe(felt);
  });
  it('names the nearest of sixteen compass points', () => {
    expect([0, 22.5, 250, 359, -90].map(compassPoint)).toEqual([
      'north',
      'north-north-east',
      'west-south-west',
      'north',
      'west',
    ]);
  });
  it('never rounds a chance to certainty', () => {
    expect([0, 0.001, 0.5, 0.999, 1].map(percent)).toEqual(['0 %', '<1 %', '50 %', '>99 %', '100 %']);
  });
  it('says where to aim', () => {
    expect([0.2, -9, 4].map(aimWords)).toEqual(['at the basket', '9° left of the basket', '4° right of the basket']);
  });
  it('reads bearings as degrees or compass points and says how to write them', () => {
    expect(['250', '250°', 'wsw', '-90'].map(parseBearing)).toEqual(
      [250, 250, 247.5, 270].map(value => ({ ok: true, value })),
    );
    expect(parseBearing('left').ok).toBe(false);
  });
});

describe('scales', () => {
  it('steps in round numbers of the unit shown', () => {
    expect(niceSteps(0, 100, 5)).toEqual([0, 20, 40, 60, 80, 100]);
    // 0.3048 m is one foot, NIST SP 811 (2008), App. B.8: steps of 50 ft.
    expect(niceSteps(0, 80, 6, 0.3048).map(m => Math.round(m / 0.3048))).toEqual([0, 50, 100, 150, 200, 250]);
    expect(niceSteps(5, 5, 3)).toEqual([]);
  });
});

describe('undo', () => {
  const deed = (what: string) => ({ what, undo: () => {}, redo: () => {} });
  it('steps back and forward, and a new deed ends what was ahead', () => {
    const three = ['a', 'b', 'c'].map(deed).reduce(remember, noHistory);
    const back = steppedBack(steppedBack(three));
    expect(back.past.map(d => d.what)).toEqual(['a']);
    expect(steppedForward(back).past.map(d => d.what)).toEqual(['a', 'b']);
    expect(remember(back, deed('d'))).toMatchObject({ past: [{ what: 'a' }, { what: 'd' }], future: [] });
    expect(steppedBack(noHistory)).toEqual(noHistory);
  });
});
