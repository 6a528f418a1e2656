import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRoundCsv } from '../../../backend/rounds/read-round-csv.ts';
import { writeRoundCsv } from '../../../backend/rounds/write-round-csv.ts';
import { parseRoundText, type RoundFile } from '../../../core/review/round-file.ts';
import { taken } from '../taken.ts';

const DISCS = [
  { id: 'mid', name: 'Plain midrange' },
  { id: 'putt', name: 'Home putter' },
  { id: 'other', name: 'Home putter' },
];
const TABLE = `date,hole,throw,disc,shape,power,rest_to_basket_ft,rest_side_m,penalties,holed
2026-05-30,1,1,Plain midrange,flat,1,40,,,
,1,2,mid,,,10,-1.5,,
,1,3,putt,putt,,,,,yes
,2,1,mid,,,30,,lost,
,2,2,mid,,,20,,,
,2,3,,,,,,,x
`;
const lines = (...changes: [from: string, to: string][]) =>
  changes.reduce((text, [from, to]) => text.replace(from, to), TABLE);

describe('a round as a table', () => {
  it('is read: names of discs, feet, penalties, holed', () => {
    const round = taken(readRoundCsv(TABLE, DISCS));
    expect(round.date).toBe('2026-05-30');
    expect(round.holes.map(({ ref, throws }) => [ref, throws.length])).toEqual([
      ['1', 3],
      ['2', 3],
    ]);
    const [first, second] = round.holes[0]!.throws;
    // 40 ft × 0.3048, exact
    expect(first).toEqual({ discId: 'mid', shape: 'flat', power: 1, rest: { toBasket_m: 40 * 0.3048 } });
    expect(second!.rest).toEqual({ toBasket_m: 10 * 0.3048, side_m: -1.5 });
    expect(round.holes[1]!.throws[0]!.penalties).toEqual([{ kind: 'lost' }]);
  });

  // the row as a text editor numbers it
  it.each([
    { what: 'an unknown column', text: lines(['shape', 'colour']), path: 'first row, column 5' },
    { what: 'a column twice', text: lines(['shape', 'holed']), path: 'first row, column 10' },
    { what: 'no hole column', text: lines(['hole,', 'note,']), path: 'first row' },
    { what: 'a distance that is none', text: lines(['1,40', '1,forty']), path: 'row 2, rest_to_basket_m' },
    { what: 'an unknown disc', text: lines(['Plain midrange', 'Brick']), path: 'row 2, disc' },
    { what: 'a name of two discs', text: lines(['Plain midrange', 'Home putter']), path: 'row 2, disc' },
    { what: 'an unknown shape', text: lines(['putt,putt', 'putt,skip']), path: 'row 4, shape' },
    { what: 'an unknown penalty', text: lines(['lost', 'fined']), path: 'row 5, penalties[0].kind' },
    { what: 'a wrong throw number', text: lines([',1,2,mid', ',1,3,mid']), path: 'row 3, throw' },
    { what: 'a hole that comes back', text: lines([',2,3,', ',1,3,']), path: 'row 7, hole' },
    { what: 'neither yes nor no', text: lines(['yes', 'perhaps']), path: 'row 4, holed' },
    { what: 'two dates', text: lines([',2,1,mid', '2026-05-31,2,1,mid']), path: 'row 5, date' },
    { what: 'no date', text: lines(['2026-05-30', '']), path: 'date' },
    { what: 'a place missing', text: lines([',30,', ',,'], ['lost', '']), path: 'row 5, rest' },
    { what: 'two places', text: lines(['rest_side_m', 'rest_east_m']), path: 'row 3' },
    { what: 'an open quote', text: lines(['mid,,,10', '"mid,,,10']), path: 'line' },
    { what: 'nothing', text: '', path: 'file' },
  ])('$what is told by its row', ({ text, path }) => {
    const read = readRoundCsv(text, DISCS);
    expect(read.ok ? ['read'] : read.problems.map(p => p.path)).toContainEqual(expect.stringContaining(path));
  });

  it('comes back from its own table as it was', () => {
    const round: RoundFile = {
      schema: 'roundwright/round@1',
      date: '2026-05-30',
      course: 'A, B "and" C',
      day: { wind: { speed_mps: 3, from_deg: 90 } },
      realDay: { wind: { speed_mps: 5, from_deg: 100, gust_mps: 8 } },
      holes: [
        {
          ref: '1',
          throws: [
            {
              discId: 'mid',
              hand: 'forehand',
              shape: 'hyzer',
              height: 'low',
              power: 0.8,
              aimBearing_deg: 12,
              hyzer_deg: 12,
              launch_deg: 9,
              hit: true,
              rest: { east_m: 1.5, north_m: 2 },
              lie: { lonLat: [25, 60] },
              penalties: [{ kind: 'out-of-bounds' }, { kind: 'lost', throws: 2 }],
            },
            { rest: { toBasket_m: 3, side_m: 1, isBeyond: true } },
            { holed: true },
          ],
        },
      ],
    };
    expect(taken(readRoundCsv(writeRoundCsv(round), DISCS))).toEqual(round);
    const sample = taken(parseRoundText(readFileSync('sample-courses/sample-round.json', 'utf8')));
    const discs = ['soft-putter', 'gliding-putter', 'light-midrange', 'fairway-driver'].map(id => ({ id, name: id }));
    const { note: _, ...bare } = sample;
    expect(taken(readRoundCsv(writeRoundCsv(sample), discs))).toEqual(bare);
  });

  it('a thousand damaged tables are refused in words or read whole, never half (seeded)', () => {
    const rows = TABLE.trim().split('\n').length - 1;
    const damage = fc.record({
      at: fc.nat(TABLE.length),
      cut: fc.nat(6),
      put: fc.string({ maxLength: 6, unit: 'binary' }),
    });
    fc.assert(
      fc.property(fc.array(damage, { minLength: 1, maxLength: 4 }), damages => {
        const text = damages.reduce((t, { at, cut, put }) => t.slice(0, at) + put + t.slice(at + cut), TABLE);
        const read = readRoundCsv(text, DISCS);
        if (read.ok) {
          const throws = read.value.holes.reduce((sum, hole) => sum + hole.throws.length, 0);
          // damage can join rows or cut new ones, but no row may be dropped: the throws of each hole are numbered
          expect(Math.abs(throws - rows)).toBeLessThanOrEqual(damages.length * 2);
          return;
        }
        expect(read.problems.length).toBeGreaterThan(0);
        for (const { path, message } of read.problems) expect(path !== '' && message.length > 5).toBe(true);
      }),
      { seed: 7, numRuns: 1000 },
    );
  });
});
