import { fitPlayer } from '../../../core/player/fit-player.ts';
import type { FittedPlayer } from '../../../core/player/fitted-player.ts';
import { parsePlayer } from '../../../core/player/player-file.ts';
import { CALM, INVENTED_BAG, type InventedSession, inventPlayer, randomOf } from './synthetic-player.ts';

/** How players are made up whose truth is known. */
export type Generator = Readonly<{
  name: string;
  seed: number;
  arm_mps: readonly [slowest: number, fastest: number];
  sessions: readonly InventedSession[];
  /** Disc-to-disc spread of the release speed (share) and of the stability (turn units). */
  speedSpread: number;
  stabilitySpread: number;
  /** Side scatter over long scatter: 1 keeps the shape of the typical one. */
  sideShare: number;
}>;

/** One of the four the fit's widening factors were set on. */
export const FIRST_GENERATOR: Generator = {
  name: 'first',
  seed: 5000,
  arm_mps: [18, 29],
  sessions: CALM,
  speedSpread: 0.02,
  stabilitySpread: 0.5,
  sideShare: 1,
};

/** Another: weaker arms, discs less alike, wider to the side, and wind in three sessions. */
export const SECOND_GENERATOR: Generator = {
  name: 'second',
  seed: 91_000,
  arm_mps: [15, 27],
  sessions: [
    { speed_mps: 1, from_deg: 20, bearing_deg: 90 },
    { speed_mps: 4, from_deg: 70, bearing_deg: 90 },
    { speed_mps: 3, from_deg: 200, bearing_deg: 60 },
  ],
  speedSpread: 0.035,
  stabilitySpread: 0.8,
  sideShare: 1.3,
};

/** Another: strong arms, discs that stray less than the fit expects, a light wind in one session of two. */
export const THIRD_GENERATOR: Generator = {
  name: 'third',
  seed: 47_000,
  arm_mps: [22, 31],
  sessions: [{ speed_mps: 2, from_deg: 300, bearing_deg: 10 }, ...CALM],
  speedSpread: 0.012,
  stabilitySpread: 0.35,
  sideShare: 0.8,
};

/** Another: any arm, discs that stray more, a strong wind in one of two sessions. */
export const FOURTH_GENERATOR: Generator = {
  name: 'fourth',
  seed: 330_000,
  arm_mps: [16, 30],
  sessions: [
    { speed_mps: 5, from_deg: 180, bearing_deg: 300 },
    { speed_mps: 2, from_deg: 130, bearing_deg: 40 },
  ],
  speedSpread: 0.04,
  stabilitySpread: 0.65,
  sideShare: 1.15,
};

/** Kept for checking, never set on: a crosswind in one of two sessions. */
export const FIFTH_GENERATOR: Generator = {
  name: 'fifth',
  seed: 760_000,
  arm_mps: [17, 28],
  sessions: [{ speed_mps: 3, from_deg: 240, bearing_deg: 150 }, ...CALM],
  speedSpread: 0.025,
  stabilitySpread: 0.6,
  sideShare: 1,
};

/** Kept for checking, never set on: all in a light headwind, steadier long than sideways. */
export const SIXTH_GENERATOR: Generator = {
  name: 'sixth',
  seed: 1_210_000,
  arm_mps: [19, 30],
  sessions: [{ speed_mps: 2, from_deg: 10, bearing_deg: 0 }],
  speedSpread: 0.03,
  stabilitySpread: 0.45,
  sideShare: 1.25,
};

const NORMAL_90 = 1.6448536269514722; // Φ⁻¹(0.95)

export type Sums = { count: number; bias: number; absolute: number; squares: number; covered: number; floor: number };
const noSums = (): Sums => ({ count: 0, bias: 0, absolute: 0, squares: 0, covered: 0, floor: 0 });

function add(to: Sums, error: number, sd: number, floor = 0): void {
  to.count++;
  to.bias += error;
  to.absolute += Math.abs(error);
  to.squares += error * error;
  to.floor += floor * floor;
  if (Math.abs(error) <= NORMAL_90 * sd) to.covered++;
}

export const biasOf = (s: Sums) => s.bias / s.count;
export const absoluteOf = (s: Sums) => s.absolute / s.count;
export const rmsOf = (s: Sums) => Math.sqrt(s.squares / s.count);
export const coveredOf = (s: Sums) => s.covered / s.count;
/** Rms of the standard errors a plain mean of the same throws would have. */
export const floorOf = (s: Sums) => Math.sqrt(s.floor / s.count);

/** Errors are fit − truth; distances and finishes in metres, the speed in shares, the stability in turn units. */
export type Recovery = Readonly<{ speed: Sums; distance: Sums; finish: Sums; stability: Sums; best: Sums; ms: number }>;

export function fitOf(file: unknown): FittedPlayer {
  const parsed = parsePlayer(file);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return fitPlayer(parsed.value);
}

const made = (g: Generator, i: number, discs: Parameters<typeof inventPlayer>[0]['discs'], noise: number) => {
  const { uniform } = randomOf(g.seed + 1 + 3 * i);
  const [slowest, fastest] = g.arm_mps;
  return inventPlayer({
    seed: g.seed + 2 + 3 * i,
    arm_mps: slowest + (fastest - slowest) * uniform(),
    discs,
    sessions: g.sessions,
    speedSpread: g.speedSpread,
    stabilitySpread: g.stabilitySpread,
    longScatter: noise,
    sideScatter: noise * g.sideShare,
  });
};

/** Fits `players` made-up players of seven discs thrown `throws` times each. */
export function recover(g: Generator, players: number, throws: number, noise: number): Recovery {
  const sums = { speed: noSums(), distance: noSums(), finish: noSums(), stability: noSums(), best: noSums() };
  let ms = 0;
  for (let i = 0; i < players; i++) {
    const { file, truths } = made(
      g,
      i,
      INVENTED_BAG.map(disc => ({ ...disc, throws })),
      noise,
    );
    const started = performance.now();
    const fitted = fitOf(file);
    ms += performance.now() - started;
    for (const truth of truths) {
      const t = fitted.throws.find(f => f.discId === truth.discId)!;
      const { along_m, left_m, alongSd_m, leftSd_m } = truth.moments;
      add(sums.speed, Math.log(t.releaseSpeed_mps / truth.releaseSpeed_mps), t.releaseSpeedSd);
      add(sums.distance, t.averageDay_m - along_m, t.averageDaySd_m, alongSd_m / Math.sqrt(throws));
      add(sums.finish, t.finish_m + left_m, t.finishSd_m, leftSd_m / Math.sqrt(throws));
      add(sums.stability, t.stabilityOffset - truth.stability, t.stabilityOffsetSd);
      add(sums.best, t.best_m - truth.best_m, t.bestSd_m);
    }
  }
  return { ...sums, ms: ms / players };
}

/** Change of the mean distance by one grip slip among `throws`, as a share; the shorter half of the slips goes wide. */
export function slipShifts(g: Generator, players: number, throws: number, noise: number): number[] {
  return Array.from({ length: players }, (_, i) => {
    const discs = INVENTED_BAG.filter(({ id }) => ['lantern', 'willow', 'comet'].includes(id));
    const { file } = made(
      g,
      i,
      discs.map(disc => ({ ...disc, throws })),
      noise,
    );
    const clean = fitOf(file).throws.find(t => t.discId === 'willow')!;
    const slip = {
      discId: 'willow',
      distance_m: (i % 2 === 0 ? 0.45 : 0.6) * clean.averageDay_m,
      side_m: i % 3 === 0 ? -14 : 14,
    };
    const [first, ...rest] = file.sessions;
    const slipped = fitOf({ ...file, sessions: [{ ...first!, throws: [...first!.throws, slip] }, ...rest] });
    return slipped.throws.find(t => t.discId === 'willow')!.averageDay_m / clean.averageDay_m - 1;
  });
}

export type Borrowing = Readonly<{ borrowed: number; alone: number; plain: number; floor: number }>;

/**
 * Rms error at a disc with `few` throws, against the mean of 20 throws held back: with the bag, from the disc alone, and by the
 * plain mean of the few. `floor`: the held-back mean's own standard error, which no prediction can beat.
 */
export function borrowing(g: Generator, players: number, few: number, noise: number): Borrowing {
  const HELD = 20;
  const squares = { borrowed: 0, alone: 0, plain: 0, floor: 0 };
  const calm = { ...g, sessions: CALM };
  for (let i = 0; i < players; i++) {
    const { file, truths } = made(
      calm,
      i,
      INVENTED_BAG.map(disc => ({ ...disc, throws: disc.id === 'willow' ? few + HELD : 20 })),
      noise,
    );
    const all = file.sessions[0]!.throws;
    const willow = all.filter(t => t.discId === 'willow');
    const held = mean(willow.slice(few).map(t => t.distance_m));
    const own = willow.slice(0, few);
    const others = all.filter(t => t.discId !== 'willow');
    const withBag = { ...file, sessions: [{ ...file.sessions[0]!, throws: [...others, ...own] }] };
    const byItself = { ...file, discs: file.discs.filter(d => d.id === 'willow'), sessions: [{ throws: own }] };
    const averageDay = (of: unknown) => fitOf(of).throws.find(t => t.discId === 'willow')!.averageDay_m;
    squares.borrowed += (averageDay(withBag) - held) ** 2;
    squares.alone += (averageDay(byItself) - held) ** 2;
    squares.plain += (mean(own.map(t => t.distance_m)) - held) ** 2;
    squares.floor += truths.find(t => t.discId === 'willow')!.moments.alongSd_m ** 2 / HELD;
  }
  const rms = (sum: number) => Math.sqrt(sum / players);
  return {
    borrowed: rms(squares.borrowed),
    alone: rms(squares.alone),
    plain: rms(squares.plain),
    floor: rms(squares.floor),
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
