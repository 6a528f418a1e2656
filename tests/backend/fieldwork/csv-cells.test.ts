import { describe, expect, it } from 'vitest';
import {
  bearingCell,
  dateCell,
  dateOrderOf,
  decimalMarkOf,
  guardedText,
  lengthCell,
  powerCell,
  sideCell,
  speedCell,
  textCell,
  wordCell,
} from '../../../backend/fieldwork/csv-cells.ts';

const WRONG = 'wrong';
const said = (cell: { value: unknown } | { wrong: string }) => ('value' in cell ? cell.value : WRONG);

describe('decimals', () => {
  it.each([
    { cells: ['1.5', '2'], want: 'point' },
    { cells: ['1,5', '2'], want: 'comma' },
    { cells: ['0,125'], want: 'comma' },
    { cells: ['1,234'], want: 'any' },
    { cells: ['1,234', '1.5'], want: 'point' },
    { cells: ['1', ''], want: 'point' },
  ])('$cells have $want', ({ cells, want }) => expect(decimalMarkOf(cells)).toBe(want));

  it('a cell with the other mark is refused, never read as thousands', () => {
    expect(lengthCell('1,5', 'm', 'point')).toEqual({ wrong: expect.stringContaining('write a point') });
    expect(lengthCell('1.5', 'm', 'comma')).toEqual({ wrong: expect.stringContaining('write a comma') });
    expect(lengthCell('1,234', 'm', 'any')).toEqual({ wrong: expect.stringContaining('thousands or decimals') });
  });
});

describe('quantities', () => {
  // exact factors: NIST SP 811, B.8; kept to a tenth of a millimetre
  it.each([
    { text: '300', unit: 'ft', want: 91.44 },
    { text: '92.5', unit: 'm', want: 92.5 },
    { text: ' 92.5 m', unit: 'ft', want: 92.5 },
    { text: '300\u00a0ft', unit: 'm', want: 91.44 },
    { text: `300'`, unit: null, want: 91.44 },
    { text: '100', unit: 'yd', want: 91.44 },
    { text: '9144', unit: 'cm', want: 91.44 },
    { text: '−3', unit: 'm', want: -3 },
    { text: '92', unit: null, want: WRONG },
    { text: '92 furlongs', unit: 'm', want: WRONG },
    { text: '1E+02', unit: 'ft', want: 30.48 },
    { text: 'NaN', unit: 'm', want: WRONG },
    { text: '', unit: 'm', want: WRONG },
  ] as const)('length "$text" in $unit is $want', ({ text, unit, want }) =>
    expect(said(lengthCell(text, unit, 'point'))).toBe(want),
  );

  it.each([
    { text: '3', positive: 'right', want: 3 },
    { text: '3', positive: 'left', want: -3 },
    { text: '3 L', positive: 'right', want: -3 },
    { text: 'l3', positive: 'right', want: -3 },
    { text: 'Left 2.5', positive: 'right', want: -2.5 },
    { text: '10ft right', positive: 'right', want: 3.048 },
    { text: '10 ft R', positive: 'left', want: 3.048 },
    { text: '-3 left', positive: 'right', want: WRONG },
    { text: 'left', positive: 'right', want: WRONG },
  ] as const)('side "$text" with $positive positive is $want', ({ text, positive, want }) =>
    expect(said(sideCell(text, 'm', 'point', positive))).toBe(want),
  );

  it.each([
    { text: '10', unit: 'mph', want: 4.4704 },
    { text: '36 km/h', unit: 'mps', want: 10 },
    { text: '4', unit: 'mps', want: 4 },
    { text: '4', unit: null, want: WRONG },
  ] as const)('speed "$text" in $unit is $want', ({ text, unit, want }) =>
    expect(said(speedCell(text, unit, 'point'))).toBe(want),
  );

  it.each([
    { text: '270', want: 270 },
    { text: '270°', want: 270 },
    { text: 'wsw', want: 247.5 },
    { text: 'upwind', want: WRONG },
  ])('direction "$text" is $want', ({ text, want }) => expect(said(bearingCell(text, 'point'))).toBe(want));

  it.each([
    { text: 'Full', want: 'full' },
    { text: '80 %', want: 0.8 },
    { text: '0.8', want: 0.8 },
    { text: 'hard', want: WRONG },
  ])('power "$text" is $want', ({ text, want }) => expect(said(powerCell(text, 'point'))).toBe(want));
});

describe('dates', () => {
  it.each([
    { text: '2026-05-30', order: 'any', want: '2026-05-30' },
    { text: '2026/5/3', order: 'any', want: '2026-05-03' },
    { text: '2026-05-30T18:20:00Z', order: 'any', want: '2026-05-30' },
    { text: '30.5.2026', order: 'any', want: '2026-05-30' },
    { text: '3/4/2026', order: 'any', want: WRONG },
    { text: '3/4/2026', order: 'dmy', want: '2026-04-03' },
    { text: '3/4/26', order: 'mdy', want: '2026-03-04' },
    { text: '31/2/2026', order: 'dmy', want: WRONG },
    { text: '2026-13-01', order: 'any', want: WRONG },
    { text: 'spring, windy', order: 'any', want: 'spring, windy' },
    { text: '46000', order: 'any', want: WRONG },
  ] as const)('"$text" ($order) is $want', ({ text, order, want }) => expect(said(dateCell(text, order))).toBe(want));

  it.each([
    { cells: ['3/4/2026', '13/4/2026'], want: 'dmy' },
    { cells: ['3/4/2026', '3/14/2026'], want: 'mdy' },
    { cells: ['3/4/2026'], want: 'any' },
    { cells: ['2026-04-13'], want: 'any' },
  ])('$cells are $want', ({ cells, want }) => expect(dateOrderOf(cells)).toBe(want));
});

describe('words and text', () => {
  it.each([
    { kind: 'hand', text: 'FH', want: 'forehand' },
    { kind: 'hand', text: ' Backhand ', want: 'backhand' },
    { kind: 'shape', text: 'Anhyzer', want: 'anhyzer' },
    { kind: 'surface', text: 'long grass', want: 'longGrass' },
    { kind: 'hand', text: 'both', want: WRONG },
    { kind: 'shape', text: 'constructor', want: WRONG },
  ] as const)('$kind "$text" is $want', ({ kind, text, want }) => expect(said(wordCell(kind, text))).toBe(want));

  // what spreadsheets run as a formula: a leading =, +, - or @ (common practice, no source)
  it.each(['=1+1', '-x', '@a', "'=x", "''-", 'plain', "'quoted", ''])('"%s" comes back from its guard', text => {
    expect(guardedText(text)).not.toMatch(/^[=+\-@\t]/);
    expect(textCell(guardedText(text))).toBe(text);
  });
});
