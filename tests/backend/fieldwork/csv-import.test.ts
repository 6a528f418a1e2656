import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CsvOptions, planCsvImport, throwsIn, withSessions } from '../../../backend/fieldwork/plan-csv-import.ts';
import { rowProblems } from '../../../backend/fieldwork/row-problems.ts';
import { throwsCsv } from '../../../backend/fieldwork/throws-csv.ts';
import { type PlayerFile, parsePlayer } from '../../../core/player/player-file.ts';
import { taken } from '../taken.ts';
import { tinyPlayer } from '../tiny-round.ts';

const player = () => taken(parsePlayer(tinyPlayer()));
const plan = (text: string, options?: CsvOptions) => taken(planCsvImport(player(), text, options));
const wrongIn = (text: string, options?: CsvOptions) => rowProblems(plan(text, options));

describe('reading a table of throws', () => {
  it('takes units from the header, sides by word, and parts sessions by their conditions', () => {
    const { sessions, problems, rows } = plan(
      [
        'Date;Disc;Hand;Distance (ft);Side m;Wind [km/h];Wind from;Bearing;Note',
        '30.5.2026;Plain midrange;BH;262,5;3 L;14,4;W;90;first',
        '30.5.2026;mid;BH;270;;14,4;W;90;first',
        '31.5.2026;throw;FH;150;-1,25;;;;',
      ].join('\n'),
    );
    expect(problems).toEqual([]);
    expect(rows.every(row => row.problems.length === 0)).toBe(true);
    // 262.5 ft = 80.01 m, 270 ft = 82.296 m, 150 ft = 45.72 m, 14.4 km/h = 4 m/s: exact factors, NIST SP 811 B.8
    expect(sessions).toEqual([
      {
        date: '2026-05-30',
        wind: { speed_mps: 4, from_deg: 270, height_m: 10 },
        bearing_deg: 90,
        note: 'first',
        throws: [
          { discId: 'mid', hand: 'backhand', shape: 'flat', power: 'full', distance_m: 80.01, side_m: -3 },
          { discId: 'mid', hand: 'backhand', shape: 'flat', power: 'full', distance_m: 82.296 },
        ],
      },
      {
        date: '2026-05-31',
        throws: [{ discId: 'throw', hand: 'forehand', shape: 'flat', power: 'full', distance_m: 45.72, side_m: -1.25 }],
      },
    ]);
  });

  it('turns a tape run straight to the disc into the distance along the line', () => {
    const { sessions } = plan('disc,straight_m,left_m\nmid,50,-30\nmid,60,');
    expect(sessions[0]!.throws.map(({ distance_m, side_m }) => [distance_m, side_m])).toEqual([
      [40, 30], // 3-4-5 triangle
      [60, undefined],
    ]);
    expect(wrongIn('disc,straight_m,side_m\nmid,20,-25')).toEqual([
      { path: 'line 2, straight_m', message: expect.stringContaining('no longer than the side') },
    ]);
  });

  it.each([
    { what: 'no header', text: 'mid,81,2\nmid,83,-1', options: { columns: ['disc', 'distance_m', 'side_m'] } },
    {
      what: 'unknown headers',
      text: 'a,b,c\nmid,81,2\nmid,83,-1',
      options: { columns: ['disc', 'distance_m', 'side_m'] },
    },
    { what: 'one column and one disc', text: 'distance_m\n81\n83', options: { defaults: { discId: 'mid' } } },
    {
      what: 'a unit in each cell',
      text: 'disc,distance,side\nmid,81 m,2\nmid,83m,-1',
      options: { columns: ['disc', 'distance', null] },
    },
  ] as const)('$what', ({ text, options }) => {
    const { sessions, problems } = plan(text, options);
    expect(problems).toEqual([]);
    expect(sessions[0]!.throws.map(({ discId, distance_m }) => [discId, distance_m])).toEqual([
      ['mid', 81],
      ['mid', 83],
    ]);
  });

  it.each([
    { what: 'no distance', text: 'disc,side_m\nmid,2', path: 'columns', message: /no distance/ },
    { what: 'no disc', text: 'distance_m\n81', path: 'columns', message: /no disc/ },
    { what: 'no unit', text: 'disc,distance\nmid,81', path: 'distance', message: /no unit/ },
    {
      what: 'two of one',
      text: 'disc,distance_m,dist_ft\nmid,81,270',
      path: 'dist_ft',
      message: /as "distance_m" does/,
    },
    {
      what: 'two distances',
      text: 'disc,distance_m,straight_m\nmid,81,82',
      path: 'straight_m',
      message: /only one distance/,
    },
    { what: 'no rows', text: 'disc,distance_m\n', path: 'file', message: /holds no throws/ },
  ])('says that the table has $what, and reads no row', ({ text, path, message }) => {
    const { problems, sessions } = plan(text);
    expect(problems).toContainEqual({ path, message: expect.stringMatching(message) });
    expect(sessions).toEqual([]);
  });

  it.each([
    { row: 'nope,81,2', at: 'line 3, disc', message: /no disc of this player.*"Plain midrange"/ },
    { row: 'mid,,2', at: 'line 3, distance_m', message: /how far/ },
    { row: 'mid,far,2', at: 'line 3, distance_m', message: /not a number/ },
    { row: 'mid,300,2', at: 'line 3, distance_m', message: /0 to 250\), got 300/ },
    { row: 'mid,0,2', at: 'line 3, distance_m', message: /more than 0/ },
    { row: 'mid,-5,2', at: 'line 3, distance_m', message: /got -5/ },
    { row: 'mid,81,2,3', at: 'line 3', message: /4 cells/ },
    { row: 'mid,81', at: 'line 3', message: /2 cells/ },
  ])('marks "$row" and keeps the good rows apart', ({ row, at, message }) => {
    const text = `disc,distance_m,side_m\nmid,80,1\n${row}\nmid,82,0\n`;
    expect(wrongIn(text)).toContainEqual({ path: at, message: expect.stringMatching(message) });
    expect(throwsIn(plan(text).sessions)).toBe(2);
  });

  it('what is wrong with a session is said at each of its rows', () => {
    const text = 'disc,distance_m,wind_mps,windFrom_deg\nmid,80,4,90\nmid,81,4,90\nmid,82,0,0';
    expect(wrongIn(text)).toEqual([
      { path: 'line 2', message: expect.stringMatching(/^bearing_deg is missing/) },
      { path: 'line 3', message: expect.stringMatching(/^bearing_deg is missing/) },
    ]);
  });

  it('sessions the player has already are left out, others of the same day are not', () => {
    const csv = throwsCsv(player());
    const again = plan(csv);
    expect([again.sessions, again.known]).toEqual([[], 21]); // tinyPlayer: 9 + 9 + 3 throws
    const more = plan(`${csv}2,2026-05-01,mid,backhand,flat,full,80,1,,,,,,,\r\n`);
    expect([throwsIn(more.sessions), more.known]).toEqual([1, 21]);
  });
});

type Numbers = (min: number, max: number) => fc.Arbitrary<number>;
const anyNumber: Numbers = (min, max) => fc.double({ min, max, noNaN: true });
/** Millimetres and mm/s: finer than anybody measures. */
const toMillimetres: Numbers = (min, max) =>
  fc.integer({ min: min * 1000, max: max * 1000 }).map(value => value / 1000);

const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const sessionsOf = (numbers: Numbers) =>
  fc.array(
    fc.record({
      date: optional(fc.constantFrom('2026-05-01', '2026-12-31', 'spring')),
      wind: optional(
        fc.record({ speed_mps: numbers(0, 40), from_deg: anyNumber(-360, 360), height_m: numbers(1, 60) }),
      ),
      bearing_deg: anyNumber(-360, 360),
      rise_m: optional(numbers(-9, 9)),
      surface: optional(fc.constantFrom('longGrass', 'turf', 'hardpan')),
      note: optional(fc.string({ unit: 'grapheme', minLength: 1 }).filter(text => text.trim() !== '')),
      throws: fc.array(
        fc.record({
          discId: fc.constantFrom('putt', 'throw', 'mid'),
          hand: fc.constantFrom('backhand', 'forehand'),
          shape: fc.constantFrom('flat', 'hyzer', 'anhyzer', 'roller', 'overhead'),
          power: fc.oneof(fc.constantFrom('full', 'part'), anyNumber(0.01, 1)),
          distance_m: numbers(20, 250),
          side_m: optional(numbers(-250, 250)),
        }),
        { minLength: 1, maxLength: 5 },
      ),
    }),
    { minLength: 1, maxLength: 4 },
  );

/** As JSON keeps them, line ends in notes plain. */
const kept = (sessions: PlayerFile['sessions']) =>
  JSON.parse(
    JSON.stringify(sessions, (_, value: unknown) =>
      typeof value === 'string' ? value.replace(/\r\n?/g, '\n') : value,
    ),
  );

describe('export and import', () => {
  it.each([
    { length: 'm', speed: 'mps', numbers: anyNumber, what: 'any number' },
    { length: 'ft', speed: 'mph', numbers: toMillimetres, what: 'millimetres' },
    { length: 'ft', speed: 'kn', numbers: toMillimetres, what: 'millimetres' },
    { length: 'm', speed: 'kmh', numbers: toMillimetres, what: 'millimetres' },
  ] as const)('give the same sessions back through $length and $speed, to $what', ({ length, speed, numbers }) => {
    fc.assert(
      fc.property(sessionsOf(numbers), sessions => {
        const file = taken(parsePlayer({ ...tinyPlayer(), sessions: [...tinyPlayer().sessions, ...sessions] }));
        const text = throwsCsv({ ...file, sessions: file.sessions.slice(1) }, { length, speed });
        const before = { ...file, sessions: file.sessions.slice(0, 1) };
        const read = taken(planCsvImport(before, text));
        expect(rowProblems(read)).toEqual([]);
        expect(kept(taken(withSessions(before, read.sessions)).sessions)).toEqual(kept(file.sessions));
      }),
      { numRuns: 150, seed: 7 },
    );
  });
});
