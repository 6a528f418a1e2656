import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LANDING } from '../../../core/flight/flier.ts';
import { type AnyFlight, between, flown, legalFlight } from './extreme-flight.ts';

/** The same throw by a left-hander in a mirror along the aim. */
const inMirror = (flight: AnyFlight): AnyFlight => ({
  ...flight,
  azimuth_deg: -flight.azimuth_deg,
  // hyzer counts towards the fade side, which changes with the spin: it stays
  spin_radps: -flight.spin_radps,
  windY_mps: -flight.windY_mps,
  gradY: -flight.gradY,
});

/** Flights that go somewhere: any legal disc thrown the way people throw. */
const ordinaryFlight: fc.Arbitrary<AnyFlight> = fc
  .tuple(
    legalFlight,
    fc.record({
      speed_mps: between(14, 32),
      azimuth_deg: between(-20, 20),
      launch_deg: between(2, 20),
      nose_deg: between(-5, 5),
      hyzer_deg: between(-25, 25),
      windX_mps: between(-10, 10),
      windY_mps: between(-10, 10),
      gradX: between(-0.1, 0.1),
      gradY: between(-0.1, 0.1),
    }),
    fc.boolean(),
  )
  .map(([flight, throwing, clockwise]) => ({
    ...flight,
    ...throwing,
    height_m: 1.2,
    // advance ratio 0.46: assumed
    spin_radps: ((clockwise ? -0.92 : 0.92) * throwing.speed_mps) / (flight.disc.diameter_m ?? 0.212),
  }));

const EXACT = 1e-9;

/** Greatest difference between a flight and the mirror image of its mirrored throw, over path, touchdown, rest and times. */
function asymmetry(flight: AnyFlight): number {
  const one = flown(flight);
  const before = { ...one, state: one.state.slice(), path: one.path.slice() };
  const other = flown(inMirror(flight));
  expect(other.path).toHaveLength(before.path.length);
  const sidewaysStates: readonly number[] = [LANDING.y, LANDING.vy, LANDING.ny, LANDING.spin];
  return Math.max(
    Math.abs(other.time_s - before.time_s),
    Math.abs(other.apex_m - before.apex_m),
    Math.abs(other.play_m[0] - before.play_m[0]),
    Math.abs(other.play_m[1] + before.play_m[1]),
    ...Array.from(before.state, (value, i) => Math.abs(other.state[i] - (sidewaysStates.includes(i) ? -value : value))),
    ...Array.from(before.path, (value, i) => Math.abs(other.path[i] - (i % 3 === 1 ? -value : value))),
  );
}

describe('a throw and its wind and ground mirrored along the aim lands, flies and rests mirrored, to 1e-9', () => {
  // identity: nothing in the equations tells left from right
  it('ordinary throws of any legal disc', () => {
    let aside = 0;
    const property = fc.property(ordinaryFlight, flight => {
      expect(asymmetry(flight)).toBeLessThanOrEqual(EXACT);
      if (Math.abs(flown(flight).state[LANDING.y]) > 2) aside++;
    });
    fc.assert(property, { seed: 1717, numRuns: 500 });
    // flights along the mirror would say nothing
    expect(aside).toBeGreaterThan(250);
  });

  it('and throws at any attitude', () => {
    const spinning = legalFlight.filter(flight => flight.spin_radps !== 0);
    fc.assert(
      fc.property(spinning, flight => {
        expect(asymmetry(flight)).toBeLessThanOrEqual(EXACT);
      }),
      { seed: 1718, numRuns: 500 },
    );
  });
});
