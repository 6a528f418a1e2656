import fc from 'fast-check';
import { expect, it } from 'vitest';
import { extremeFlight, flaws, flown, legalFlight } from './extreme-flight.ts';

// endOnFailure: shrinking dozens of numbers takes longer than reading the case.
// Own requirement: whatever goes in, finite numbers come out, the path runs forward in time, the disc rests within 40 m.

it('any legal disc at any speed, angle and spin, in any wind, flies and rests at finite numbers', () => {
  fc.assert(
    fc.property(legalFlight, flight => {
      expect(flaws(flown(flight))).toEqual([]);
    }),
    { seed: 805, numRuns: 3000, endOnFailure: true },
  );
});

it('and so does a disc beyond every limit', () => {
  fc.assert(
    fc.property(extremeFlight, flight => {
      expect(flaws(flown(flight))).toEqual([]);
    }),
    { seed: 40, numRuns: 3000, endOnFailure: true },
  );
});
