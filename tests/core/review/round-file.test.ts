import { describe, expect, it } from 'vitest';
import { isFinished, parseRound, parseRoundText, scoreOf } from '../../../core/review/round-file.ts';

const round = (
  parts: object = {},
  throws: object[] = [{ discId: 'mid', rest: { toBasket_m: 5 } }, { holed: true }],
) => ({
  schema: 'roundwright/round@1',
  date: '2026-05-30',
  holes: [{ ref: '1', throws }],
  ...parts,
});

describe('a round file', () => {
  it('is read as it was written, nothing filled in', () => {
    const written = round({ day: { wind: { speed_mps: 3, from_deg: 90 } }, limits: { classes: ['putter'] } });
    expect(parseRound(written)).toEqual({ ok: true, value: written });
  });

  it('counts throws and penalties', () => {
    const read = parseRound(
      round({}, [
        { penalties: [{ kind: 'lost' }, { kind: 'out-of-bounds', throws: 2 }] },
        { rest: { east_m: 1, north_m: 2 } },
        { holed: true },
      ]),
    );
    // by hand: three throws, one penalty throw and two
    expect(read.ok && scoreOf(read.value.holes[0]!)).toBe(6);
    expect(read.ok && isFinished(read.value.holes[0]!)).toBe(true);
  });

  it('may end in an unfinished hole', () => {
    const read = parseRound(round({}, [{ discId: 'mid' }]));
    expect(read.ok && isFinished(read.value.holes[0]!)).toBe(false);
  });

  // where: the place the test put the fault
  it.each([
    { path: 'schema', bad: round({ schema: 'roundwright/player@1' }) },
    { path: 'date', bad: round({ date: '30.5.2026' }) },
    { path: 'date', bad: round({ date: '2026-02-30' }) },
    { path: 'day.wind.speed_mps', bad: round({ day: { wind: { speed_mps: 90 } } }) },
    { path: 'holes[0].throws[0].rest', bad: round({}, [{ discId: 'mid' }, { holed: true }]) },
    { path: 'holes[0].throws[0].rest', bad: round({}, [{ rest: { far: 3 } }, { holed: true }]) },
    { path: 'holes[0].throws[0].holed', bad: round({}, [{ holed: true }, { holed: true }]) },
    { path: 'holes[0].throws[0].hand', bad: round({}, [{ hand: 'left', holed: true }]) },
    { path: 'holes[0].throws[0].power', bad: round({}, [{ power: 80, holed: true }]) },
    { path: 'holes[0].throws[0].penalties', bad: round({}, [{ holed: true, penalties: [{ kind: 'lost' }] }]) },
    { path: 'holes[0].throws[0].penalties[0].kind', bad: round({}, [{ penalties: [{ kind: 'fine' }] }]) },
    {
      path: 'holes[1].ref',
      bad: round({
        holes: [
          { ref: '1', throws: [{ holed: true }] },
          { ref: '1', throws: [{ holed: true }] },
        ],
      }),
    },
    { path: 'holes', bad: round({ holes: 7 }) },
  ])('a fault at $path is told by its place', ({ path, bad }) => {
    const read = parseRound(bad);
    expect(read.ok ? [] : read.problems.map(problem => problem.path)).toContain(path);
    if (!read.ok) for (const { message } of read.problems) expect(message).not.toMatch(/Invalid|expected/);
  });

  it('broken JSON is told by line and column', () => {
    const read = parseRoundText('{\n "schema": ');
    expect(read.ok ? [] : read.problems.map(problem => problem.path)).toEqual(['line 2, column 12']);
  });
});
