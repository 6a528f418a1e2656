import type { PuttingCurve } from '../player/fitted-player.ts';
import { makeChance } from '../player/putting-curve.ts';
import { nameInText } from '../units/name-in-text.ts';
import type { OwnBest, PracticeHole } from './practice-hole.ts';
import { LESS_SPREAD, type PuttUse, type ThrowUse } from './throw-uses.ts';

/** Something to practise, most worth first. Plain sentences, metres. */
export type Drill = Readonly<{
  kind: 'throw' | 'putt' | 'distance';
  title: string;
  /** What to do and what to count. */
  text: string;
  /** The numbers behind it. */
  why: string;
  /** Throws a round it is worth. */
  worth: number;
}>;

const THROWS = 20;
const PUTTS = 30;
const MOST_DRILLS = 4;
const BUCKET_M = 15;
const LEAST_WORTH = 0.03;
/** Distances of putts that are practised together: from, to. */
const PUTT_BUCKETS_M = [
  [3, 6],
  [6, 10],
  [10, 20],
] as const;

/**
 * Drills from what the round loses most: the throws and putts whose scatter costs most, and the holes on which the limit gives up
 * most against the whole bag.
 * @param own - the same holes with the whole bag; fewer when they were not asked for
 */
export function drillsOf(holes: readonly PracticeHole[], own: readonly OwnBest[], putting: PuttingCurve): Drill[] {
  const drills = [...throwDrills(holes), ...puttDrills(holes, putting), ...limitDrills(holes, own)];
  return drills
    .filter(({ worth }) => worth >= LEAST_WORTH)
    .sort((a, b) => b.worth - a.worth)
    .slice(0, MOST_DRILLS);
}

function throwDrills(holes: readonly PracticeHole[]): Drill[] {
  const groups = new Map<string, ThrowUse[]>();
  for (const use of holes.flatMap(({ throwUses }) => throwUses)) {
    const key = `${use.discId} ${use.hand} ${use.shape} ${Math.round(use.distance_m / BUCKET_M)}`;
    groups.set(key, [...(groups.get(key) ?? []), use]);
  }
  return [...groups.values()].map((uses): Drill => {
    const { disc, hand, shape } = uses[0]!;
    const often = sumOf(uses, use => use.aPlay);
    const mean = (of: (use: ThrowUse) => number) => sumOf(uses, use => use.aPlay * of(use)) / often;
    const distance_m = mean(use => use.distance_m);
    const half_m = halfWithin_m(
      mean(use => use.distanceSd_m),
      mean(use => use.sideSd_m),
    );
    const worth = sumOf(uses, use => use.saving);
    const line = hand === 'forehand' ? `forehand, ${shape}` : shape;
    return {
      kind: 'throw',
      title: `${nameInText(disc)}, ${line}, ${distance_m.toFixed(0)} m`,
      text: `${THROWS} throws at a mark ${distance_m.toFixed(0)} m away. ${uses.some(use => use.isMeasured) ? 'By your fieldwork' : 'As predicted (you have not measured it)'} half of them, ${THROWS / 2}, rest within ${half_m.toFixed(0)} m of the middle of them all: work towards ${Math.round(THROWS * LESS_SPREAD_SHARE)}.`,
      why: `The round asks for it ${often.toFixed(1)} times; a fifth less spread would save ${worth.toFixed(2)} throws a round.`,
      worth,
    };
  });
}

/** Share of throws inside the circle that holds half of them now, with a fifth less spread: 1 − 2^(−1/0.8²). */
const LESS_SPREAD_SHARE = 1 - 0.5 ** (1 / LESS_SPREAD ** 2);

/**
 * Radius round the mean that holds half of the throws.
 * @source circular error probable, linear approximation 0.562·σ_large + 0.615·σ_small, good to some per cent for ratios above 0.3
 * (from memory; checked by sampling in the tests)
 */
export function halfWithin_m(along_m: number, side_m: number): number {
  return 0.562 * Math.max(along_m, side_m) + 0.615 * Math.min(along_m, side_m);
}

function puttDrills(holes: readonly PracticeHole[], putting: PuttingCurve): Drill[] {
  const uses = holes.flatMap(({ puttUses }) => puttUses);
  return PUTT_BUCKETS_M.flatMap(([from_m, to_m]): Drill[] => {
    const some: PuttUse[] = uses.filter(({ distance_m }) => distance_m >= from_m && distance_m < to_m);
    const often = sumOf(some, use => use.aPlay);
    if (often === 0) return [];
    const distance_m = Math.round(sumOf(some, use => use.aPlay * use.distance_m) / often);
    const [now, then] = [makeChance(putting, distance_m), makeChance(putting, distance_m * LESS_SPREAD)];
    const worth = sumOf(some, use => use.saving);
    return [
      {
        kind: 'putt',
        title: `Putts from ${distance_m} m`,
        text: `${PUTTS} putts from ${distance_m} m. ${putting.basis === 'predicted' ? 'By an assumed curve (you have no putting log)' : 'By your putting log'} about ${Math.round(PUTTS * now)} go in: work towards ${Math.round(PUTTS * then)}.`,
        why: `The round leaves ${often.toFixed(1)} first putts from ${from_m} to ${to_m} m; a fifth less spread would save ${worth.toFixed(2)} throws a round.`,
        worth,
      },
    ];
  });
}

/** The hole where the limit costs most: the throw to learn for it. */
function limitDrills(holes: readonly PracticeHole[], own: readonly OwnBest[]): Drill[] {
  const costs = own
    .flatMap(best => {
      const hole = holes.find(({ ref }) => ref === best.ref);
      return hole === undefined ? [] : [{ hole, best, cost: hole.plannedThrows - best.expectedThrows }];
    })
    .sort((a, b) => b.cost - a.cost);
  const dearest = costs[0];
  if (dearest === undefined || dearest.cost < LEAST_LIMIT_COST) return [];
  const { hole, best, cost } = dearest;
  const short_m = hole.playLength_m - hole.shot.distance_m;
  const reach =
    short_m > 5
      ? `it leaves ${short_m.toFixed(0)} m where ${nameInText(best.shot.disc)} would leave ${Math.max(0, hole.playLength_m - best.shot.distance_m).toFixed(0)} m`
      : `${percentOf(hole.shot.within10mChance)} of them end within 10 m, ${percentOf(best.shot.within10mChance)} with ${nameInText(best.shot.disc)}`;
  return [
    {
      kind: 'distance',
      title: `The tee throw of hole ${hole.ref}: ${nameInText(hole.shot.disc)}, ${hole.shot.shape}${hole.shot.hand === 'forehand' ? ', forehand' : ''}`,
      text: `${THROWS} throws along the line of hole ${hole.ref} on an open field, ${hole.shot.distance_m.toFixed(0)} m and straight first, longer after. Write them down as fieldwork.`,
      why: `Here the limit costs most, ${cost.toFixed(1)} throws against your whole bag: ${reach}.`,
      worth: cost,
    },
  ];
}

const LEAST_LIMIT_COST = 0.1;

const percentOf = (chance: number) => `${Math.round(100 * chance)} %`;

function sumOf<T>(items: readonly T[], of: (item: T) => number): number {
  return items.reduce((sum, item) => sum + of(item), 0);
}
