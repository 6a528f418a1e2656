import { describe, expect, it } from 'vitest';
import { windProfile } from '../../../core/air/wind-profile.ts';
import { createFlier, LANDING } from '../../../core/flight/flier.ts';
import { groundPlay, SURFACE_FRICTION } from '../../../core/flight/ground-play.ts';
import { roll } from '../../../core/flight/rolling.ts';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import { withSpecials } from '../../../core/player/fit-special.ts';
import { type FittedThrow, type SpecialShape, specialOf } from '../../../core/player/fitted-player.ts';
import { type PlayerFile, parsePlayer } from '../../../core/player/player-file.ts';
import { specialRelease } from '../../../core/player/special-model.ts';
import { specialText } from '../../../core/player/special-text.ts';
import { inventedPlayer } from '../strategy/invented-player.ts';

const DISC = { id: 'ferry', speed: 7, glide: 5, turn: -1, fade: 1.5 };
const KNOWN = inventedPlayer({ arm_mps: 22, discs: [DISC] }).throws[0]!;
const METRES = { length: 'm', speed: 'mps' } as const;

type Measured = Readonly<{ shape: string; distance_m: number; side_m?: number; power?: number | 'part' }>;
type Session = Readonly<Record<string, unknown>>;

function fileOf(throws: readonly Measured[], session: Session = {}, hand = 'backhand'): PlayerFile {
  const parsed = parsePlayer({
    name: 'Invented',
    handedness: 'right',
    discs: [{ ...DISC, name: 'ferry' }],
    sessions: [
      { throws: [{ discId: 'ferry', distance_m: 75, side_m: -4 }] },
      { ...session, throws: throws.map(t => ({ discId: 'ferry', hand, ...t })) },
    ],
  });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.value;
}
const statusOf = (file: PlayerFile, shape: SpecialShape, throws: readonly FittedThrow[] = [KNOWN]) =>
  withSpecials(file, throws)[0]!.specials?.find(one => one.shape === shape);

/** Independent standard normals (the planner's own samples are spread evenly, and their means too sure). @source Box–Muller on a mixed counter */
function normalsFrom(seed: number): () => number {
  let count = seed * 7919;
  const uniform = () => {
    count++;
    let x = Math.imul(count ^ (count >>> 16), 0x45d9f3b);
    x = Math.imul(x ^ (x >>> 16), 0x45d9f3b);
    return (((x ^ (x >>> 16)) >>> 0) + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Throws drawn from the model itself with a known release, in given conditions. */
function drawn(
  shape: SpecialShape,
  truth: Readonly<{ far: number; side: number }>,
  spread: Readonly<{ speed: number; azimuth_deg: number; hyzer_deg: number }>,
  n: number,
  seed: number,
  conditions: Readonly<{ windX_mps?: number; grade?: number; surface?: 'turf' | 'hardpan' | 'longGrass' }> = {},
): Measured[] {
  const release = specialRelease(KNOWN, shape, truth);
  const { windX_mps = 0, grade = 0, surface = 'turf' } = conditions;
  const flier = createFlier();
  flier.setDisc(release.model);
  flier.setAir(1.2, windX_mps, 0, windProfile('open'));
  flier.setPlane(0, grade, 0);
  flier.setStep(0.05);
  const normal = normalsFrom(seed);
  const play = new Float64Array(2);
  return Array.from({ length: n }, () => {
    const speed = release.releaseSpeed_mps * (1 + spread.speed * normal());
    flier.fly(
      speed,
      spread.azimuth_deg * normal(),
      release.launch_deg,
      0,
      release.hyzer_deg + spread.hyzer_deg * normal(),
      release.spinPerSpeed * speed,
      1.2,
    );
    const radius_m = release.model.diameter_m / 2;
    const ground = SURFACE_FRICTION[surface];
    if (release.resistance === null) groundPlay(flier.landing, radius_m, ground, grade, 0, play);
    else {
      const share = ground.rollingResistance / SURFACE_FRICTION.turf.rollingResistance;
      roll(flier.landing, radius_m, release.resistance * share, grade, 0, play, 240);
    }
    const [x, y] = [flier.landing[LANDING.x]! + play[0]!, flier.landing[LANDING.y]! + play[1]!];
    return { shape, distance_m: Math.max(1, x), side_m: -y };
  });
}

const TRUTH = {
  roller: { far: Math.log(0.17), side: 3 },
  overhead: { far: Math.log(29), side: 0.02 },
} as const;
const SPREAD = {
  roller: { speed: 0.05, azimuth_deg: 2, hyzer_deg: 2.5 },
  overhead: { speed: 0.04, azimuth_deg: 3, hyzer_deg: 0 },
} as const;

describe.each(['roller', 'overhead'] as const)('a fitted %s', shape => {
  const many = drawn(shape, TRUTH[shape], SPREAD[shape], 400, 7);
  const mean = (pick: (t: Measured) => number) => many.reduce((sum, t) => sum + pick(t), 0) / many.length;
  const sd = (pick: (t: Measured) => number) =>
    Math.sqrt(many.reduce((sum, t) => sum + (pick(t) - mean(pick)) ** 2, 0) / many.length);
  const far = (t: Measured) => t.distance_m;
  const side = (t: Measured) => t.side_m!;

  it('meets the distance, finish and spread of many throws, and finds the release they were drawn from', () => {
    const fit = statusOf(fileOf(many), shape)!.fit!;
    expect(Math.abs(fit.averageDay_m - mean(far))).toBeLessThan(0.01 * mean(far));
    expect(Math.abs(fit.finish_m - mean(side))).toBeLessThan(0.01 * mean(far));
    // outliers of the draw count less: the spread may come out a few per cent short
    expect(Math.abs(fit.distanceSd_m / sd(far) - 1)).toBeLessThan(0.12);
    expect(Math.abs(fit.sideSd_m / sd(side) - 1)).toBeLessThan(0.12);
    if (shape === 'roller') {
      expect(Math.abs(Math.log(fit.resistance!) - TRUTH.roller.far)).toBeLessThan(0.04);
      expect(Math.abs(fit.hyzer_deg + 90 - TRUTH.roller.side)).toBeLessThan(0.5);
    } else expect(Math.abs(Math.log(fit.releaseSpeed_mps) - TRUTH.overhead.far)).toBeLessThan(0.02);
  });

  it('doubts few throws about as much as they are off: errors over 20 players against their doubt', () => {
    const [distances, finishes] = [[], []] as number[][];
    for (let seed = 1; seed <= 20; seed++) {
      const fit = statusOf(fileOf(drawn(shape, TRUTH[shape], SPREAD[shape], 7, 100 + seed)), shape)!.fit!;
      distances!.push((fit.averageDay_m - mean(far)) / fit.averageDaySd_m);
      finishes!.push((fit.finish_m - mean(side)) / fit.finishSd_m);
    }
    // 1 for a doubt that is just right; 20 errors tell it to a sixth (χ²), the assumed usual spread and the widening lower it
    for (const errors of [distances!, finishes!]) {
      const rms = Math.sqrt(errors.reduce((sum, z) => sum + z * z, 0) / errors.length);
      expect(rms).toBeGreaterThan(0.4);
      expect(rms).toBeLessThan(1.2);
      expect(errors.filter(z => Math.abs(z) < 2).length).toBeGreaterThanOrEqual(18);
    }
  });

  it('takes wind, slope and surface of its session out', () => {
    const session = {
      wind: { speed_mps: 5, from_deg: 0, height_m: 10 },
      bearing_deg: 0,
      surface: 'hardpan',
    };
    const windy = drawn(shape, TRUTH[shape], SPREAD[shape], 60, 3, { windX_mps: -5, surface: 'hardpan' });
    const fit = statusOf(fileOf(windy, session), shape)!.fit!;
    expect(Math.abs(fit.averageDay_m / mean(far) - 1)).toBeLessThan(0.05);
  });

  it('counts a slip next to nothing', () => {
    const few = drawn(shape, TRUTH[shape], SPREAD[shape], 8, 11);
    const [plain, slipped] = [few, [...few, { shape, distance_m: 12, side_m: 3 }]].map(
      throws => statusOf(fileOf(throws), shape)!.fit!,
    );
    expect(Math.abs(slipped!.averageDay_m / plain!.averageDay_m - 1)).toBeLessThan(0.03);
    expect(slipped!.n).toBeLessThan(8.6);
  });

  it('is not there before five throws with their sideways finish are, and says how many are missing', () => {
    const few = drawn(shape, TRUTH[shape], SPREAD[shape], 4, 5);
    const status = statusOf(fileOf([...few, { shape, distance_m: 60 }, { ...few[0]!, power: 'part' }]), shape)!;
    expect(status).toMatchObject({ counted: 4, needed: 1, unusable: 2, fit: null });
    expect(specialText(status, METRES)).toContain('1 more');
    expect(specialText(status, METRES)).toContain('2 more can’t be used');
    expect(statusOf(fileOf([...few, few[0]!]), shape)!.fit).not.toBeNull();
  });
});

describe('special throws that are none', () => {
  it('a roller that ends far behind the thrower’s right is not fitted, and says why', () => {
    const odd = Array.from({ length: 6 }, (_, i) => ({ shape: 'roller', distance_m: 5 + i / 10, side_m: 80 }));
    const status = statusOf(fileOf(odd), 'roller')!;
    expect(status.fit).toBeNull();
    expect(specialText(status, METRES)).toMatch(/not used: they end 5 m away and 80 m to the right/);
    expect(specialOf({ specials: [status] }, 'roller')).toBeNull();
  });

  it('from a hand nothing else was thrown with are said in the notes of the file', () => {
    const few = drawn('overhead', TRUTH.overhead, SPREAD.overhead, 6, 5);
    expect(fitPlayer(fileOf(few, {}, 'forehand')).notes.join()).toMatch(/6 rollers and overhead throws .* forehand/);
  });
});

describe('a player without special throws', () => {
  it('is handed on untouched', () => {
    const throws = [KNOWN];
    expect(withSpecials(fileOf([]), throws)).toBe(throws);
  });

  it('fits the rest to the same numbers with or without them', () => {
    const plain = fitPlayer(fileOf([]));
    const rolling = fitPlayer(fileOf(drawn('roller', TRUTH.roller, SPREAD.roller, 6, 5)));
    const { specials, notes: _, ...same } = rolling.throws[0]!;
    const { notes: __, ...before } = plain.throws[0]!;
    expect(specials).toHaveLength(1);
    expect(JSON.stringify(same)).toBe(JSON.stringify(before));
  });
});
