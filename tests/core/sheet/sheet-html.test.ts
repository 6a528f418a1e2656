import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheetHtml } from '../../../core/sheet/sheet-html.ts';
import type { SheetInput } from '../../../core/sheet/sheet-input.ts';
import { sampleHole, sampleSheet, sampleShot, sampleSummary } from './sheet-sample.ts';
import { faultsOfMarkup, textOf } from './well-formed.ts';

const FORMATS = ['pocket', 'folded', 'fourAPage'] as const;
const pages = (html: string): string[] => html.split('<section class="page">').slice(1);
const holes = (count: number) => Array.from({ length: count }, (_, i) => sampleHole({}, { ref: `${i + 1}` }));

describe.each(FORMATS)('the sheet, %s', format => {
  const make = (changes: Partial<SheetInput> = {}) => sheetHtml(sampleSheet({ format, ...changes }));

  it('is well-formed and needs nothing from elsewhere', () => {
    const html = make();
    expect(faultsOfMarkup(html)).toEqual([]);
    expect(html).not.toMatch(/<script|<img|<link|<iframe|javascript:|\bon\w+="|@import|src=/i);
    expect(html.replace('http://www.w3.org/1999/xhtml', '')).not.toMatch(/https?:|url\(/);
    expect(html).not.toMatch(/NaN|undefined|Infinity|\[object/);
  });

  it('says for a hole what, how, how sure, what to stay away from, what next, what else', () => {
    const text = textOf(make());
    for (const words of [
      'Throwing putter',
      'Low putter line, flat',
      'Throw backhand, flat, 86 % power',
      'Height low, a touch up (4°), top 2.4 m',
      'Aim 5° = 7 m RIGHT of the basket',
      'How sure Clean flight 80 %',
      'Stay away Mando at 40 m: pass on its LEFT.',
      'Then Clean (80 %), 4 m to go: putt.',
      'Or Plain midrange',
      'costs 0.10 throws',
      'PEOPLE: path at 60 m. Wait until clear.',
    ])
      expect(text).toContain(words);
  });

  it('sets what to throw in the largest type of the card', () => {
    const card = make().split('<article class="card">')[1]!.split('</article>')[0]!;
    const sizes = [...card.matchAll(/class="([\w ]+)" style="font-size:([\d.]+)pt"/g)].map(([, kind, size]) => ({
      kind: kind!,
      size: Number(size),
    }));
    const disc = sizes.find(({ kind }) => kind === 'disc')!.size;
    for (const { kind, size } of sizes.filter(item => item.kind !== 'disc' && item.kind !== 'ref'))
      expect(size, kind).toBeLessThan(disc);
  });

  it('has a card for every hole, in order, and cautions on every page that has one', () => {
    const html = make({ holes: holes(9) });
    const refs = [...html.matchAll(/Hole <\/span><bdi>([^<]*)<\/bdi>/g)].map(([, ref]) => ref);
    // folded from one side of a page: panels 7 6 5 4 over 8 1 2 3, three pages before the holes
    const order = format === 'folded' ? ['4', '3', '2', '1', '5', '9', '6', '7', '8'] : '123456789'.split('');
    expect(refs).toEqual(order);
    for (const page of pages(html).filter(text => text.includes('class="card"'))) {
      const text = textOf(page);
      expect(text).toMatch(/[Tt]hunder/);
      expect(text).toMatch(/Pain/);
      expect(text).toMatch(/[Nn]obody in reach|anyone could be hit/);
      expect(text).toMatch(/[Ll]ocal rules/);
      expect(text).toMatch(/staff/);
    }
  });

  it('has every caution in full somewhere: people, lightning, blind holes, overuse, whom to defer to', () => {
    const text = textOf(make());
    for (const words of [
      'Thunder heard at all',
      'anyone could be hit',
      'send a spotter to a safe side',
      'A licensed doctor or physiotherapist decides',
      'local rules, posted signs and the course’s staff come first',
    ])
      expect(text).toContain(words);
  });

  it('draws in black, white and greys only', () => {
    for (const [colour] of make().matchAll(/#[0-9a-f]{3,8}\b/gi))
      expect(['#000', '#fff', '#888', '#999', '#ddd']).toContain(colour);
    expect(make()).not.toMatch(/rgb|hsl|\b(?:red|blue|green|orange)\b/);
  });

  it('tells penalty ground, people and the ground of a throw apart by hatching and words', () => {
    const html = make();
    for (const kind of ['hatch out', 'hatch hazard', 'hatch wood', 'people', 'mando', 'ceiling', 'half', 'most', 'aim'])
      expect(html).toContain(`class="${kind}"`);
    for (const word of ['>water<', '>hazard<', '>path<', '>aim<', '>N<']) expect(html).toContain(word);
  });

  it('writes feet and the speed asked for', () => {
    const text = textOf(make({ units: { length: 'ft', speed: 'kn' } }));
    expect(text).toContain('Aim 5° = 23 ft RIGHT'); // [C] 80 m × tan 5° = 7.0 m = 22.96 ft
    expect(text).toContain('wind 8 kn from 250° (WSW)'); // [C] 4 / (1852/3600) = 7.78 kn
    expect(text).not.toMatch(/\d m\b/);
  });

  it('shows the player’s own choice and note, and the plan’s choice beside it', () => {
    const pinned = sampleShot({ disc: 'Own <i>disc</i>', expectedThrows: 2.65 });
    const text = textOf(make({ holes: [sampleHole({ pinned, note: 'watch the <swing>' })] }));
    expect(text).toContain('Own &lt;i&gt;disc&lt;/i&gt;');
    expect(text).toContain('(your own choice)');
    expect(text).toContain('the plan’s choice; yours costs 0.25');
    expect(text).toContain('Your note watch the &lt;swing&gt;');
  });

  it('says what another wind would change, what to carry and what the plan is for', () => {
    const choice = { disc: 'Bag end', discId: 'b', class: 'distance', hand: 'forehand', shape: 'hyzer' } as const;
    const nearestFlip = { windFrom_deg: 270, wind_mps: 8, change_mps: 4.1, choice };
    const bag = {
      carried: [{ disc: 'Bag end', discId: 'b', worth: 0.2 }],
      bestLeftHome: null,
      expectedThrows: 57,
      expectedWithAll: 56,
    };
    const round = { ...sampleSummary().round, target: { throws: 3, chance: 0.41, chanceEven: 0.4 } };
    const plan = sampleSummary({ bag, attitude: 'push', round });
    const text = textOf(make({ plan, holes: [sampleHole({}, { nearestFlip, next: [], reasons: [] })] }));
    expect(text).toContain('Other wind In 8 m/s from W (270°): Bag end, forehand hyzer.');
    expect(text).toMatch(/Carry:? Bag end\./);
    expect(text).toContain('pushing for 3 (chance 41 %)');
  });

  it('lets no name become markup', () => {
    const hostile = `"><script>alert(1)</script><!-- ]]>' onload='x' \u202e{{x}} </style></section>`;
    const hole = sampleHole(
      { note: hostile },
      { ref: hostile, name: hostile, choice: sampleShot({ disc: hostile, title: hostile }), cautions: [hostile] },
    );
    const html = make({
      plan: sampleSummary({ course: hostile, player: hostile, cautions: [hostile], notes: [hostile] }),
      holes: [{ ...hole, map: { ...hole.map, name: hostile } }],
    });
    expect(faultsOfMarkup(html)).toEqual([]);
    expect(html).not.toMatch(/<script|onload='|<!-- /);
    expect(html.match(/<\/style>/g)).toHaveLength(1);
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), name => {
        const odd = sampleHole({}, { ref: name, choice: sampleShot({ disc: name }) });
        const markup = make({ plan: sampleSummary({ course: name, player: name }), holes: [odd] });
        expect(faultsOfMarkup(markup)).toEqual([]);
      }),
      { seed: 7, numRuns: 25 },
    );
  });

  it('is the same for the same input, and leaves the input alone', () => {
    const input = sampleSheet({ format });
    const before = JSON.stringify(input);
    expect(sheetHtml(input)).toBe(sheetHtml(input));
    expect(JSON.stringify(input)).toBe(before);
  });

  it('refuses a sheet without holes', () => {
    expect(() => make({ holes: [] })).toThrow(RangeError);
  });
});

describe('the size of the page', () => {
  it.each([
    { format: 'pocket', paper: 'a4', want: 'size: 74mm 105mm', source: 'A7, ISO 216' },
    { format: 'folded', paper: 'a4', want: 'size: 297mm 210mm', source: 'A4 lying, ISO 216' },
    { format: 'fourAPage', paper: 'a4', want: 'size: 210mm 297mm', source: 'A4, ISO 216' },
    { format: 'fourAPage', paper: 'letter', want: 'size: 215.9mm 279.4mm', source: '8.5 × 11 in' },
  ] as const)('$format on $paper: $want ($source)', ({ format, paper, want }) => {
    expect(sheetHtml(sampleSheet({ format, paper }))).toContain(want);
  });

  it('puts four cards on a page, one on a pocket page', () => {
    const cardsOn = (html: string) => pages(html).map(page => page.split('class="card"').length - 1);
    expect(cardsOn(sheetHtml(sampleSheet({ format: 'fourAPage', holes: holes(9) })))).toEqual([4, 4, 1]);
    expect(cardsOn(sheetHtml(sampleSheet({ format: 'pocket', holes: holes(3) })))).toEqual([0, 0, 0, 1, 1, 1]);
    expect(cardsOn(sheetHtml(sampleSheet({ format: 'folded', holes: holes(6) })))).toEqual([5, 1]);
  });
});
