import { describe, expect, it } from 'vitest';
import { discOf } from '../../../backend/command-line/options/disc-numbers.ts';
import { holeList } from '../../../backend/command-line/options/hole-list.ts';
import { discClasses } from '../../../backend/command-line/options/limit-options.ts';
import {
  angle_deg,
  direction_deg,
  length_m,
  mass_g,
  speed_mps,
  temperature_C,
  wholeNumber,
} from '../../../backend/command-line/options/reading.ts';
import { compassPoint } from '../../../core/units/compass-point.ts';
import { good, hole } from '../../core/course/course-file.ts';

describe('option values', () => {
  it.each([
    { name: '12mph', got: () => speed_mps('12mph'), want: 5.36448, source: 'NIST SP 811 B.8: 0.44704 m/s' },
    { name: '300ft', got: () => length_m('300ft'), want: 91.44, source: 'NIST SP 811 B.8: 0.3048 m' },
    { name: '65F', got: () => temperature_C('65F'), want: 55 / 3, source: '(65 − 32)/1.8 by hand' },
    { name: '−3.5 deg', got: () => angle_deg('−3.5 deg'), want: -3.5, source: 'as written' },
    { name: '175 g', got: () => mass_g('175 g'), want: 175, source: 'as written' },
    { name: 'seed -4', got: () => wholeNumber('-4'), want: -4, source: 'as written' },
    { name: 'W', got: () => direction_deg('W'), want: 270, source: 'compass of 16 points, 22.5° apart' },
    { name: 'sse', got: () => direction_deg('sse'), want: 157.5, source: 'compass of 16 points, 22.5° apart' },
    { name: 'north', got: () => direction_deg('north'), want: 0, source: 'compass of 16 points' },
    { name: '250°', got: () => direction_deg('250°'), want: 250, source: 'as written' },
  ])('$name is $want ($source)', ({ got, want }) => {
    expect(Math.abs(got() - want)).toBeLessThanOrEqual(1e-9);
  });

  it.each([
    { name: 'a speed in litres', read: () => speed_mps('12l'), says: '12mph' },
    { name: 'an angle in words', read: () => angle_deg('flat'), says: 'degrees' },
    { name: 'an empty angle', read: () => angle_deg(''), says: 'degrees' },
    { name: 'a direction nobody knows', read: () => direction_deg('WWS'), says: '270 or W' },
    { name: 'a half seed', read: () => wholeNumber('1.5'), says: 'whole number' },
    { name: 'a hexadecimal seed', read: () => wholeNumber('0x10'), says: 'whole number' },
    { name: 'three flight numbers', read: () => discOf('7/5/-1'), says: 'four numbers' },
    { name: 'flight numbers with a hole', read: () => discOf('7//-1/1'), says: 'four numbers' },
    { name: 'a class nobody knows', read: () => discClasses('putters,saucers'), says: '"saucers"' },
  ])('$name: refused, saying $says', ({ read, says }) => {
    expect(read).toThrow(says);
  });

  it('reads flight numbers and ids of discs', () => {
    expect(discOf('7/5/-1/1.5')).toEqual({ speed: 7, glide: 5, turn: -1, fade: 1.5 });
    expect(discOf('my-disc')).toBe('my-disc');
  });

  it('reads classes in singular and plural, drivers as three classes, each once', () => {
    expect(discClasses('putters, Midrange')).toEqual(['putter', 'midrange']);
    expect(discClasses('drivers,fairway')).toEqual(['fairway', 'control', 'distance']);
  });

  it.each([
    { bearing_deg: 0, want: 'N' },
    { bearing_deg: 11.3, want: 'NNE' },
    { bearing_deg: 359, want: 'N' },
    { bearing_deg: -90, want: 'W' },
  ])('$bearing_deg is $want (compass of 16 points, 22.5° apart)', ({ bearing_deg, want }) => {
    expect(compassPoint(bearing_deg)).toBe(want);
  });
});

describe('holeList', () => {
  const course = good(...['1', '2', '3', '10', '10A'].flatMap((ref, i) => hole(ref, 150 * i)));
  const listed = (text: string) => {
    const result = holeList(text, course);
    return result.ok ? result.value : result.problems[0]!.message;
  };

  it.each([
    { text: '3,1', want: ['1', '3'] },
    { text: '1-3', want: ['1', '2', '3'] },
    { text: '2-20', want: ['2', '3', '10', '10A'] },
    { text: '#02', want: ['2'] },
    { text: '10a', want: ['10A'] },
    { text: 'all', want: ['1', '2', '3', '10', '10A'] },
    { text: '1,1-2', want: ['1', '2'] },
  ])('$text is $want', ({ text, want }) => {
    expect(listed(text)).toEqual(want);
  });

  it.each(['4', '5-9', '3-1', '', '1,', 'x'])('"%s" is refused with the holes there are', text => {
    expect(listed(text)).toContain('1, 2, 3, 10, 10A');
  });
});
