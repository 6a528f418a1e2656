import { createFlightBatch } from '../flight/flight-batch.ts';
import { normalSamples, SAMPLE_DIMENSIONS } from '../flight/normal-samples.ts';
import type { FittedThrow } from '../player/fitted-player.ts';
import { sessionLesson } from '../player/session-lesson.ts';
import { shiftedThrow, type ThrowShift } from '../player/shifted-throw.ts';
import { isTie, pairedDifference } from './choose-shot.ts';
import { createExactThrower, PLAN_STEP_S } from './exact-thrower.ts';
import { createMarcher } from './march.ts';
import { type AimedShot, type Decision, decisionsOf, ownFinalists, rightedShot } from './measuring-decisions.ts';
import { mixSeed } from './mix-seed.ts';
import type { PlannedHole } from './plan-hole.ts';
import { type ShotOutcome, shotOutcome } from './shot-outcome.ts';
import { smoothOverResults } from './smooth-over-results.ts';

/** One session the player might throw: so many throws of one disc from one hand. */
export type MeasuringQuestion = Readonly<{
  throws: number;
  /** Imagined results of the session. */
  draws: number;
  seed: number;
}>;

/** What one session of one disc from one hand would be worth on a hole. */
type HoleWorth = Readonly<{
  throwIndex: number;
  /** Throws saved under each imagined result, by choosing with it instead of without; their mean is the worth. */
  gains: readonly number[];
  /** Chance that a throw of the hole is chosen, aimed or thrown at another power for it. */
  changes: number;
}>;

export type HoleMeasuring = Readonly<{ ref: string; worths: readonly HoleWorth[] }>;

/** Samples a choice is made on, and as many fresh ones its gain is counted on. */
const HALF_ROWS = 40;
const ROWS = 2 * HALF_ROWS;
const SCREENING_ROWS = 32;
/** Ends of what a session may show, in standard deviations, at which a disc is looked at before it is given every result. */
const ENDS: readonly (readonly [number, number])[] = [
  [1.6, 0],
  [-1.6, 0],
  [0, 1.6],
  [0, -1.6],
];
/** A disc whose best throw costs this much more is not looked at: no session makes that up (assumed). */
const HOPELESS = 0.5;
/** Shots with other discs looked at when the choice's own disc is the one measured. */
const OTHER_SHOTS = 2;
/** The same disc is thrown another way only for a gain of this many throws. */
const LEAST_GAIN = 0.01;

/** What of a shot may be put right for what was learnt; a disc's second finalist gets the first only. */
const RIGHTINGS = ['both', 'power', 'aim'] as const;

/** A shot under a result of the session; own ones fly as that result would show the disc. */
type Way = Readonly<{ aimed: (shift: ThrowShift) => AimedShot; isOwn: boolean }>;
/** Means over the two halves of the samples, less those of the choice; one of each a result. */
type Differences = Readonly<{ choosing: readonly number[]; counting: readonly number[] }>;

/**
 * Expected value of measuring each disc from each hand before the hole is played: results of the session are imagined (where the
 * fit may move to), and under each the choice is made anew among the plan's own finalists, with power and aim put right. What
 * decides is smoothed over all results; what counts are fresh samples, and what the same search gains with nothing learnt is
 * taken off: the mean is then not flattered by the search. Later lies keep the plan's values; what a session teaches of other
 * discs is left out.
 * @param throwIndices - throws to ask about, as in the player's list
 * @param each - called after each of them
 */
export function measuringHole(
  planned: PlannedHole,
  throwIndices: readonly number[],
  { throws: thrown, draws, seed }: MeasuringQuestion,
  each: () => void = () => {},
): HoleMeasuring {
  const { table, air } = planned.solved;
  const { player, world, field } = table;
  /** Rewritten while a disc is looked at: the thrower reads it at every shot. */
  const throws: FittedThrow[] = [...player.throws];
  const thrower = createExactThrower(
    world,
    { ...player, throws },
    air,
    createFlightBatch(),
    createMarcher(world),
    PLAN_STEP_S,
  );
  const standard = normalSamples(draws, mixSeed(seed, 11));
  const results = Array.from(
    { length: draws },
    (_, j) => [standard[j * SAMPLE_DIMENSIONS]!, standard[j * SAMPLE_DIMENSIONS + 1]!] as const,
  );
  const normals = normalSamples(draws * ROWS, mixSeed(seed, 12));
  const lessonFlier = createFlightBatch();
  const fly = ({ lie, replay }: Decision, { shot, aim_deg }: AimedShot, first: number, rows: number) =>
    shotOutcome(thrower, field, shot, lie, aim_deg, normals, first, rows, world.dropZone, replay);
  const flyAsNow = rememberer(fly);

  function worthOf(k: number): HoleWorth {
    const now = player.throws[k]!;
    const lesson = sessionLesson(now, thrown, lessonFlier);
    const shifts = results.map(([a, b]) => lesson.shiftOf(a, b));
    const { releaseSpeedSd, stabilityOffsetSd } = lesson.after;
    const gains = new Array<number>(draws).fill(0);
    let changes = 0;

    /** Flies with disc k as a result would show it; null: as it is believed now. */
    function under<T>(shift: ThrowShift | null, work: () => T): T {
      if (shift !== null) throws[k] = { ...shiftedThrow(now, shift), releaseSpeedSd, stabilityOffsetSd };
      try {
        return work();
      } finally {
        throws[k] = now;
      }
    }

    for (const decision of decisions) {
      const { best } = decision;
      const own = ownFinalists(decision, k);
      if (own.length === 0) continue;
      const isChosen = own[0] === best;
      if (!isChosen && own[0]!.outcome.expectedThrows - best.outcome.expectedThrows > HOPELESS) continue;
      const others = isChosen ? decision.finalists.filter(c => c.shot.throwIndex !== k).slice(0, OTHER_SHOTS) : [];
      const asNow: Way[] = [
        ...own.filter(c => c !== best).map((c): Way => ({ aimed: () => c, isOwn: true })),
        ...others.map((c): Way => ({ aimed: () => c, isOwn: false })),
      ];
      const righted = own.flatMap((c, rank) =>
        (rank === 0 ? RIGHTINGS : RIGHTINGS.slice(0, 1)).map(
          (what): Way => ({ aimed: shift => rightedShot(c, now, lesson, shift, what), isOwn: true }),
        ),
      );
      const flown = ({ aimed, isOwn }: Way, shift: ThrowShift, first: number, rows: number) =>
        isOwn ? fly(decision, aimed(shift), first, rows) : flyAsNow(decision, aimed(shift), first, rows);
      const stay: Way = { aimed: () => best, isOwn: isChosen };

      /** False when the disc stays behind the choice by more than two standard errors. */
      const mayLead = (shift: ThrowShift) =>
        under(shift, () => {
          const stayed = flown(stay, shift, 0, SCREENING_ROWS);
          return righted.some(way => {
            const { mean, standardError } = pairedDifference(flown(way, shift, 0, SCREENING_ROWS), stayed);
            return mean - 2 * standardError < 0;
          });
        });
      if (!isChosen && !ENDS.some(([a, b]) => mayLead(lesson.shiftOf(a, b)))) continue;

      const differences = (way: Way, isLearnt: boolean): Differences => {
        const halves = shifts.map((shift, j) =>
          under(isLearnt ? shift : null, () =>
            pairedHalves(flown(way, shift, j * ROWS, ROWS), flown(stay, shift, j * ROWS, ROWS)),
          ),
        );
        return { choosing: halves.map(h => h.choosing), counting: halves.map(h => h.counting) };
      };
      const learnt = [...righted, ...asNow].map(way => ({ way, ...differences(way, true) }));
      const before = asNow.map(way => ({ way, ...differences(way, false) }));

      /** True when the plan would give up its choice for a shot that is better by `lead`. */
      const isWorthwhile = (way: Way, lead: number) =>
        way.aimed(NOTHING).shot.throwIndex === best.shot.throwIndex
          ? lead > LEAST_GAIN
          : lead > 0 &&
            !isTie(
              { player, windSpeed_mps: table.windSpeed_mps },
              { ...way.aimed(NOTHING), outcome: { ...best.outcome, perSample: Float64Array.of(-lead) } },
              { ...best, outcome: { ...best.outcome, perSample: Float64Array.of(0) } },
            );
      const smooth = learnt.map(({ choosing }) => smoothOverResults(results, choosing));
      const uninformed = bestOf(
        before.map(({ way, choosing }) => ({ way, lead: -meanOf(choosing) })),
        isWorthwhile,
      );
      results.forEach((_, j) => {
        const informed = bestOf(
          learnt.map(({ way }, w) => ({ way, lead: -smooth[w]![j]! })),
          isWorthwhile,
        );
        const gain = informed === null ? 0 : -learnt[informed]!.counting[j]!;
        const anyhow = uninformed === null ? 0 : -before[uninformed]!.counting[j]!;
        gains[j]! += decision.chance * (gain - anyhow);
        if (informed !== null) changes += decision.chance / draws;
      });
    }
    each();
    return { throwIndex: k, gains, changes: Math.min(1, changes) };
  }

  const decisions = decisionsOf(planned);
  return { ref: planned.plan.ref, worths: throwIndices.map(worthOf) };
}

const NOTHING: ThrowShift = { logSpeed: 0, stability: 0 };

/** Index of the way that leads most among those worth it; null to stay. */
function bestOf(
  ways: readonly Readonly<{ way: Way; lead: number }>[],
  isWorthwhile: (way: Way, lead: number) => boolean,
): number | null {
  let best: number | null = null;
  ways.forEach(({ way, lead }, i) => {
    if (isWorthwhile(way, lead) && (best === null || lead > ways[best]!.lead)) best = i;
  });
  return best;
}

/** Mean difference in throws over each half of the samples. */
function pairedHalves(a: ShotOutcome, b: ShotOutcome): Readonly<{ choosing: number; counting: number }> {
  const half = (from: number) => {
    let sum = 0;
    for (let i = from; i < from + HALF_ROWS; i++) sum += a.perSample[i]! - b.perSample[i]!;
    return sum / HALF_ROWS;
  };
  return { choosing: half(0), counting: half(HALF_ROWS) };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

type Fly = (decision: Decision, aimed: AimedShot, first: number, rows: number) => ShotOutcome;

/** Shots of discs that are not looked at are the same whoever asks: each is flown once a result. */
function rememberer(fly: Fly): Fly {
  const known = new Map<AimedShot, Map<string, ShotOutcome>>();
  return (decision, aimed, first, rows) => {
    const own = known.get(aimed) ?? new Map<string, ShotOutcome>();
    known.set(aimed, own);
    const key = `${first} ${rows}`;
    const outcome = own.get(key) ?? fly(decision, aimed, first, rows);
    own.set(key, outcome);
    return outcome;
  };
}
