import { describe, expect, it } from 'vitest';
import { readPlace } from '../../renderer/fieldwork/read-place.ts';
import { bareLength, readLength, readSide, readSpeed } from '../../renderer/words/read-quantity.ts';

const FEET = { length: 'ft' } as const;
const METRES = { length: 'm' } as const;

describe('what is typed', () => {
  // exact factors: NIST SP 811, B.8
  it.each([
    { text: '300', units: FEET, want: 91.44 },
    { text: '300', units: METRES, want: 300 },
    { text: '92,5', units: METRES, want: 92.5 },
    { text: '92.5 m', units: FEET, want: 92.5 },
    { text: `12'6"`, units: METRES, want: 3.81 },
  ])('length "$text" is $want m', ({ text, units, want }) =>
    expect(readLength(text, units)).toEqual({ ok: true, value: want }),
  );

  it.each([
    { text: '-3', want: -3 },
    { text: '−3', want: -3 },
    { text: '3 l', want: -3 },
    { text: 'r2,5', want: 2.5 },
    { text: '10ft left', want: -3.048 },
    { text: '0', want: 0 },
    { text: ' ', want: null },
  ])('side "$text" is $want m', ({ text, want }) => expect(readSide(text, METRES)).toEqual({ ok: true, value: want }));

  it.each(['far', '3 up', '-3 left', '1.2.3'])('side "%s" is refused with a way to write it', text =>
    expect(readSide(text, METRES)).toMatchObject({ ok: false, problems: [{ message: expect.stringMatching(/\w/) }] }),
  );

  it('a plain speed is in the unit the player reads', () => {
    expect(readSpeed('10', { speed: 'mph' })).toEqual({ ok: true, value: 4.4704 });
    expect(readSpeed('10 kn', { speed: 'mph' })).toEqual({ ok: true, value: 5.1444 });
    expect(bareLength(91.44, FEET)).toBe('300');
  });

  it.each([
    { text: '60.12345, 24.98765', want: [24.98765, 60.12345] },
    { text: '33.9 S 151.2 E', want: [151.2, -33.9] },
    { text: '-33.9;151.2', want: [151.2, -33.9] },
  ])('place "$text" has latitude first', ({ text, want }) =>
    expect(readPlace(text)).toEqual({ ok: true, value: want }),
  );

  it.each(['60', '151.2, -33.9', 'here, there', ''])('place "%s" is refused', text =>
    expect(readPlace(text).ok).toBe(false),
  );
});
