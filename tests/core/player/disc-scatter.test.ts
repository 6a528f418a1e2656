import { describe, expect, it } from 'vitest';
import { DiscScatterSchema, discScatter } from '../../../core/player/disc-scatter.ts';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import { type PlayerFile, parsePlayer } from '../../../core/player/player-file.ts';
import { spreadEllipses } from '../../../core/player/spread-ellipse.ts';

const WIND = { speed_mps: 5, from_deg: 0, height_m: 10 };
const spread = (distance_m: number, i: number) => ({
  discId: 'mid',
  distance_m: distance_m + ((i * 7) % 11) - 5,
  side_m: ((i * 5) % 7) - 3,
});

/** Twelve flat throws in calm air with one slip, eight into a wind, two rollers and a throw of unknown power. */
function player(): PlayerFile {
  const file = parsePlayer({
    name: 'P',
    handedness: 'right',
    discs: [{ id: 'mid', name: 'Mid', speed: 5, glide: 5, turn: -1, fade: 1 }],
    sessions: [
      {
        date: '2026-03-01',
        throws: [...Array.from({ length: 12 }, (_, i) => spread(85, i)), { discId: 'mid', distance_m: 41, side_m: 20 }],
      },
      { date: '2026-05-01', wind: WIND, bearing_deg: 0, throws: Array.from({ length: 8 }, (_, i) => spread(72, i)) },
      {
        throws: [
          { discId: 'mid', shape: 'roller', distance_m: 70 },
          { discId: 'mid', shape: 'roller', distance_m: 75, side_m: 3 },
          { discId: 'mid', power: 'part', distance_m: 40 },
        ],
      },
    ],
  });
  if (!file.ok) throw new Error(JSON.stringify(file.problems));
  return file.value;
}
const file = player();
const fitted = fitPlayer(file);
const scatter = discScatter(file, fitted, 'mid', 'backhand');

describe('one disc as it was measured', () => {
  it('keeps its schema and every throw, the slip set aside and not deleted', () => {
    DiscScatterSchema.parse(JSON.parse(JSON.stringify(scatter)));
    const [calm, ...groups] = scatter.views;
    expect(calm!.conditions).toBeNull();
    expect(calm!.points).toHaveLength(21);
    expect(groups.map(({ points }) => points.length)).toEqual([13, 8]);
    const odd = scatter.views[0]!.points.filter(({ standing }) => standing === 'set aside');
    expect(odd.map(({ session, place }) => [session, place])).toEqual([[0, 12]]);
    expect(scatter.unused.map(({ place, why }) => [place, why])).toEqual([
      [0, 'roller without its sideways finish'],
      [1, 'roller: kept until there are 4 more'],
      [2, 'part power without a number'],
    ]);
  });

  it('counts the throws as the fit does', () => {
    const total = scatter.views[0]!.points.reduce((sum, { weight }) => sum + weight, 0);
    // the fit keeps tenths of a throw; its last look is a step of the solver away
    expect(Math.abs(total - fitted.throws[0]!.n)).toBeLessThan(0.15);
    expect(fitted.throws[0]!.notes.join()).toContain('1 of 21 throws set aside as outliers: sessions[0].throws[12]');
  });

  it('takes the wind out: throws from either session lie about the calm mean', () => {
    const calm = scatter.views[0]!;
    const mean = (session: number) => {
      const points = calm.points.filter(point => point.session === session && point.weight > 0.5);
      return points.reduce((sum, { along_m }) => sum + along_m, 0) / points.length;
    };
    // as measured the sessions are 13 m apart; 3 m: the means of 12 and 8 throws with some 3.5 m of spread
    expect(Math.abs(mean(0) - mean(1))).toBeLessThan(3);
    expect(Math.abs(mean(0) - scatter.averageDay_m)).toBeLessThan(2);
    const windy = scatter.views[2]!;
    expect(windy.conditions).toMatchObject({ wind_mps: 5, windFrom_deg: 0, shape: 'flat', power: 1 });
    expect(windy.fitted.mean[0]).toBeLessThan(scatter.views[1]!.fitted.mean[0] - 5); // a headwind shortens
  });

  it('follows the distance from day to day, the slip counting next to nothing', () => {
    expect(scatter.byDay.map(({ session, date, day }) => [session, date, day])).toEqual([
      [0, '2026-03-01', 0],
      [1, '2026-05-01', 61], // 31 days of March and 30 of April
    ]);
    const [first, second] = scatter.byDay;
    expect(Math.abs(first!.throws - 12)).toBeLessThan(0.2);
    for (const { along_m } of [first!, second!]) expect(Math.abs(along_m - scatter.averageDay_m)).toBeLessThan(3);
    // the mean of n throws: their spread over √n
    expect(Math.abs(first!.sd_m / second!.sd_m - Math.sqrt(second!.throws / first!.throws))).toBeLessThan(0.01);
  });

  it('draws a path from the hand to the rest, with the fitted spread about its mean', () => {
    const { path, mean, rest, spread: rings } = scatter.views[1]!.fitted;
    expect(path[0]![0]).toBe(0);
    expect(path[0]![2]).toBeGreaterThan(1); // metres over the ground: the hand
    expect(Math.abs(path.at(-1)![2])).toBeLessThan(0.3); // on the ground but for the radius of a tilted disc
    expect(rest[0]).toBeGreaterThanOrEqual(path.at(-1)![0]);
    expect(rings.map(({ share }) => share)).toEqual([0.5, 0.9]);
    expect(rings[0]!.along_m).toBe(mean[0]);
    // chi-square with 2 degrees of freedom: √(ln 10 / ln 2) = 1.8226
    expect(Math.abs(rings[1]!.semiMajor_m / rings[0]!.semiMajor_m - 1.8226)).toBeLessThan(0.01);
  });

  it('is the same again for the same seed, and refuses a disc the player has not', () => {
    expect(discScatter(file, fitted, 'mid', 'backhand')).toEqual(scatter);
    expect(() => discScatter(file, fitted, 'mid', 'forehand')).toThrow(/mid, forehand/);
  });
});

describe('spread ellipses', () => {
  it('hold about their share of a large normal sample, whatever its tilt', () => {
    // seeded linear congruential generator and Box–Muller; 20,000 points, so a share is good to ±0.01
    let state = 12345;
    const uniform = () => {
      state = (state * 1103515245 + 12345) % 2147483648;
      return (state + 0.5) / 2147483648;
    };
    const points = Array.from({ length: 20_000 }, () => {
      const radius = Math.sqrt(-2 * Math.log(uniform()));
      const angle = 2 * Math.PI * uniform();
      const [u, v] = [6 * radius * Math.cos(angle), 2 * radius * Math.sin(angle)];
      const tilt = (30 * Math.PI) / 180;
      return {
        along_m: 80 + u * Math.cos(tilt) - v * Math.sin(tilt),
        side_m: 5 + u * Math.sin(tilt) + v * Math.cos(tilt),
        weight: 1,
      };
    });
    const ellipses = spreadEllipses(points);
    expect(Math.abs(ellipses[0]!.angle_deg - 30)).toBeLessThan(1);
    for (const { share, along_m, side_m, semiMajor_m, semiMinor_m, angle_deg } of ellipses) {
      const [cos, sin] = [Math.cos((angle_deg * Math.PI) / 180), Math.sin((angle_deg * Math.PI) / 180)];
      const inside = points.filter(point => {
        const [a, s] = [point.along_m - along_m, point.side_m - side_m];
        return ((a * cos + s * sin) / semiMajor_m) ** 2 + ((s * cos - a * sin) / semiMinor_m) ** 2 <= 1;
      });
      expect(Math.abs(inside.length / points.length - share)).toBeLessThan(0.01);
    }
  });

  it('says nothing of three throws', () => {
    expect(spreadEllipses([1, 2, 3].map(i => ({ along_m: i, side_m: -i, weight: 1 })))).toEqual([]);
  });
});
