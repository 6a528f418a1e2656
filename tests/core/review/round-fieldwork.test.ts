import { describe, expect, it } from 'vitest';
import { windProfile, windRatioAt } from '../../../core/air/wind-profile.ts';
import { parsePlayer } from '../../../core/player/player-file.ts';
import { fitChange } from '../../../core/review/fit-change.ts';
import { roundFieldwork } from '../../../core/review/round-fieldwork.ts';
import type { RoundFile, RoundThrow } from '../../../core/review/round-file.ts';
import { taken } from '../../backend/taken.ts';
import { tinyPlayer } from '../../backend/tiny-round.ts';
import { aDay } from '../strategy/a-day.ts';
import { BAG, inventedPlayer } from '../strategy/invented-player.ts';
import { bareHole, slopedTerrain } from '../strategy/small-world.ts';

const player = taken(parsePlayer(tinyPlayer()));
const FULL: RoundThrow = {
  discId: 'mid',
  shape: 'flat',
  power: 1,
  aimBearing_deg: 90,
  rest: { east_m: 70, north_m: -4 },
};

function offered(t: RoundThrow, more: Partial<Parameters<typeof roundFieldwork>[0]> = {}) {
  const round: RoundFile = {
    schema: 'roundwright/round@1',
    date: '2026-05-30',
    holes: [{ ref: '1', throws: [t] }],
  };
  const maps = [bareHole({ basket: [80, 0] })];
  return roundFieldwork({
    round,
    maps,
    player,
    day: aDay(4, 200),
    exposureOf: () => 'open',
    course: 'Here',
    ...more,
  })[0]!;
}

describe('a throw of a round as fieldwork', () => {
  it('is measured along its aim and aside, in the wind of the day, with where it is from', () => {
    const { session, isPlain } = offered(FULL);
    expect(isPlain).toBe(true);
    // by hand: aimed due east, 70 m along, 4 m to the south, which is right
    expect(session).toEqual({
      date: '2026-05-30',
      wind: { speed_mps: 4, from_deg: 200, height_m: 10 },
      bearing_deg: 90,
      note: 'from the round on Here, hole 1, throw 1',
      throws: [{ discId: 'mid', hand: 'backhand', shape: 'flat', power: 'full', distance_m: 70, side_m: 4 }],
    });
    expect(parsePlayer({ ...player, sessions: [...player.sessions, session!] }).ok).toBe(true);
  });

  it('without an aim only its distance is taken, along where it went', () => {
    const { session, isPlain } = offered({ discId: 'mid', power: 1, shape: 'flat', rest: { east_m: 0, north_m: 60 } });
    expect(isPlain).toBe(true);
    expect(session).toMatchObject({ bearing_deg: 0, throws: [{ distance_m: 60 }] });
    expect(session!.throws[0]!.side_m).toBeUndefined();
  });

  it('meets less wind on a wooded hole, and a rise where heights are mapped', () => {
    const terrain = slopedTerrain(0.05, 0);
    const { session } = offered(FULL, { exposureOf: () => 'wood', maps: [bareHole({ basket: [80, 0], terrain })] });
    // both profiles at 4 m, about where discs fly (own choice of the planner)
    const share = windRatioAt(windProfile('wood'), 4) / windRatioAt(windProfile('open'), 4);
    expect(Math.abs(session!.wind!.speed_mps - 4 * share)).toBeLessThan(0.051);
    // by hand: 70 m at 5 %
    expect(Math.abs(session!.rise_m! - 3.5)).toBeLessThan(0.051);
  });

  it.each([
    { what: 'no disc', t: { rest: FULL.rest }, why: 'disc was not written' },
    { what: 'a disc of somebody else', t: { ...FULL, discId: 'brick' }, why: 'no disc of' },
    { what: 'a putt', t: { ...FULL, shape: 'putt' }, why: 'a putt' },
    { what: 'the putting putter', t: { ...FULL, discId: 'putt' }, why: 'a putt' },
    { what: 'a roller without its aim', t: { ...FULL, shape: 'roller', aimBearing_deg: undefined }, why: 'a roller' },
    { what: 'an overhead without its power', t: { ...FULL, shape: 'overhead', power: undefined }, why: 'an overhead' },
    { what: 'a tree', t: { ...FULL, hit: true }, why: 'stopped' },
    { what: 'an ace', t: { discId: 'mid', holed: true }, why: 'went in' },
    { what: 'a distance without a side', t: { ...FULL, rest: { toBasket_m: 9 } }, why: 'only its distance' },
    { what: 'a short one', t: { ...FULL, rest: { east_m: 12, north_m: 0 } }, why: 'shorter' },
    { what: 'no place', t: { ...FULL, rest: undefined, lie: { toBasket_m: 3 } }, why: 'where it came to rest' },
  ] as const)('$what is no measure of the disc: $why', ({ t, why }) => {
    const own = offered(t as RoundThrow);
    expect(own.session).toBeNull();
    expect(own.why).toContain(why);
  });

  it('is offered but not ticked where the power or the line was not written', () => {
    for (const { power, shape, ...rest } of [FULL]) {
      expect(offered({ ...rest, ...(shape && { shape }) }).isPlain).toBe(false);
      expect(offered({ ...rest, ...(power && { power }) }).isPlain).toBe(false);
      expect(offered({ ...FULL, power: 0.8 }).isPlain).toBe(false);
      expect(offered({ ...FULL, power: 0.8 }).session!.throws[0]!.power).toBe(0.8);
    }
  });

  it('is offered as a roller or an overhead throw with a side, not ticked: it counts among those only', () => {
    const { session, isPlain, why } = offered({ ...FULL, shape: 'roller' });
    expect(isPlain).toBe(false);
    expect(why).toContain('among those only');
    expect(session!.throws[0]).toMatchObject({ shape: 'roller', power: 'full', distance_m: 70, side_m: 4 });
  });

  it('is not offered twice', () => {
    const { session } = offered(FULL);
    const again = offered(FULL, { player: { ...player, sessions: [...player.sessions, session!] } });
    expect(again).toMatchObject({ session: null, why: 'stands in the fieldwork already' });
  });
});

describe('what throws would change', () => {
  it('puts discs with new throws first, and those known only before or after beside them', () => {
    const before = inventedPlayer({ arm_mps: 23, discs: [BAG[0]!, BAG[1]!] });
    const after = inventedPlayer({ arm_mps: 24, discs: [BAG[1]!, BAG[3]!] });
    const changes = fitChange(before, after, [{ discId: BAG[3]!.id, hand: 'backhand' }]);
    expect(changes.map(({ discId, added, before, after }) => [discId, added, before !== null, after !== null])).toEqual(
      [
        [BAG[3]!.id, 1, false, true],
        [BAG[1]!.id, 0, true, true],
        [BAG[0]!.id, 0, true, false],
      ],
    );
  });
});
