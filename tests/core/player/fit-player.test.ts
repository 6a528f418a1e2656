import { describe, expect, it } from 'vitest';
import { ratedArmSpeed_mps } from '../../../core/flight/disc-model.ts';
import { createFlightBatch } from '../../../core/flight/flight-batch.ts';
import { discSigns } from '../../../core/player/disc-signs.ts';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import type { FittedPlayer } from '../../../core/player/fitted-player.ts';
import { parsePlayer } from '../../../core/player/player-file.ts';
import { ThrowsReportSchema, throwsReport } from '../../../core/player/throws-report.ts';
import { INVENTED_BAG, type InventedPlayer, type InventedSession, inventPlayer, randomOf } from './synthetic-player.ts';

// Sources: the truth of every invented player is known because the fieldwork is flown from it; bounds on recovery are the
// project's own requirement (speed 2 %, mean distance 1 m at 20 throws, 90 % intervals holding 85–95 %, slips under 1 %).

type Row = { discId: string; distance_m: number; side_m?: number };
type File = ReturnType<typeof inventPlayer>['file'];

function fitOf(input: unknown, seed?: number): FittedPlayer {
  const parsed = parsePlayer(input);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return fitPlayer(parsed.value, seed === undefined ? {} : { seed });
}

const pick = (player: FittedPlayer, discId: string, hand = 'backhand') =>
  player.throws.find(t => t.discId === discId && t.hand === hand)!;
const bag = (throws: number, ids: readonly string[] = ['acorn', 'lantern', 'willow', 'comet']) =>
  INVENTED_BAG.filter(disc => ids.includes(disc.id)).map(disc => ({ ...disc, throws }));
const withExtra = (file: File, ...throws: Row[]) => ({ ...file, sessions: [...file.sessions, { throws }] });
const players = (count: number, change: (i: number) => Partial<InventedPlayer> & Pick<InventedPlayer, 'discs'>) =>
  Array.from({ length: count }, (_, i) =>
    inventPlayer({ seed: 100 + i, arm_mps: 19 + 10 * randomOf(900 + i).uniform(), ...change(i) }),
  );
const mean = (values: readonly number[]) => values.reduce((s, v) => s + v, 0) / values.length;
const rms = (values: readonly number[]) => Math.sqrt(mean(values.map(v => v * v)));

const WINDS: readonly InventedSession[] = [
  { speed_mps: 4, from_deg: 90, bearing_deg: 90 },
  { speed_mps: 3, from_deg: 270, bearing_deg: 90 },
  { speed_mps: 4, from_deg: 180, bearing_deg: 90 },
];

describe('recovery of known players', () => {
  const cases = players(36, () => ({ discs: bag(20, ['acorn', 'willow', 'comet']) })).map(({ file, truths }) => ({
    fitted: fitOf(file),
    truths,
  }));
  const pairs = cases.flatMap(({ fitted, truths }) => truths.map(truth => ({ truth, t: pick(fitted, truth.discId) })));

  it('release speed within 2 %, mean distance within 1 m on average, at 20 throws', () => {
    const speed = pairs.map(({ t, truth }) => t.releaseSpeed_mps / truth.releaseSpeed_mps - 1);
    const distance = pairs.map(({ t, truth }) => t.averageDay_m - truth.moments.along_m);
    expect(Math.abs(mean(speed))).toBeLessThan(0.005);
    expect(rms(speed)).toBeLessThan(0.02);
    expect(Math.abs(mean(distance))).toBeLessThan(0.5);
    expect(mean(distance.map(Math.abs))).toBeLessThan(1.15);
  });

  it('no worse than the plain mean of 20 throws would be', () => {
    // [C] standard error of a mean of 20
    const distance = pairs.map(
      ({ t, truth }) => (t.averageDay_m - truth.moments.along_m) / (truth.moments.alongSd_m / Math.sqrt(20)),
    );
    const finish = pairs.map(
      ({ t, truth }) => (t.finish_m + truth.moments.left_m) / (truth.moments.leftSd_m / Math.sqrt(20)),
    );
    expect(rms(distance)).toBeLessThan(1);
    expect(rms(finish)).toBeLessThan(1);
  });

  it('90 % intervals hold the truth in 82 to 98 % of 108 fits (the bench narrows this to 85–95)', () => {
    const inside = (error: (pair: (typeof pairs)[number]) => number) =>
      mean(pairs.map(pair => (Math.abs(error(pair)) <= 1.6449 ? 1 : 0)));
    for (const share of [
      inside(({ t, truth }) => Math.log(t.releaseSpeed_mps / truth.releaseSpeed_mps) / t.releaseSpeedSd),
      inside(({ t, truth }) => (t.averageDay_m - truth.moments.along_m) / t.averageDaySd_m),
      inside(({ t, truth }) => (t.finish_m + truth.moments.left_m) / t.finishSd_m),
      inside(({ t, truth }) => (t.stabilityOffset - truth.stability) / t.stabilityOffsetSd),
    ]) {
      expect(share).toBeGreaterThanOrEqual(0.82);
      expect(share).toBeLessThanOrEqual(0.98);
    }
  });

  it('scatter follows the player’s own', () => {
    const steady = players(8, () => ({ discs: bag(24), longScatter: 0.6, sideScatter: 0.6 }));
    const wild = players(8, () => ({ discs: bag(24), longScatter: 1.6, sideScatter: 1.6 }));
    for (const group of [steady, wild]) {
      const ratios = group.flatMap(({ file, truths }) => {
        const fitted = fitOf(file);
        return truths.map(truth => [
          Math.log(pick(fitted, truth.discId).distanceSd_m / truth.moments.alongSd_m),
          Math.log(pick(fitted, truth.discId).sideSd_m / truth.moments.leftSd_m),
        ]);
      });
      for (const kind of [0, 1]) {
        expect(Math.abs(mean(ratios.map(r => r[kind]!)))).toBeLessThan(0.12);
        expect(rms(ratios.map(r => r[kind]!))).toBeLessThan(0.25);
      }
    }
  });

  it('a slower disc that lands tighter comes out tighter', () => {
    const { file } = inventPlayer({ seed: 7, arm_mps: 24, discs: bag(30) });
    const tight = inventPlayer({ seed: 8, arm_mps: 24, discs: bag(30, ['acorn']), longScatter: 0.5, sideScatter: 0.5 });
    const both = {
      ...file,
      sessions: [
        {
          ...file.sessions[0]!,
          throws: [...file.sessions[0]!.throws.filter(t => t.discId !== 'acorn'), ...tight.file.sessions[0]!.throws],
        },
      ],
    };
    const fitted = fitOf(both);
    const shareOf = (id: string) => pick(fitted, id).scatter.speed;
    expect(shareOf('acorn')).toBeLessThan(0.75 * shareOf('comet'));
    expect(pick(fitted, 'acorn').distanceSd_m).toBeLessThan(pick(fitted, 'lantern').distanceSd_m);
  });
});

describe('outliers', () => {
  it('a grip slip moves no mean by 1 %, is named, and a clean throw is not', () => {
    for (const { file } of players(6, () => ({ discs: bag(20, ['lantern', 'willow']) }))) {
      const clean = fitOf(file);
      const slipped = fitOf(
        withExtra(file, { discId: 'willow', distance_m: 0.45 * pick(clean, 'willow').averageDay_m, side_m: 12 }),
      );
      for (const id of ['lantern', 'willow'])
        expect(Math.abs(pick(slipped, id).averageDay_m / pick(clean, id).averageDay_m - 1)).toBeLessThan(0.01);
      expect(pick(slipped, 'willow').notes.join()).toContain('sessions[1].throws[0]');
      expect(pick(slipped, 'willow').n).toBeLessThan(20.1);
    }
  });

  it('one slip among three throws does not become the disc', () => {
    const { file } = inventPlayer({
      seed: 3,
      arm_mps: 24,
      discs: [...bag(20, ['lantern', 'willow']), ...bag(2, ['acorn'])],
    });
    const clean = fitOf(file);
    const slipped = fitOf(withExtra(file, { discId: 'acorn', distance_m: 25, side_m: 10 }));
    expect(Math.abs(pick(slipped, 'acorn').averageDay_m / pick(clean, 'acorn').averageDay_m - 1)).toBeLessThan(0.03);
  });
});

describe('borrowing', () => {
  it('at 3 throws the bag helps: smaller error of the distance than from the disc alone', () => {
    const errors = players(20, () => ({
      discs: [...bag(20, ['acorn', 'lantern', 'comet']), ...bag(3, ['willow'])],
    })).map(({ file, truths }) => {
      const truth = truths.find(t => t.discId === 'willow')!;
      const only = {
        ...file,
        discs: file.discs.filter(d => d.id === 'willow'),
        sessions: file.sessions.map(s => ({ ...s, throws: s.throws.filter(t => t.discId === 'willow') })),
      };
      const borrowed = pick(fitOf(file), 'willow');
      expect(borrowed.basis).toBe('borrowed');
      const error = (x: number) => x - truth.moments.along_m;
      const plain = mean(only.sessions[0]!.throws.map(t => t.distance_m));
      return {
        borrowed: error(borrowed.averageDay_m),
        alone: error(pick(fitOf(only), 'willow').averageDay_m),
        plain: error(plain),
      };
    });
    expect(rms(errors.map(e => e.borrowed))).toBeLessThan(0.85 * rms(errors.map(e => e.alone)));
    expect(rms(errors.map(e => e.borrowed))).toBeLessThan(0.85 * rms(errors.map(e => e.plain)));
  });

  it('a disc never thrown is predicted, says so, and is less sure', () => {
    const errors = players(12, () => ({
      discs: [...bag(20, ['acorn', 'lantern', 'comet']), ...bag(0, ['willow'])],
    })).map(({ file, truths }) => {
      const fitted = fitOf(file);
      const t = pick(fitted, 'willow');
      expect(t.basis).toBe('predicted');
      expect(t.n).toBe(0);
      expect(t.notes[0]).toContain('predicted');
      expect(t.averageDaySd_m).toBeGreaterThan(pick(fitted, 'lantern').averageDaySd_m);
      return (t.averageDay_m - truths.find(x => x.discId === 'willow')!.moments.along_m) / t.averageDaySd_m;
    });
    expect(rms(errors)).toBeLessThan(1.6);
  });

  it('offers the forehand only when it was measured', () => {
    const { file } = inventPlayer({ seed: 5, arm_mps: 24, discs: bag(10, ['lantern', 'willow']) });
    expect(new Set(fitOf(file).throws.map(t => t.hand))).toEqual(new Set(['backhand']));
    const forehand = inventPlayer({ seed: 6, arm_mps: 21, discs: bag(10, ['lantern']), hand: 'forehand' });
    const both = fitOf({ ...file, sessions: [...file.sessions, ...forehand.file.sessions] });
    expect(both.throws.map(t => `${t.discId} ${t.hand} ${t.basis}`)).toEqual([
      'lantern backhand measured',
      'lantern forehand measured',
      'willow backhand measured',
      'willow forehand predicted',
    ]);
    expect(pick(both, 'willow', 'forehand').releaseSpeed_mps).toBeLessThan(pick(both, 'willow').releaseSpeed_mps);
    // a right-handed forehand fades the other way
    expect(pick(both, 'lantern', 'forehand').spinPerSpeed).toBeGreaterThan(0);
  });
});

describe('conditions', () => {
  it('windy fieldwork gives the same player as calm fieldwork', () => {
    const gaps = players(12, () => ({ discs: bag(21, ['acorn', 'willow', 'comet']), sessions: WINDS })).flatMap(
      ({ file, truths }) => {
        const fitted = fitOf(file);
        return truths.map(truth => {
          const t = pick(fitted, truth.discId);
          return { along: t.averageDay_m - truth.moments.along_m, right: t.finish_m + truth.moments.left_m };
        });
      },
    );
    // a plain mean would be off by several metres along (two of three winds are not across) and right (one is)
    expect(Math.abs(mean(gaps.map(g => g.along)))).toBeLessThan(0.8);
    expect(rms(gaps.map(g => g.along))).toBeLessThan(2);
    expect(Math.abs(mean(gaps.map(g => g.right)))).toBeLessThan(1);
    expect(rms(gaps.map(g => g.right))).toBeLessThan(3);
  });

  it('takes a slope out: uphill fieldwork is not a weaker arm', () => {
    const gaps = players(10, () => ({
      discs: bag(16, ['lantern', 'willow']),
      sessions: [{ speed_mps: 0, from_deg: 0, bearing_deg: 0, rise_m: 4 }],
    })).flatMap(({ file, truths }) => {
      const fitted = fitOf(file);
      return truths.map(truth => pick(fitted, truth.discId).releaseSpeed_mps / truth.releaseSpeed_mps - 1);
    });
    // the invented slope is 4 m on 70 m, the file says 4 m on the distance thrown: a small difference is due
    expect(Math.abs(mean(gaps))).toBeLessThan(0.02);
  });

  it('a left-handed mirror image has the mirrored finishes', () => {
    const { file } = inventPlayer({ seed: 21, arm_mps: 25, discs: bag(12), sessions: WINDS });
    const mirrored = {
      ...file,
      handedness: 'left',
      sessions: file.sessions.map(s => ({
        ...s,
        bearing_deg: -s.bearing_deg,
        wind: { ...s.wind, from_deg: -s.wind.from_deg },
        throws: s.throws.map(t => ({ ...t, side_m: -t.side_m })),
      })),
    };
    const [right, left] = [fitOf(file), fitOf(mirrored)];
    right.throws.forEach((t, i) => {
      const m = left.throws[i]!;
      expect(Math.abs(m.finish_m + t.finish_m)).toBeLessThanOrEqual(1e-6);
      for (const key of [
        'averageDay_m',
        'best_m',
        'releaseSpeed_mps',
        'stabilityOffset',
        'sideSd_m',
        'averageDaySd_m',
      ] as const)
        expect(Math.abs(m[key] - t[key])).toBeLessThanOrEqual(1e-6);
    });
  });

  it('a side that was not measured is not taken as 0', () => {
    const { file } = inventPlayer({ seed: 31, arm_mps: 25, discs: bag(14, ['lantern', 'comet']), stabilitySpread: 0 });
    const sideless = {
      ...file,
      sessions: file.sessions.map(s => ({ ...s, throws: s.throws.map(({ side_m: _, ...t }) => t) })),
    };
    const fitted = fitOf(sideless);
    expect(pick(fitted, 'comet').finish_m).toBeLessThan(-2); // a driver fades whether or not its side was written down
    expect(pick(fitted, 'comet').stabilityOffsetSd).toBeGreaterThan(pick(fitOf(file), 'comet').stabilityOffsetSd);
    expect(fitted.notes.join()).toContain('no sideways finish');
  });

  it('half power counts as half the speed; unknown power, rollers and overheads are left out and said', () => {
    const { file, truths } = inventPlayer({ seed: 41, arm_mps: 25, discs: bag(20, ['lantern']) });
    const weak = inventPlayer({
      seed: 42,
      arm_mps: 25 * 0.8,
      discs: bag(20, ['lantern']),
      speedSpread: 0,
      stabilitySpread: 0,
    });
    const partial = {
      ...weak.file,
      sessions: weak.file.sessions.map(s => ({ ...s, throws: s.throws.map(t => ({ ...t, power: 0.8 })) })),
    };
    const truth = weak.truths[0]!.releaseSpeed_mps / 0.8;
    expect(Math.abs(pick(fitOf(partial), 'lantern').releaseSpeed_mps / truth - 1)).toBeLessThan(0.03);
    const extra = fitOf({
      ...file,
      sessions: [
        ...file.sessions,
        {
          throws: [
            { discId: 'lantern', power: 'part', distance_m: 20 },
            { discId: 'lantern', shape: 'roller', distance_m: 120 },
          ],
        },
      ],
    });
    expect(
      Math.abs(pick(extra, 'lantern').averageDay_m - pick(fitOf(file), 'lantern').averageDay_m),
    ).toBeLessThanOrEqual(1e-9);
    expect(pick(extra, 'lantern').notes.join()).toContain('2 throws not used');
    expect(truths).toHaveLength(1);
  });

  it('shaped throws fly with their tilt', () => {
    const { file } = inventPlayer({ seed: 43, arm_mps: 25, discs: bag(20, ['lantern', 'willow']) });
    const shaped = {
      ...file,
      sessions: [...file.sessions, { throws: [{ discId: 'lantern', shape: 'hyzer', distance_m: 70, side_m: -25 }] }],
    };
    const [plain, with_] = [fitOf(file), fitOf(shaped)];
    expect(Math.abs(pick(with_, 'lantern').finish_m - pick(plain, 'lantern').finish_m)).toBeLessThan(1);
    expect(with_.notes.join()).toContain('15°');
  });
});

describe('the fitted player', () => {
  const { file } = inventPlayer({ seed: 51, arm_mps: 20, discs: bag(10) });

  it('is the same for the same seed and leaves the input alone', () => {
    const parsed = parsePlayer(file);
    if (!parsed.ok) throw new Error('invented file must parse');
    const before = JSON.stringify(parsed.value);
    expect(JSON.stringify(fitPlayer(parsed.value, { seed: 3 }))).toBe(
      JSON.stringify(fitPlayer(parsed.value, { seed: 3 })),
    );
    expect(JSON.stringify(parsed.value)).toBe(before);
  });

  it('orders its numbers: best over average, farther with faster arms, launches within the search', () => {
    for (const t of fitOf(file).throws) {
      expect(t.best_m).toBeGreaterThan(t.averageDay_m);
      expect(t.best_m).toBeLessThan(t.averageDay_m + 2.2 * t.distanceSd_m);
      expect(t.launch_deg).toBeGreaterThan(1);
      expect(t.launch_deg).toBeLessThan(24);
    }
  });

  it('says when a fast disc is under-thrown', () => {
    const notes = pick(fitOf(file), 'comet').notes.join();
    expect(20).toBeLessThan(0.88 * ratedArmSpeed_mps(12)); // the case: well under the rated arm
    expect(notes).toContain('uncertain');
    expect(notes).toContain('too fast for now');
  });

  it('survives one throw of one disc', () => {
    const t = fitOf({ ...file, sessions: [{ throws: [{ discId: 'lantern', distance_m: 60, side_m: -3 }] }] });
    expect(t.throws).toHaveLength(4);
    for (const row of t.throws)
      for (const value of [row.averageDay_m, row.best_m, row.finish_m, row.averageDaySd_m])
        expect(Number.isFinite(value)).toBe(true);
    expect(Math.abs(pick(t, 'lantern').averageDay_m - 60)).toBeLessThan(4);
  });

  it('survives absurd but legal input', () => {
    const odd = fitOf({
      ...file,
      sessions: [
        {
          wind: { speed_mps: 30, from_deg: 10 },
          bearing_deg: 80,
          rise_m: -30,
          throws: [
            { discId: 'lantern', distance_m: 240, side_m: -240 },
            { discId: 'willow', distance_m: 60.5 },
            { discId: 'willow', distance_m: 61, side_m: 200 },
          ],
        },
      ],
    });
    for (const row of odd.throws)
      expect(Number.isFinite(row.averageDay_m) && Number.isFinite(row.finish_m) && row.averageDay_m > 0).toBe(true);
  });

  it('fits the published table of throws', () => {
    const fitted = fitOf(file);
    const parsed = parsePlayer(file);
    if (!parsed.ok) throw new Error('invented file must parse');
    const report = throwsReport(
      fitted,
      fitted.throws.map(t => discSigns(parsed.value, fitted, t, createFlightBatch())),
    );
    expect(ThrowsReportSchema.parse(report)).toEqual(report);
    expect(report.throws.map(t => t.discId)).toEqual(file.discs.map(d => d.id));
    expect(report.throws.every(t => t.readiness.text.length > 0)).toBe(true);
  });
});
