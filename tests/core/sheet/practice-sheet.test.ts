import { describe, expect, it } from 'vitest';
import { type PracticeSheetInput, practiceSheetHtml } from '../../../core/sheet/practice-sheet.ts';
import type { ShotDrawing } from '../../../core/strategy/hole-drawing.ts';
import { sampleHole, samplePlan, sampleShot, sampleSummary } from './sheet-sample.ts';
import { faultsOfMarkup, textOf } from './well-formed.ts';

const drawing: ShotDrawing = {
  path: [
    [0, 0, 1],
    [74, -6, 0],
  ],
  rest: [74, -6],
  spread: [],
  heights: [],
  ends: [],
};
const { map } = sampleHole();
const { next } = samplePlan();
const hole = (ref: string): PracticeSheetInput['holes'][number] => ({
  ref,
  tee: 'red tee',
  length_m: 80,
  playLength_m: 81,
  bearing_deg: 90,
  par: 3,
  shot: sampleShot(),
  next,
  expectedThrows: 2.4,
  cautions: ['People may cross at 60 m (path (features[9])): do not throw until it is clear.'],
  map,
  drawing,
});
const sheet = (changes: Partial<PracticeSheetInput> = {}) =>
  practiceSheetHtml({
    course: 'Frog Common',
    player: 'Somebody',
    limitWords: 'putters only',
    air: sampleSummary().air,
    holes: [hole('1'), hole('2')],
    par: 6,
    expectedThrows: 5.1,
    target: { throws: 5, chance: 0.36, overPar: -1 },
    drills: [{ title: 'Putts from 7 m', text: '30 putts from 7 m.', why: 'Worth 0.3 throws.' }],
    cautions: ['Pain: stop.', 'Never throw while anyone could be hit.'],
    units: { length: 'm', speed: 'mps' },
    ...changes,
  });
const pagesOf = (html: string) => html.split('<section class="page practice">').slice(1);

describe('the practice sheet', () => {
  it('is well-formed and needs nothing from elsewhere', () => {
    const html = sheet();
    expect(faultsOfMarkup(html)).toEqual([]);
    expect(html).not.toMatch(/<script|<img|<link|<iframe|javascript:|\bon\w+="|@import|src=/i);
    expect(html.replace('http://www.w3.org/1999/xhtml', '')).not.toMatch(/https?:|url\(/);
    expect(html).not.toMatch(/NaN|undefined|Infinity|\[object/);
  });

  it('says target, hole, tee, disc, line, aim, what next, drills and cautions', () => {
    const text = textOf(sheet());
    for (const words of [
      'Practice at Frog Common',
      'Putters only.',
      'Target 5 1 under par 6, 2 holes. Reached in 36 % of simulated rounds; 5.1 throws expected.',
      '1 red tee 81 m 3 Throwing putter low flat, 86 % power',
      '5° = 7 m RIGHT of the basket; goes 74 m; within 20 m: 90 %',
      '4 m to go: putt',
      'Putts from 7 m',
      'Never throw while anyone could be hit.',
      'Hole 2: People may cross at 60 m (path): do not throw until it is clear.',
    ])
      expect(text).toContain(words);
  });

  it('has a box for every score, one for the round on top, one for the sum, two a drill', () => {
    expect(sheet().match(/class="box"/g)).toHaveLength(2 + 1 + 1 + 2);
  });

  it('speaks of cautions on every page, and keeps a long round to rows of eighteen', () => {
    const html = sheet({ holes: Array.from({ length: 20 }, (_, i) => hole(`${i + 1}`)) });
    const pages = pagesOf(html);
    // two pages of rows, one of drills and cautions, three of nine views
    expect(pages).toHaveLength(6);
    for (const page of pages) expect(textOf(page)).toMatch(/Careful/);
    expect(pages[0]!.match(/<tr>/g)).toHaveLength(1 + 18);
    // a short round has drills and cautions under the table
    expect(pagesOf(sheet())).toHaveLength(2);
  });

  it('writes feet where feet are asked for, in drills and cautions too', () => {
    const text = textOf(sheet({ units: { length: 'ft', speed: 'mph' } }));
    // 7 m = 23 ft, 81 m = 266 ft: NIST SP 811 B.8, rounded
    expect(text).toContain('Putts from 23 ft');
    expect(text).toContain('266 ft');
    expect(text).not.toMatch(/\d m\b(?!\/)/);
  });

  it('escapes what comes from files', () => {
    const bad = '<b onclick="x">&';
    const html = sheet({ course: bad, player: bad, limitWords: bad, holes: [{ ...hole(bad), tee: bad }] });
    expect(html).not.toContain('<b onclick');
    expect(faultsOfMarkup(html)).toEqual([]);
  });

  it('needs holes', () => {
    expect(() => sheet({ holes: [] })).toThrow(RangeError);
  });
});
