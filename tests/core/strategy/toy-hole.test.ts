import { describe, expect, it } from 'vitest';
import { CHOICE, type Ends, RESULT } from '../../../core/strategy/march.ts';
import { createPolicy, type Policy } from '../../../core/strategy/policy.ts';
import { puttingValue } from '../../../core/strategy/putting-value.ts';
import { addPath, expectedOf, resetThrowValue, type ThrowValue } from '../../../core/strategy/throw-value.ts';
import { type ValueField, valueAt } from '../../../core/strategy/value-field.ts';

/**
 * The toy hole, an own example worked by hand from V(s) = min over shots of 1 + Σ P·(penalty + V(next)), V(holed) = 0:
 * P (inside 10 m) is made with 0.8, else tapped in; R (10–20 m) with 0.30, tapped in after 0.65, left in P with 0.05.
 */
const STATES = { holed: 0, tapIn: 1, P: 2, R: 3, tee: 4 } as const;
type State = keyof typeof STATES;
const SPACING_M = 10;
const at = (state: State) => [STATES[state] * SPACING_M, 0] as const;

/** A field whose nodes are the states, the basket far away so that nothing is a putt. */
function toyField(values: Partial<Record<State, number>> = {}): ValueField {
  const columns = 5;
  const value = new Float64Array(2 * columns).fill(5);
  const wanted = { holed: 0, tapIn: 1, ...values };
  for (const [state, v] of Object.entries(wanted)) value[STATES[state as State]] = v;
  return {
    x0_m: 0,
    y0_m: 0,
    cell_m: SPACING_M,
    columns,
    rows: 2,
    value,
    isLie: new Uint8Array(2 * columns).fill(1),
    openPutt: new Float64Array(2 * columns).fill(1),
    putting: puttingValue({ floor: 0, ceiling: 0.99, half_m: 6, scale_m: 2, attempts: 0, basis: 'predicted' }),
    basket: [0, 1000],
  };
}

type Part = Readonly<{ to: State | 'again'; chance: number; penalty?: number; onlyThere?: true }>;

function endsFor(parts: readonly Part[]): Ends {
  const place = ({ to }: Part, axis: 0 | 1) => (to === 'again' ? Number.NaN : at(to)[axis]);
  return {
    count: parts.length,
    x: Float64Array.from(parts, part => place(part, 0)),
    y: Float64Array.from(parts, part => place(part, 1)),
    weight: Float64Array.from(parts, part => part.chance),
    penalty: Float64Array.from(parts, part => part.penalty ?? 0),
    kind: Uint8Array.from(parts, part => ((part.penalty ?? 0) > 0 ? RESULT.outOfBounds : RESULT.rest)),
    choices: Uint8Array.from(parts, part => (part.onlyThere ? 0 : CHOICE.previousLie | CHOICE.dropZone)),
    restX: new Float64Array(parts.length),
    restY: new Float64Array(parts.length),
    clear: 1,
  };
}

const SAFE: readonly Part[] = [
  { to: 'P', chance: 0.5 },
  { to: 'R', chance: 0.5 },
];
const BOLD: readonly Part[] = [
  { to: 'P', chance: 0.7 },
  { to: 'R', chance: 0.1 },
];
const BOLD_TO_DROP_ZONE: readonly Part[] = [...BOLD, { to: 'R', chance: 0.2, penalty: 1 }];
const BOLDER_TO_DROP_ZONE: readonly Part[] = [
  { to: 'P', chance: 0.8 },
  { to: 'R', chance: 0.1 },
  { to: 'R', chance: 0.1, penalty: 1 },
];
const BOLD_REPLAYED: readonly Part[] = [...BOLD, { to: 'again', chance: 0.2, penalty: 1 }];
const SOLVED = { P: 1.2, R: 1.71 };

function expected(parts: readonly Part[], field = toyField(SOLVED)): number {
  const value: ThrowValue = { paths: 0, sum: 0, replay: 0 };
  resetThrowValue(value);
  addPath(value, endsFor(parts), field, Number.NaN, Number.NaN, 0);
  return expectedOf(value);
}

function settle(policy: Policy, state: State, parts: readonly Part[]): number {
  policy.begin(STATES[state], 0);
  policy.add(endsFor(parts), 1, Number.NaN, Number.NaN);
  return policy.end();
}

describe('the toy hole through the value of a throw', () => {
  it.each([
    { name: 'safe', parts: SAFE, want: 2.455 },
    { name: 'bold, out-of-bounds to the drop zone', parts: BOLD_TO_DROP_ZONE, want: 2.553 },
    { name: 'bolder, out-of-bounds to the drop zone', parts: BOLDER_TO_DROP_ZONE, want: 2.402 },
    { name: 'bold, always replayed from the tee', parts: BOLD_REPLAYED, want: 2.76375 },
  ])('$name: $want ([S] own example, by hand)', ({ parts, want }) => {
    expect(expected(parts)).toBeCloseTo(want, 12);
  });

  it('bold, then safe after out-of-bounds: 2.702 ([S] own example, by hand)', () => {
    const value: ThrowValue = { paths: 0, sum: 0, replay: 0 };
    const own = addPath(value, endsFor(BOLD_REPLAYED), toyField(SOLVED), Number.NaN, Number.NaN, 2.455);
    expect(1 + own).toBeCloseTo(2.702, 12);
  });

  it('prefers what the hand solution prefers: bolder 2.402, without it safe 2.455', () => {
    const all = [SAFE, BOLD_TO_DROP_ZONE, BOLDER_TO_DROP_ZONE, BOLD_REPLAYED].map(parts => expected(parts));
    expect(Math.min(...all)).toBeCloseTo(2.402, 12);
    expect(Math.min(all[0], all[1], all[3])).toBeCloseTo(2.455, 12);
  });

  it('plays out-of-bounds from the drop zone when that is better than where it went over, and only then', () => {
    const [dropX, dropY] = at('R');
    const drop = (from: State) => {
      const value: ThrowValue = { paths: 0, sum: 0, replay: 0 };
      addPath(value, endsFor([{ to: from, chance: 1, penalty: 1 }]), toyField({ ...SOLVED, tee: 3 }), dropX, dropY, 0);
      return expectedOf(value);
    };
    expect(drop('tee')).toBeCloseTo(1 + 1 + 1.71, 12);
    expect(drop('P')).toBeCloseTo(1 + 1 + 1.2, 12);
  });

  it('plays out-of-bounds from the previous lie when that is better than where it went over, and only then', () => {
    const from = (lieValue: number) => {
      const value: ThrowValue = { paths: 0, sum: 0, replay: 0, lieValue };
      const ends = endsFor([
        { to: 'P', chance: 0.8 },
        { to: 'R', chance: 0.2, penalty: 1 },
      ]);
      addPath(value, ends, toyField(SOLVED), Number.NaN, Number.NaN, 0);
      return expectedOf(value);
    };
    // by hand: on from R, worth 1.71: 1 + 0.8·1.2 + 0.2·(1 + 1.71); again from a lie worth less: (1 + 0.8·1.2 + 0.2)/(1 − 0.2)
    expect(from(2.5)).toBeCloseTo(1 + 0.8 * 1.2 + 0.2 * 2.71, 12);
    expect(from(1.5)).toBeCloseTo((1 + 0.8 * 1.2 + 0.2) / 0.8, 12);
  });

  it('means over paths: two paths of one shot are its two halves', () => {
    const value: ThrowValue = { paths: 0, sum: 0, replay: 0 };
    const field = toyField(SOLVED);
    addPath(value, endsFor([{ to: 'P', chance: 1 }]), field, Number.NaN, Number.NaN, 0);
    addPath(value, endsFor([{ to: 'R', chance: 1 }]), field, Number.NaN, Number.NaN, 0);
    expect(expectedOf(value)).toBeCloseTo(2.455, 12);
  });

  it('refuses a shot that nearly always comes back to its lie instead of dividing by nothing', () => {
    expect(expected([{ to: 'again', chance: 1, penalty: 1 }])).toBe(12);
    expect(
      expected([
        { to: 'again', chance: 0.95, penalty: 1 },
        { to: 'P', chance: 0.05 },
      ]),
    ).toBe(12);
  });
});

describe('the toy hole through the policy', () => {
  function solvedPolicy(tee: readonly Part[]) {
    const field = toyField();
    const policy = createPolicy(field);
    // from the tee backwards, so that the first values are wrong and the sweeps have to mend them
    settle(policy, 'tee', tee);
    settle(policy, 'R', [
      { to: 'holed', chance: 0.3 },
      { to: 'tapIn', chance: 0.65 },
      { to: 'P', chance: 0.05 },
    ]);
    settle(policy, 'P', [
      { to: 'holed', chance: 0.8 },
      { to: 'tapIn', chance: 0.2 },
    ]);
    let sweeps = 0;
    while (policy.sweep() > 1e-13 && sweeps < 200) sweeps++;
    return { field, sweeps, worth: (state: State) => valueAt(field, ...at(state)) };
  }

  it('sweeps to V(P) = 1.2 and V(R) = 1.71 ([S] own example, by hand)', () => {
    const { worth } = solvedPolicy(SAFE);
    expect(worth('P')).toBeCloseTo(1.2, 12);
    expect(worth('R')).toBeCloseTo(1.71, 12);
  });

  it.each([
    { name: 'safe', parts: SAFE, want: 2.455 },
    { name: 'bold to the drop zone', parts: BOLD_TO_DROP_ZONE, want: 2.553 },
    { name: 'bolder to the drop zone', parts: BOLDER_TO_DROP_ZONE, want: 2.402 },
    { name: 'bold replayed', parts: BOLD_REPLAYED, want: 2.76375 },
  ])('$name: the tee is worth $want ([S] own example, by hand)', ({ parts, want }) => {
    expect(solvedPolicy(parts).worth('tee')).toBeCloseTo(want, 10);
  });

  it.each([
    // by hand: on from a lie worth 2.5: 1 + 0.7·1.2 + 0.1·1.71 + 0.2·(1 + 2.5) = 2.711; always again 2.76375 ([S] own example)
    { name: 'on, when that is cheaper', worth: 2.5, want: 2.711 },
    // by hand: on from a lie worth 3: 2.811
    { name: 'again, when going on is dearer', worth: 3, want: 2.76375 },
  ])('after out-of-bounds goes $name: the previous lie is a choice', ({ worth, want }) => {
    // the tap-in's place stands for the lie at the line
    const policy = createPolicy(toyField({ ...SOLVED, tapIn: worth, tee: 4 }));
    expect(settle(policy, 'tee', [...BOLD, { to: 'tapIn', chance: 0.2, penalty: 1 }])).toBeCloseTo(want, 12);
  });

  it('throws again only from lies dearer than the own: of two at the line the dear one', () => {
    // by hand: a fifth goes on from 1.71, a fifth again instead of from 6
    const policy = createPolicy(toyField({ ...SOLVED, tapIn: 6, tee: 9 }));
    const parts: readonly Part[] = [
      { to: 'P', chance: 0.6 },
      { to: 'R', chance: 0.2, penalty: 1 },
      { to: 'tapIn', chance: 0.2, penalty: 1 },
    ];
    const want = (1 + 0.6 * 1.2 + 0.2 * 2.71 + 0.2) / 0.8;
    expect(settle(policy, 'tee', parts)).toBeCloseTo(want, 12);
  });

  it('weighs the drop zone anew when values have moved', () => {
    // the tap-in's place stands for the drop zone; by hand, with 0.2 out: 1 + 0.7·1.2 + 0.1·1.71 + 0.2·(1 + the cheaper of both)
    const field = toyField({ ...SOLVED, tapIn: 9, tee: 4 });
    const policy = createPolicy(field);
    policy.begin(STATES.tee, 0);
    policy.add(endsFor(BOLD_TO_DROP_ZONE), 1, ...at('tapIn'));
    expect(policy.end()).toBeCloseTo(2.553, 12);
    for (const node of [STATES.tapIn, STATES.tapIn + 5]) field.value[node] = 1;
    policy.sweep();
    expect(valueAt(field, ...at('tee'))).toBeCloseTo(2.011 + 0.2 * 2, 12);
  });

  it('counts a throw that goes in as one throw, in value and in score', () => {
    const field = toyField({ ...SOLVED, tee: 4 });
    const policy = createPolicy(field);
    const ends = endsFor([
      { to: 'holed', chance: 0.1 },
      { to: 'P', chance: 0.9 },
    ]);
    ends.kind[0] = RESULT.holed;
    // where it is said to lie does not count: in is in
    ends.x[0] = at('R')[0];
    policy.begin(STATES.tee, 0);
    policy.add(ends, 1, Number.NaN, Number.NaN);
    // by hand: 1 + 0.9·1.2
    expect(policy.end()).toBeCloseTo(2.08, 12);
    expect(policy.distribution(2)[1][STATES.tee]).toBeCloseTo(0.1, 12);
    const value: ThrowValue = { paths: 0, sum: 0, replay: 0 };
    addPath(value, ends, field, Number.NaN, Number.NaN, 0);
    expect(expectedOf(value)).toBeCloseTo(2.08, 12);
  });

  it('solves a replay in closed form to what iterating over the same lie comes to', () => {
    const closed = solvedPolicy(BOLD_REPLAYED);
    const iterated = solvedPolicy([...BOLD, { to: 'tee', chance: 0.2, penalty: 1, onlyThere: true }]);
    expect(iterated.worth('tee')).toBeCloseTo(closed.worth('tee'), 10);
    // at once against like 0.2^n
    expect(closed.sweeps).toBeLessThanOrEqual(3);
    expect(iterated.sweeps).toBeGreaterThan(8);
  });
});

// Strokes gained (Broadie 2012, Interfaces 42(2)): J(before) − J(after) − 1 − penalty, J(holed) = 0.
describe('strokes gained on the value function', () => {
  /** Before minus after, as a value field tells them. */
  const gained = (field: ValueField, from: State, to: State, penalty = 0) =>
    valueAt(field, ...at(from)) - valueAt(field, ...at(to)) - 1 - penalty;

  it('of a hole: −0.30, −0.20, +0.20, in all J(tee) − score ([S] own example: J 2.70, 2.00 and 1.20)', () => {
    // R stands for the lie at 60 m, P for 8 m
    const field = toyField({ tee: 2.7, R: 2, P: 1.2 });
    const shots = [gained(field, 'tee', 'R'), gained(field, 'R', 'P'), gained(field, 'P', 'holed')];
    [-0.3, -0.2, 0.2].forEach((want, i) => {
      expect(shots[i]).toBeCloseTo(want, 12);
    });
    expect(shots.reduce((a, b) => a + b)).toBeCloseTo(2.7 - 3, 12);
  });

  it('of a throw out-of-bounds to a drop zone: −1.01 ([S] own example: 2.70 − 1.71 − 1 − 1)', () => {
    expect(gained(toyField({ tee: 2.7, R: 1.71 }), 'tee', 'R', 1)).toBeCloseTo(-1.01, 12);
  });

  it('of a player exactly at the baseline has mean 0 in every state', () => {
    const field = toyField({ ...SOLVED, tee: 2.455 });
    const plays: Record<string, readonly Part[]> = {
      tee: SAFE,
      R: [
        { to: 'holed', chance: 0.3 },
        { to: 'tapIn', chance: 0.65 },
        { to: 'P', chance: 0.05 },
      ],
      P: [
        { to: 'holed', chance: 0.8 },
        { to: 'tapIn', chance: 0.2 },
      ],
    };
    for (const [state, parts] of Object.entries(plays)) {
      const mean = parts.reduce(
        (sum, { to, chance, penalty }) => sum + chance * gained(field, state as State, to as State, penalty),
        0,
      );
      expect(mean).toBeCloseTo(0, 12);
    }
  });
});
