import { describe, expect, it } from 'vitest';
import { parsePlayer, parsePlayerText } from '../../../core/player/player-file.ts';

const DISC = { id: 'lantern', name: 'Lantern', speed: 5, glide: 5, turn: -1, fade: 1 };
const THROW = { discId: 'lantern', distance_m: 72, side_m: -2 };
const fileWith = (change: Record<string, unknown>) => ({
  name: 'Invented Player',
  handedness: 'right',
  discs: [DISC],
  sessions: [{ throws: [THROW] }],
  ...change,
});
const discWith = (change: Record<string, unknown>) => fileWith({ discs: [{ ...DISC, ...change }] });
const throwWith = (change: Record<string, unknown>) => fileWith({ sessions: [{ throws: [{ ...THROW, ...change }] }] });
const sessionWith = (change: Record<string, unknown>) => fileWith({ sessions: [{ throws: [THROW], ...change }] });
const problemsOf = (input: unknown) => {
  const parsed = parsePlayer(input);
  return parsed.ok ? [] : parsed.problems;
};

describe('player file', () => {
  it('fills in what may be left out, without touching the input', () => {
    const input = Object.freeze(
      fileWith({ surprise: 1, sessions: [{ throws: [Object.freeze({ discId: 'lantern', distance_m: 72 })] }] }),
    );
    const parsed = parsePlayer(input);
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
    const { discs, sessions } = parsed.value;
    expect(discs[0]).toMatchObject({ class: 'midrange', role: 'throwing' });
    expect(sessions[0]!.throws[0]).toEqual({
      discId: 'lantern',
      hand: 'backhand',
      shape: 'flat',
      power: 'full',
      distance_m: 72,
    });
    expect(sessions[0]!.wind).toBeUndefined();
  });

  // common practice, no source: where the classes part
  it.each([
    [3, 'putter'],
    [3.5, 'putter'],
    [4, 'midrange'],
    [6, 'midrange'],
    [7, 'fairway'],
    [8, 'fairway'],
    [9, 'control'],
    [11, 'control'],
    [12, 'distance'],
    [14.5, 'distance'],
  ])('speed %s is a %s', (speed, wanted) => {
    const parsed = parsePlayer(discWith({ speed }));
    expect(parsed.ok && parsed.value.discs[0]!.class).toBe(wanted);
  });

  it('takes words in any letter case and null for left out', () => {
    const parsed = parsePlayer({
      ...throwWith({ hand: 'Forehand', shape: ' FLAT', side_m: null, power: 'Full' }),
      handedness: 'LEFT',
      putting: null,
    });
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
    expect(parsed.value.sessions[0]!.throws[0]).toMatchObject({ hand: 'forehand', shape: 'flat', power: 'full' });
    expect(parsed.value.sessions[0]!.throws[0]!.side_m).toBeUndefined();
  });

  it.each([
    { name: 'not an object', input: 7, path: 'file', says: 'a player {' },
    { name: 'no name', input: fileWith({ name: undefined }), path: 'name', says: 'is missing' },
    {
      name: 'bad hand of the player',
      input: fileWith({ handedness: 'both' }),
      path: 'handedness',
      says: '"right", "left"',
    },
    { name: 'no discs', input: fileWith({ discs: undefined }), path: 'discs', says: 'is missing' },
    {
      name: 'bad class',
      input: discWith({ class: 'driver' }),
      path: 'discs[0].class',
      says: '"putter", "midrange", "fairway", "control", "distance"',
    },
    { name: 'speed as text', input: discWith({ speed: '5' }), path: 'discs[0].speed', says: 'without quotes' },
    { name: 'speed too high', input: discWith({ speed: 50 }), path: 'discs[0].speed', says: '0 to 16' },
    { name: 'mass in kilograms', input: discWith({ mass_g: 0.175 }), path: 'discs[0].mass_g', says: 'kilograms' },
    { name: 'absurd mass', input: discWith({ mass_g: 900 }), path: 'discs[0].mass_g', says: '60 to 400' },
    {
      name: 'diameter in centimetres',
      input: discWith({ diameter_mm: 21.2 }),
      path: 'discs[0].diameter_mm',
      says: 'write 212',
    },
    { name: 'wear over 1', input: discWith({ wear: 2 }), path: 'discs[0].wear', says: '0 to 1' },
    {
      name: 'unknown disc',
      input: throwWith({ discId: 'lamp' }),
      path: 'sessions[0].throws[0].discId',
      says: '"lantern"',
    },
    {
      name: 'negative distance',
      input: throwWith({ distance_m: -3 }),
      path: 'sessions[0].throws[0].distance_m',
      says: 'got -3',
    },
    {
      name: 'nowhere',
      input: throwWith({ distance_m: 0 }),
      path: 'sessions[0].throws[0].distance_m',
      says: 'more than 0',
    },
    {
      name: 'distance in feet',
      input: throwWith({ distance_m: 300 }),
      path: 'sessions[0].throws[0].distance_m',
      says: '91.4',
    },
    {
      name: 'not a number',
      input: throwWith({ distance_m: Number.NaN }),
      path: 'sessions[0].throws[0].distance_m',
      says: 'metres',
    },
    { name: 'bad shape', input: throwWith({ shape: 'spike' }), path: 'sessions[0].throws[0].shape', says: '"roller"' },
    {
      name: 'bad power',
      input: throwWith({ power: 1.5 }),
      path: 'sessions[0].throws[0].power',
      says: '"full", "part"',
    },
    {
      name: 'wind without direction',
      input: sessionWith({ wind: { speed_mps: 3 } }),
      path: 'sessions[0].wind.from_deg',
      says: 'is missing',
    },
    {
      name: 'wind without bearing',
      input: sessionWith({ wind: { speed_mps: 3, from_deg: 90 } }),
      path: 'sessions[0].bearing_deg',
      says: 'is missing',
    },
    { name: 'bad surface', input: sessionWith({ surface: 'sand' }), path: 'sessions[0].surface', says: '"turf"' },
    { name: 'cliff', input: sessionWith({ rise_m: 60 }), path: 'sessions[0].throws[0].distance_m', says: 'steeper' },
    { name: 'no sessions', input: fileWith({ sessions: [] }), path: 'sessions', says: 'measure one disc' },
    { name: 'only rollers', input: throwWith({ shape: 'roller' }), path: 'sessions', says: 'measure one disc' },
    {
      name: 'makes over attempts',
      input: fileWith({ putting: [{ distance_m: 5, attempts: 3, makes: 4 }] }),
      path: 'putting[0].makes',
      says: 'more than the 3',
    },
    {
      name: 'half a putt',
      input: fileWith({ putting: [{ distance_m: 5, attempts: 3, makes: 1.5 }] }),
      path: 'putting[0].makes',
      says: 'whole number',
    },
  ])('$name: $path', ({ input, path, says }) => {
    const found = problemsOf(input).find(p => p.path === path);
    expect(found, JSON.stringify(problemsOf(input))).toBeDefined();
    expect(found!.message).toContain(says);
  });

  it('reports twins and every problem, not only the first', () => {
    const problems = problemsOf(fileWith({ discs: [DISC, DISC, { ...DISC, id: 'b', speed: 99, fade: 'x' }] }));
    expect(problems.map(p => p.path)).toEqual(expect.arrayContaining(['discs[2].speed', 'discs[2].fade']));
    expect(problemsOf(fileWith({ discs: [DISC, DISC] }))[0]).toMatchObject({ path: 'discs[1].id' });
  });
});

describe('text of a player file', () => {
  it('reads JSON with a byte-order mark', () => {
    expect(parsePlayerText(`\uFEFF${JSON.stringify(fileWith({}))}`).ok).toBe(true);
  });

  it.each([
    { text: '', path: 'line 1, column 1', says: 'a value' },
    { text: '{"name": "a",\n "handedness" "right"}', path: 'line 2, column 15', says: '":"' },
    { text: '{"a": 1,\n}', path: 'line 2, column 1', says: 'property name' },
    { text: '[1, 2\n', path: 'line 2, column 1', says: 'the file ends' },
    { text: '{"a": [1, 2}', path: 'line 1, column 12', says: '"]"' },
    { text: '{"a": tru}', path: 'line 1, column 7', says: 'a value' },
    { text: '{"a": "open}', path: 'line 1, column 7', says: 'closing quote' },
    { text: '[[1], {"a": [2]} 3]', path: 'line 1, column 18', says: '"," or "]"' },
    { text: '{"a": [1], "b": {}', path: 'line 1, column 19', says: '"}"' },
    { text: '{} {}', path: 'line 1, column 4', says: 'end of the file' },
    { text: "{'a': 1}", path: 'line 1, column 2', says: 'double quotes' },
  ])('$text breaks at $path', ({ text, path, says }) => {
    const parsed = parsePlayerText(text);
    expect(parsed.ok).toBe(false);
    if (parsed.ok) return;
    expect(parsed.problems[0]!.path).toBe(path);
    expect(parsed.problems[0]!.message).toContain(says);
  });

  it('survives nesting deeper than the call stack', () => {
    const parsed = parsePlayerText('['.repeat(200_000));
    expect(parsed.ok).toBe(false);
  });
});
