import { type GroundPlane, heightAboveGround } from './surroundings.ts';
import type { Vector } from './vector.ts';

export type Moving = Readonly<{ position: Vector; velocity: Vector }>;

/** Equations of motion over a state object; a rate has the shape of the state. */
export type EquationsOfMotion<State extends Moving> = Readonly<{
  rate: (state: State) => State;
  /** `state + rate × duration`, component by component. */
  moved: (state: State, rate: State, duration_s: number) => State;
  /** The state with its unit vectors brought back to length one. */
  tidied: (state: State) => State;
}>;

type Sample<State> = Readonly<{ time_s: number; state: State }>;

export type Trajectory<State> = Readonly<{
  /** Start, every full step, and the landing or the end. */
  samples: readonly Sample<State>[];
  end: Sample<State>;
  landed: boolean;
  apex_m: number;
}>;

/** One classical Runge–Kutta step of order four. Source: Hairer, Nørsett & Wanner, Solving ODEs I, §II.1. */
export function rungeKutta4<State extends Moving>(
  equations: EquationsOfMotion<State>,
  state: State,
  step_s: number,
): State {
  const { rate, moved, tidied } = equations;
  const first = rate(state);
  const second = rate(moved(state, first, step_s / 2));
  const third = rate(moved(state, second, step_s / 2));
  const fourth = rate(moved(state, third, step_s));
  const weighted: readonly (readonly [State, number])[] = [
    [first, 1 / 6],
    [second, 1 / 3],
    [third, 1 / 3],
    [fourth, 1 / 6],
  ];
  return tidied(weighted.reduce((sum, [slope, weight]) => moved(sum, slope, weight * step_s), state));
}

/** One explicit Euler step, for the step-size comparison only. */
export const euler = <State extends Moving>(equations: EquationsOfMotion<State>, state: State, step_s: number): State =>
  equations.tidied(equations.moved(state, equations.rate(state), step_s));

export type Limits = Readonly<{
  step_s: number;
  until_s: number;
  /** Absent: fly on to `until_s` whatever is below. */
  ground?: GroundPlane;
  method?: typeof rungeKutta4;
}>;

/**
 * Flies until the ground or the end of time. Contact and apex are found by taking the last step shorter, so they
 * are as exact as the method itself.
 */
export function trajectory<State extends Moving>(
  equations: EquationsOfMotion<State>,
  start: State,
  { step_s, until_s, ground, method = rungeKutta4 }: Limits,
): Trajectory<State> {
  const samples: Sample<State>[] = [{ time_s: 0, state: start }];
  let apex_m = start.position.z;
  for (let index = 0; ; index++) {
    const here = samples[samples.length - 1]!;
    const whole_s = Math.min(step_s, until_s - here.time_s);
    if (whole_s <= 1e-12) return { samples, end: here, landed: false, apex_m };
    const shorter = (duration_s: number): State => method(equations, here.state, duration_s);
    const next = shorter(whole_s);
    if (here.state.velocity.z > 0 && next.velocity.z <= 0) {
      const top_s = root(duration_s => shorter(duration_s).velocity.z, whole_s);
      apex_m = Math.max(apex_m, shorter(top_s).position.z);
    }
    if (ground !== undefined && fallsThrough(ground, here.state.position, next.position)) {
      const contact_s = root(duration_s => heightAboveGround(ground, shorter(duration_s).position), whole_s);
      const end = { time_s: here.time_s + contact_s, state: shorter(contact_s) };
      return { samples: [...samples, end], end, landed: true, apex_m };
    }
    const full_s = (index + 1) * step_s;
    samples.push({ time_s: full_s <= until_s ? full_s : until_s, state: next });
  }
}

/** Coming up through the ground from below it does not count: a throw to a higher green starts under its level. */
const fallsThrough = (ground: GroundPlane, before: Vector, after: Vector): boolean =>
  heightAboveGround(ground, before) > 0 && heightAboveGround(ground, after) <= 0;

/** Where `value` falls through zero in (0, whole]: bisection, sure and exact enough. */
function root(value: (at: number) => number, whole: number): number {
  let [low, high] = [0, whole];
  for (let halving = 0; halving < 50; halving++) {
    const middle = (low + high) / 2;
    if (value(middle) > 0) low = middle;
    else high = middle;
  }
  return high;
}
