import { describe, expect, it } from 'vitest';
import { aimWords, shortAim } from '../../../core/sheet/words/aim-words.ts';
import { holeCautionWords } from '../../../core/sheet/words/cautions.ts';
import { insteadWords } from '../../../core/sheet/words/instead-words.ts';
import { keepAway } from '../../../core/sheet/words/keep-away.ts';
import { inUnits, stretch } from '../../../core/sheet/words/lengths.ts';
import { nextWords } from '../../../core/sheet/words/next-words.ts';
import { oddsWords } from '../../../core/sheet/words/odds-words.ts';
import { plainSource } from '../../../core/sheet/words/plain-source.ts';
import { heightWords, reachWords, throwWords } from '../../../core/sheet/words/release-words.ts';
import { airOfHole, holeWindWords, roundWindWords } from '../../../core/sheet/words/wind-words.ts';
import { holeCautions } from '../../../core/strategy/hole-cautions.ts';
import { nameInText } from '../../../core/units/name-in-text.ts';
import { sampleHole, samplePlan, sampleShot } from './sheet-sample.ts';

const METRIC = { length: 'm', speed: 'mps' } as const;
const FEET = { length: 'ft', speed: 'mph' } as const;

describe('aim', () => {
  // [C] metres beside the basket: distance × tan(angle), worked out by hand; feet: / 0.3048 (NIST SP 811 B.8)
  it.each([
    { aim_deg: 0, basket_m: 80, units: METRIC, want: 'straight at the basket' },
    { aim_deg: -0.3, basket_m: 80, units: METRIC, want: 'straight at the basket' }, // 0.4 m
    { aim_deg: 0.4, basket_m: 200, units: METRIC, want: '0.4° = 1 m RIGHT of the basket' }, // 1.40 m
    { aim_deg: 5, basket_m: 80, units: METRIC, want: '5° = 7 m RIGHT of the basket' }, // 80 × 0.08749 = 7.0
    { aim_deg: -16, basket_m: 92, units: METRIC, want: '16° = 26 m LEFT of the basket' }, // 92 × 0.28675 = 26.4
    { aim_deg: -16, basket_m: 92, units: FEET, want: '16° = 87 ft LEFT of the basket' }, // 26.38 m = 86.6 ft
    { aim_deg: 75, basket_m: 92, units: METRIC, want: '75° right of the basket' },
  ])('$aim_deg° at $basket_m m: $want', ({ aim_deg, basket_m, units, want }) => {
    expect(aimWords(aim_deg, basket_m, units)).toBe(want);
  });

  it('is short elsewhere', () => {
    expect([shortAim(0.4), shortAim(-2.6), shortAim(12)]).toEqual(['straight', '3° left', '12° right']);
  });
});

describe('release', () => {
  it('names hand, tilt and power', () => {
    expect(throwWords(sampleShot())).toBe('backhand, flat, 86 % power');
    expect(throwWords(sampleShot({ hand: 'forehand', shape: 'hyzer', hyzer_deg: 12, power: 1 }))).toBe(
      'forehand, hyzer: outer edge down 12°, full power',
    );
    expect(throwWords(sampleShot({ shape: 'anhyzer', hyzer_deg: -10 }))).toContain('outer edge up 10°');
  });

  it('names how a roller and an overhead throw leave the hand', () => {
    expect(throwWords(sampleShot({ shape: 'roller', hyzer_deg: -93, power: 1 }))).toBe(
      'backhand roller: on its edge, top face 3° down, full power',
    );
    expect(throwWords(sampleShot({ shape: 'roller', hyzer_deg: -84.6 }))).toContain('top face 5° up');
    expect(throwWords(sampleShot({ shape: 'roller', hyzer_deg: -90.2 }))).toContain('on its edge, upright');
    expect(throwWords(sampleShot({ shape: 'overhead', hyzer_deg: 90 }))).toBe(
      'overhead: over the shoulder, on its edge, 86 % power',
    );
    expect(heightWords(sampleShot({ shape: 'roller', launch_deg: -4 }), METRIC)).toContain('then it rolls');
    expect(heightWords(sampleShot({ shape: 'overhead', height: 'standard', launch_deg: 40 }), METRIC)).toContain(
      'well up (40°)',
    );
  });

  it('names height and launch in words and numbers', () => {
    expect(heightWords(sampleShot(), METRIC)).toBe('low, a touch up (4°), top 2.4 m');
    expect(heightWords(sampleShot({ height: 'high', launch_deg: 17, apex_m: 9.1 }), FEET)).toBe(
      'high, well up (17°), top 30 ft', // 9.1 / 0.3048 = 29.9
    );
  });

  it('says where it stops and what is left', () => {
    // [C] 74 m at 5° right, 6 m back left: along 74 cos 5° + 6 sin 5° = 74.2, right 74 sin 5° − 6 cos 5° = 0.5; left √(5.8² + 0.5²) = 5.8
    expect(reachWords(sampleShot(), 80, METRIC)).toBe('74 m, ends 6 m left of the aim; leaves 6 m');
    expect(reachWords(sampleShot({ finish_m: 0.2 }), 80, METRIC)).toContain('ends on the aim');
  });
});

describe('odds', () => {
  it('gives clean, penalty, nearness, spread and score', () => {
    const plan = samplePlan();
    const lines = oddsWords(plan, plan.choice, METRIC);
    expect(lines).toEqual([
      'Clean flight 80 %. Penalty 3 %: out-of-bounds 2 %, missed mando 1 %.',
      'Inside 10 m 70 %, 20 m 90 %.',
      '2 in 3: ±5 m long, ±3 m wide.',
      '2.4 throws; under par 62 %, par 30 %.',
    ]);
  });

  it('names a lost disc among the penalties, where the ground says so', () => {
    const lost = sampleShot({ penaltyChance: 0.07, lostChance: 0.04 });
    expect(oddsWords(samplePlan(), lost, METRIC)[0]).toBe(
      'Clean flight 80 %. Penalty 7 %: out-of-bounds 2 %, missed mando 1 %, lost disc 4 %.',
    );
    expect(keepAway(sampleHole().report, lost, METRIC)).toContain('Rough: 4 % are not found there, two throws more.');
  });

  it('says what a throw rests on when that is little', () => {
    expect(oddsWords(samplePlan(), sampleShot({ basis: 'predicted' }), FEET).join(' ')).toContain('Never measured');
    expect(oddsWords(samplePlan(), sampleShot({ basis: 'borrowed' }), FEET).join(' ')).toContain('Few own throws');
  });
});

describe('what to stay away from', () => {
  it('puts the rules first, then what costs throws, then what stands in the way', () => {
    const { report } = sampleHole();
    expect(keepAway(report, sampleShot(), METRIC)).toEqual([
      'Mando at 40 m: pass on its LEFT.',
      'Left: Frog pond, water, 8 m off at 30 m.',
      'Overhead 35–45 m: 3.0 m free.',
    ]);
  });

  it('counts hazards, and leaves out what is past the throw or far over it', () => {
    const { report } = sampleHole();
    const short = keepAway(report, sampleShot({ distance_m: 20, hazardChance: 0.11, outOfBoundsChance: 0 }), METRIC);
    expect(short[1]).toBe('Hazard ground: 11 % end in it, one throw more.');
    expect(short.join(' ')).not.toContain('Overhead');
  });
});

describe('cautions', () => {
  it('knows the planner’s own sentences and shortens them', () => {
    const { map, report } = sampleHole();
    const end = { x_m: 60, y_m: 2, nextX_m: 60, nextY_m: 2, weight: 1, penalty: 0, kind: 0 };
    const blind = {
      ...report,
      blindSpots: [{ target: 'basket' as const, station_m: 80, blockedAt_m: 40, blockedBy: 'x' }],
    };
    const cautions = holeCautions(map, blind, [end]);
    expect(cautions.length).toBe(3); // crossing, throws that end near, blind: what the sheet must know
    expect(holeCautionWords(blind, { cautions }, METRIC)).toEqual([
      'PEOPLE: path at 60 m; 100 % end within 15 m of path. Wait until clear.',
      'BLIND basket: send a spotter, or walk up and look.',
    ]);
  });

  it('keeps what it does not know, in the units asked for', () => {
    const { report } = sampleHole();
    const cautions = ['A crane swings 30 m over the tee (features[3]): look up.'];
    expect(holeCautionWords({ ...report, pathCrossings: [] }, { cautions }, FEET)).toEqual([
      'A crane swings 98 ft over the tee: look up.', // 30 / 0.3048 = 98.4
    ]);
  });
});

describe('next throw and alternatives', () => {
  it('gives the next throw from each likely lie', () => {
    expect(nextWords(samplePlan(), METRIC)).toEqual([
      'Clean (80 %), 4 m to go: putt.',
      'After a penalty (15 %), 41 m to go: Throwing putter, flat, 86 % power, aim 3° left.',
    ]);
  });

  it('gives the alternative, its cost and why', () => {
    const plan = samplePlan();
    expect(insteadWords(plan, undefined, FEET, true)).toEqual([
      'Plain midrange, low flat, 86 % power, aim 5° right: costs 0.10 throws. At full power it comes up 11 ft short, the choice is there.',
    ]);
    const tie = samplePlan({ alternatives: [sampleShot({ tie: true })] });
    expect(insteadWords(tie, undefined, METRIC, false)[0]).toContain(': as good.');
    expect(insteadWords(plan, sampleShot({ expectedThrows: 2.65 }), METRIC, true)).toEqual([
      'Throwing putter, low flat, 86 % power, aim 5° right (the plan’s choice; yours costs 0.25).',
    ]);
  });
});

describe('lengths and sources', () => {
  it.each([
    { text: 'Pasture, out-of-bounds (features[68])', want: 'Pasture, out-of-bounds' },
    { text: 'wall: features[83]', want: 'wall' },
    { text: 'features[80]', want: '' },
    { text: 'path (features[1], features[22])', want: 'path' },
    { text: 'Hut (old)', want: 'Hut (old)' },
  ])('$text reads $want', ({ text, want }) => expect(plainSource(text)).toBe(want));

  it('turns metres in sentences into feet, metres a second into the speed asked for', () => {
    // [C] 5.0 m = 16.4 ft, 66 m = 216.5 ft, 4.0 m/s = 8.95 mph
    expect(inUnits('Needs 5.0 m at 66 m in 4.0 m/s.', FEET)).toBe('Needs 16 ft at 217 ft in 9 mph.');
    expect(inUnits('Needs 5.0 m.', METRIC)).toBe('Needs 5.0 m.');
  });

  it('leaves a name in a sentence as it is, whatever it looks like', () => {
    const named = (name: string) =>
      inUnits(`Within 15 m of ${nameInText(name)}, in 4.0 m/s.`, FEET).replace(/\u00a0/g, ' ');
    // [C] 15 m = 49.2 ft, 4.0 m/s = 8.95 mph
    expect(named('Old 9 m gate')).toBe('Within 49 ft of Old 9 m gate, in 9 mph.');
    expect(named('5 m/s fan')).toBe('Within 49 ft of 5 m/s fan, in 9 mph.');
    expect(nameInText('9 meadows')).toBe('9 meadows');
  });

  it('names a hole’s own time, and how the wind goes over the round', () => {
    const air = { windSpeed_mps: 2, windFrom_deg: 270, gust_mps: 3 } as Parameters<typeof roundWindWords>[0];
    const wind = (at: string, speed_mps: number, from_deg: number) => ({
      wind: { at, speed_mps, from_deg, gust_mps: 9 },
    });
    expect(holeWindWords({ headwind_mps: 3.2, windFromRight_mps: 0, ...wind('09:20', 3.2, 0) }, METRIC)).toBe(
      '09:20: 3 m/s headwind',
    );
    expect(roundWindWords(air, [wind('09:20', 8, 90), wind('09:00', 2, 270)], METRIC)).toBe(
      'wind by tee time, 09:00 2.0 m/s from W to 09:20 8.0 m/s from E; each hole has its own',
    );
    expect(roundWindWords(air, [{}], METRIC)).toBe('wind 2.0 m/s from 270° (W), gusts 3.0 m/s');
    expect(airOfHole(air, wind('09:20', 8, 90))).toMatchObject({ windSpeed_mps: 8, windFrom_deg: 90, gust_mps: 9 });
    expect(airOfHole(air, {})).toBe(air);
  });

  it('keeps quiet about a penalty there is next to none of', () => {
    const shot = (penaltyChance: number) =>
      oddsWords(
        samplePlan(),
        sampleShot({ penaltyChance, outOfBoundsChance: 0, hazardChance: 0, mandoChance: 0 }),
        METRIC,
      )[0];
    expect(shot(0)).not.toMatch(/Penalty/);
    expect(shot(0.004)).not.toMatch(/Penalty/);
    expect(shot(0.04)).toMatch(/Penalty 4 %\.$/);
  });

  it('writes a stretch once when both ends read alike', () => {
    expect([stretch(38, 42, METRIC), stretch(46, 46.2, METRIC)]).toEqual(['38–42 m', 'at 46 m']);
  });

  it('names the wind as the thrower meets it', () => {
    expect(holeWindWords({ headwind_mps: 3.2, windFromRight_mps: -4 }, METRIC)).toBe(
      '4 m/s from the left, 3 m/s headwind',
    );
    expect(holeWindWords({ headwind_mps: -0.3, windFromRight_mps: 0.2 }, METRIC)).toBe('calm');
    expect(holeWindWords({ headwind_mps: -4.4704, windFromRight_mps: 0 }, FEET)).toBe('10 mph tailwind'); // 10 × 0.44704, NIST SP 811
  });
});
