import { z } from 'zod';
import { problemPath } from '../course/problem-path.ts';
import type { Problem, Result } from '../units/result.ts';
import { classOfSpeed, DISC_CLASSES } from './disc-class.ts';
import { parseJsonText } from './json-text.ts';

const LONGEST_THROW_M = 250;
const STEEPEST_GRADE = 0.5;

function shown(input: unknown): string {
  const text = JSON.stringify(input) ?? String(input);
  return text.length > 40 ? `${text.slice(0, 37)}...` : text;
}

/** A finite number between two bounds, with messages that name them. `hint` adds how to mend a likely slip. */
function between(low: number, high: number, what: string, hint?: (value: number) => string | null) {
  return z
    .number({
      error: ({ input }) =>
        input === undefined
          ? `is missing: write ${what} (${low} to ${high})`
          : typeof input === 'string'
            ? `must be a number, not text: write it without quotes, got ${shown(input)}`
            : `must be ${what} (${low} to ${high}), got ${shown(input)}`,
    })
    .superRefine((value, context) => {
      if (value >= low && value <= high) return;
      const advice = hint?.(value) ?? null;
      context.addIssue({
        code: 'custom',
        message: `must be ${what} (${low} to ${high}), got ${value}${advice === null ? '' : `; ${advice}`}`,
      });
    });
}

/** One of a few words, letter case and outer spaces ignored. */
function word<const W extends readonly string[]>(accepted: W) {
  return z.preprocess(
    input => (typeof input === 'string' ? input.trim().toLowerCase() : input),
    z.enum(accepted as unknown as readonly [W[number], ...W[number][]], {
      error: ({ input }) =>
        `${input === undefined ? 'is missing' : `${shown(input)} is not known`}: write ${accepted.map(w => `"${w}"`).join(', ')}`,
    }),
  );
}

const text = (what: string) =>
  z
    .string({
      error: ({ input }) =>
        input === undefined ? `is missing: write ${what}` : `must be text in quotes, got ${shown(input)}`,
    })
    .refine(value => value.trim() !== '', { error: `is empty: write ${what}` });

const list = <T extends z.ZodType>(item: T, what: string) =>
  z.array(item, {
    error: ({ input }) => (input === undefined ? `is missing: write ${what}` : `must be a list [...] of ${what}`),
  });

const record = <T extends z.ZodRawShape>(shape: T, what: string) =>
  z.object(shape, {
    error: ({ input }) => (input === undefined ? `is missing: write ${what}` : `must be ${what}, got ${shown(input)}`),
  });

/** An optional property may also be written as null. */
const maybe = <T extends z.ZodType>(schema: T) =>
  z.preprocess(input => input ?? undefined, schema.optional()) as z.ZodPipe<z.ZodTransform, z.ZodOptional<T>>;

const DiscSchema = record(
  {
    id: text('a short name of its own, used by the throws'),
    name: text('the name of the disc'),
    class: maybe(word(DISC_CLASSES)),
    speed: between(0, 16, 'the speed number on the disc'),
    glide: between(0, 8, 'the glide number on the disc'),
    turn: between(-7, 3, 'the turn number on the disc'),
    fade: between(-1, 7, 'the fade number on the disc'),
    mass_g: maybe(between(60, 400, 'the mass in grams', v => (v > 0 && v < 1 ? 'this looks like kilograms' : null))),
    diameter_mm: maybe(
      between(120, 500, 'the diameter in millimetres', v =>
        v >= 15 && v <= 45 ? `this looks like centimetres: write ${v * 10}` : null,
      ),
    ),
    rimWidth_mm: maybe(
      between(3, 40, 'the rim width in millimetres', v =>
        v > 0 && v < 3 ? `this looks like centimetres: write ${v * 10}` : null,
      ),
    ),
    wear: maybe(between(0, 1, 'the wear, 0 new to 1 beaten in')),
    role: maybe(word(['putting', 'throwing'])),
  },
  'a disc {id, name, speed, glide, turn, fade}',
).transform(disc => ({
  ...disc,
  class: disc.class ?? classOfSpeed(disc.speed),
  role: disc.role ?? ('throwing' as const),
}));

const powerError = ({ input }: { input?: unknown }) =>
  `must be "full", "part" or a share of full power over 0 and up to 1, got ${shown(input)}`;
const PowerSchema = z.preprocess(
  input => (typeof input === 'string' ? input.trim().toLowerCase() : input),
  z.union([z.enum(['full', 'part']), z.number().gt(0, { error: powerError }).lte(1, { error: powerError })], {
    error: powerError,
  }),
);

const ThrowSchema = record(
  {
    discId: text('the id of one of the discs'),
    hand: maybe(word(['backhand', 'forehand'])),
    shape: maybe(word(['flat', 'hyzer', 'anhyzer', 'roller', 'overhead'])),
    power: maybe(PowerSchema),
    distance_m: between(0, LONGEST_THROW_M, 'the distance at rest in metres', v =>
      v > LONGEST_THROW_M ? `if this is in feet, write ${(v * 0.3048).toFixed(1)}` : null,
    ).refine(v => v !== 0, { error: 'must be more than 0: leave a throw that went nowhere out' }),
    side_m: maybe(between(-LONGEST_THROW_M, LONGEST_THROW_M, 'the sideways finish in metres, right positive')),
  },
  'a throw {discId, distance_m}',
).transform(t => ({
  ...t,
  hand: t.hand ?? ('backhand' as const),
  shape: t.shape ?? ('flat' as const),
  power: t.power ?? ('full' as const),
}));

const WindSchema = record(
  {
    speed_mps: between(0, 40, 'the wind speed in m/s'),
    from_deg: between(-360, 360, 'the direction the wind blows from in degrees, clockwise from true north'),
    height_m: maybe(between(0.5, 60, 'the height of the wind measurement in metres')),
  },
  'a wind {speed_mps, from_deg}',
).transform(wind => ({ ...wind, height_m: wind.height_m ?? 10 }));

const SessionSchema = record(
  {
    date: maybe(text('the date, like 2026-05-30')),
    wind: maybe(WindSchema),
    bearing_deg: maybe(between(-360, 360, 'the direction of the throws in degrees, clockwise from true north')),
    rise_m: maybe(between(-100, 100, 'the rise of the ground over the throw in metres')),
    surface: maybe(
      z.preprocess(
        input => (typeof input === 'string' && input.trim().toLowerCase() === 'longgrass' ? 'longGrass' : input),
        z.enum(['longGrass', 'turf', 'hardpan'], {
          error: ({ input }) => `${shown(input)} is not known: write "longGrass", "turf", "hardpan"`,
        }),
      ),
    ),
    note: maybe(z.string({ error: ({ input }) => `must be text in quotes, got ${shown(input)}` })),
    throws: list(ThrowSchema, 'throws'),
  },
  'a session {throws}',
).superRefine((session, context) => {
  if (session.wind !== undefined && session.wind.speed_mps > 0 && session.bearing_deg === undefined)
    context.addIssue({
      code: 'custom',
      path: ['bearing_deg'],
      message:
        'is missing: a session with wind needs the direction of the throws, in degrees clockwise from true north',
    });
  session.throws.forEach((t, i) => {
    if (session.rise_m !== undefined && Math.abs(session.rise_m) > STEEPEST_GRADE * t.distance_m)
      context.addIssue({
        code: 'custom',
        path: ['throws', i, 'distance_m'],
        message: `is ${t.distance_m} m over a rise of ${session.rise_m} m, steeper than 1 in 2: check both`,
      });
  });
});

const PuttSchema = record(
  {
    distance_m: between(0, 60, 'the distance of the putts in metres'),
    attempts: between(1, 100_000, 'how many putts were tried').refine(Number.isInteger, {
      error: 'must be a whole number',
    }),
    makes: between(0, 100_000, 'how many went in').refine(Number.isInteger, { error: 'must be a whole number' }),
    date: maybe(text('the date, like 2026-05-30')),
  },
  'a row {distance_m, attempts, makes}',
).superRefine((row, context) => {
  if (row.makes > row.attempts)
    context.addIssue({
      code: 'custom',
      path: ['makes'],
      message: `is ${row.makes}, more than the ${row.attempts} attempts`,
    });
});

/**
 * A player's discs and fieldwork. Left out means: hand backhand, shape flat, power full, wind calm at 10 m, class by the speed
 * number, role throwing; `side_m` left out is unknown, not 0. Properties it doesn't know are ignored.
 */
export const PlayerFileSchema = record(
  {
    schema: maybe(z.unknown()),
    name: text('the name of the player'),
    handedness: word(['right', 'left']),
    discs: list(DiscSchema, 'discs'),
    sessions: list(SessionSchema, 'sessions'),
    putting: maybe(list(PuttSchema, 'putting rows')),
  },
  'a player {name, handedness, discs, sessions}',
).superRefine((file, context) => {
  const problem = (path: PropertyKey[], message: string) => context.addIssue({ code: 'custom', path, message });
  const firstAt = new Map<string, number>();
  file.discs.forEach((disc, i) => {
    const earlier = firstAt.get(disc.id);
    if (earlier === undefined) firstAt.set(disc.id, i);
    else problem(['discs', i, 'id'], `"${disc.id}" is already the id of discs[${earlier}]: give each disc its own`);
  });
  let thrown = 0;
  let usable = 0;
  file.sessions.forEach((session, s) => {
    session.throws.forEach((t, i) => {
      thrown++;
      if (isUsableForFit(t)) usable++;
      if (!firstAt.has(t.discId))
        problem(
          ['sessions', s, 'throws', i, 'discId'],
          `"${t.discId}" is not the id of a disc: ${firstAt.size === 0 ? 'add the disc' : `write one of ${[...firstAt.keys()].map(id => `"${id}"`).join(', ')}`}`,
        );
    });
  });
  if (thrown === 0)
    problem(
      ['sessions'],
      'hold no throws: measure one disc (ten throws of a midrange are a good start) and write them down',
    );
  else if (usable === 0)
    problem(
      ['sessions'],
      'hold no throw that shows the arm: measure one disc thrown flat, hyzer or anhyzer at full power',
    );
});

export type PlayerFile = z.output<typeof PlayerFileSchema>;
export type FieldDisc = PlayerFile['discs'][number];
export type FieldSession = PlayerFile['sessions'][number];
export type FieldThrow = FieldSession['throws'][number];

/** Rollers, overhead throws and throws of unknown power say nothing about the speed of the arm. */
export function isUsableForFit(t: Pick<FieldThrow, 'shape' | 'power'>): boolean {
  return t.shape !== 'roller' && t.shape !== 'overhead' && t.power !== 'part';
}

/** Checks a player file already read as JSON. */
export function parsePlayer(input: unknown): Result<PlayerFile> {
  const parsed = PlayerFileSchema.safeParse(input);
  if (parsed.success) return { ok: true, value: parsed.data };
  const problems: Problem[] = parsed.error.issues.map(issue => ({
    path: problemPath(issue.path) || 'file',
    message: issue.message,
  }));
  return { ok: false, problems };
}

/** Checks the text of a player file; broken JSON is reported by line and column. */
export function parsePlayerText(text: string): Result<PlayerFile> {
  const json = parseJsonText(text);
  return json.ok ? parsePlayer(json.value) : json;
}
