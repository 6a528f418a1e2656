import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { throwsCsv } from '../../../backend/fieldwork/throws-csv.ts';
import { parsePlayer } from '../../../core/player/player-file.ts';
import { quickDesk } from '../api/fuzz-method.ts';
import { openTestBackend } from '../api/open-test-backend.ts';
import { taken } from '../taken.ts';
import { tinyPlayer } from '../tiny-round.ts';

const sound = throwsCsv(taken(parsePlayer(tinyPlayer()))).replace(/^1,/gm, 'x,');
const HEADERS = [
  'disc',
  'distance_m',
  'distance_ft',
  'side_m',
  'left_ft',
  'date',
  'wind_mph',
  'windFrom_deg',
  'bearing_deg',
  'rise_m',
  'session',
  'note',
  'power',
  'hand',
  'shape',
  'surface',
  'what',
  '',
  '"',
];
const CELLS = [
  'mid',
  'Plain midrange',
  '81',
  '81,5',
  '1.234,5',
  '-3',
  '3 L',
  '""',
  '"',
  '=1+1',
  '2026-05-01',
  '13/4/2026',
  '99/99/9999',
  'NaN',
  'Infinity',
  '1e999',
  '-0',
  '',
  ' ',
  'full',
  '80 %',
  '\u0000',
  '\ufeff',
  '🥏',
  'x'.repeat(500),
];
const DELIMITERS = [',', ';', '\t', '|', ' '];
const ENDS = ['\n', '\r\n', '\r', '\n\n', ''];

/** Tables that look like throws, sound ones with a piece cut out or replaced, and any text at all. */
const Malformed = fc.oneof(
  {
    weight: 5,
    arbitrary: fc
      .tuple(
        fc.constantFrom(...DELIMITERS),
        fc.constantFrom(...ENDS),
        fc.array(fc.constantFrom(...HEADERS), { maxLength: 8 }),
        fc.array(fc.array(fc.oneof(fc.constantFrom(...CELLS), fc.string({ maxLength: 6 })), { maxLength: 9 }), {
          maxLength: 12,
        }),
      )
      .map(([delimiter, end, header, rows]) => [header, ...rows].map(cells => cells.join(delimiter)).join(end)),
  },
  {
    weight: 5,
    arbitrary: fc
      .tuple(
        fc.nat(sound.length),
        fc.nat(60),
        fc.oneof(fc.constant(''), fc.constantFrom(...CELLS, ...DELIMITERS, ...ENDS), fc.string()),
      )
      .map(([at, length, other]) => sound.slice(0, at) + other + sound.slice(at + length)),
  },
  { weight: 2, arbitrary: fc.nat(sound.length).map(at => sound.slice(0, at)) },
  { weight: 2, arbitrary: fc.string({ unit: 'binary', maxLength: 300 }).map(text => text.toWellFormed()) },
);

describe('a thousand malformed tables', () => {
  it('never crash, and are imported whole or not at all', async () => {
    const { backend, ask, faults } = openTestBackend({ desk: quickDesk() });
    const { playerId } = await ask('importPlayer', { fileName: 'p.json', text: JSON.stringify(tinyPlayer()) });
    const outcomes = { refused: 0, taken: 0, tables: 0 };
    await fc.assert(
      fc.asyncProperty(Malformed, fc.boolean(), async (text, isAgreed) => {
        const before = (await ask('exportPlayer', { playerId })).text;
        const preview = await backend.call('previewThrowsCsv', { playerId, text });
        expect((await ask('exportPlayer', { playerId })).text).toBe(before);
        const shown = preview.ok ? (preview.value as Awaited<ReturnType<typeof ask<'previewThrowsCsv'>>>) : null;
        const dropBad = isAgreed ? (shown?.bad ?? 0) : 0;
        const answer = await backend.call('importThrowsCsv', { playerId, text, dropBad });
        const after = (await ask('exportPlayer', { playerId })).text;
        outcomes.tables++;
        if (!answer.ok) {
          outcomes.refused++;
          expect(answer.problems.length).toBeGreaterThan(0);
          expect(answer.problems.every(({ path, message }) => path !== '' && message !== '')).toBe(true);
          expect(after).toBe(before);
          // refused only where the preview said so: bad rows not agreed to, or nothing to add
          expect(shown === null || shown.problems.length > 0 || shown.bad !== dropBad || shown.throws === 0).toBe(true);
          return;
        }
        outcomes.taken++;
        const { throws, undo } = answer.value as { throws: number; undo: { changeId: string } };
        const count = (file: string) =>
          (JSON.parse(file) as { sessions: { throws: unknown[] }[] }).sessions.reduce(
            (sum, s) => sum + s.throws.length,
            0,
          );
        // all the preview promised, and every good row of the table is in it or was there before
        expect(throws).toBe(shown!.throws);
        expect(count(after) - count(before)).toBe(throws);
        expect(throws + shown!.known).toBe(shown!.good);
        await ask('undo', { changeId: undo.changeId });
        expect((await ask('exportPlayer', { playerId })).text).toBe(before);
      }),
      { numRuns: 1000, seed: 20260501 },
    );
    expect(faults).toEqual([]);
    // the fuzz must reach both ends, or it proves nothing; counts are of this seed
    expect(outcomes.tables).toBe(1000);
    expect(outcomes.taken).toBeGreaterThan(50);
    expect(outcomes.refused).toBeGreaterThan(300);
  }, 120_000);
});
