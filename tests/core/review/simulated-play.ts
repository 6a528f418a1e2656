import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { normalSamples } from '../../../core/flight/normal-samples.ts';
import type { RoundHole, RoundThrow } from '../../../core/review/round-file.ts';
import type { Candidate, Choice, Table } from '../../../core/strategy/choose-shot.ts';
import { chooseShot, NEXT_EFFORT } from '../../../core/strategy/choose-shot.ts';
import { type Lie, RESULT } from '../../../core/strategy/march.ts';
import type { PlannedHole } from '../../../core/strategy/plan-hole.ts';
import { puttingCell } from '../../../core/strategy/putting-value.ts';
import { shotOutcome } from '../../../core/strategy/shot-outcome.ts';
import { distanceToBasket } from '../../../core/strategy/value-field.ts';
import { groundAt } from '../../../core/strategy/world.ts';
import { puttFromOrThrow } from './putt-or-throw.ts';

export type Random = () => number;
export function seeded(seed: number): Random {
  const generator = xoroshiro128plus(seed);
  return () => uniformFloat64(generator);
}

const SAMPLES = 2048;
/** Throws of the simulated player: not the ones any plan was made on. */
const normals = normalSamples(SAMPLES, 777_001);
const TEE: Lie = { east_m: 0, north_m: 0, ground_m: 0 };
/** The putting chain of the plan: six in ten misses stay within 1.5 m, the rest roll 2 m plus a quarter of the putt. */
const CLOSE_SHARE = 0.6;
const CLOSE_M = 1.5;

/** What the player throws from a lie; the tee comes with the plan's choice. */
export type Chooses = (choice: Choice, isTee: boolean) => Candidate;

/** One hole played by the modelled player, as a round file would hold it. */
export function playHole({ solved, choice, plan }: PlannedHole, chooses: Chooses, random: Random): RoundHole {
  const { table } = solved;
  const throws: RoundThrow[] = [];
  let lie: Lie = TEE;
  while (throws.length < 12) {
    const isTee = lie === TEE;
    const d = distanceToBasket(table.field, lie.east_m, lie.north_m);
    const search = isTee ? choice : d > 10 ? chooseShot(table, lie, NEXT_EFFORT) : null;
    if (search === null || (!isTee && puttFromOrThrow(table, lie, search) === 'putt')) {
      const putted = putt(table, d, random);
      throws.push(putted.t);
      if (putted.next === null) return { ref: plan.ref, throws };
      lie = putted.next;
      continue;
    }
    const meant = chooses(search, isTee);
    const thrown = throwFrom(table, lie, meant, random);
    throws.push(thrown.t);
    if (thrown.next === null) return { ref: plan.ref, throws };
    lie = thrown.next;
  }
  throw new Error('the simulated player does not get there');
}

function putt(table: Table, d: number, random: Random): { t: RoundThrow; next: Lie | null } {
  if (random() < table.field.putting.make[puttingCell(table.field.putting, d)]!)
    return { t: { shape: 'putt', holed: true }, next: null };
  const left_m = random() < CLOSE_SHARE ? CLOSE_M : 2 + 0.25 * d;
  const turn = 2 * Math.PI * random();
  const [x, y] = table.field.basket;
  const next = lieAt(table, x + left_m * Math.sin(turn), y + left_m * Math.cos(turn));
  return { t: { shape: 'putt', rest: { east_m: next.east_m, north_m: next.north_m } }, next };
}

function throwFrom(table: Table, lie: Lie, { shot, aim_deg }: Candidate, random: Random) {
  const { world, thrower, field } = table;
  const row = Math.floor(random() * SAMPLES);
  const { ends } = shotOutcome(thrower, field, shot, lie, aim_deg, normals, row, 1, world.dropZone, 0);
  const drawn = random();
  const upTo = ends.map((_, i) => ends.slice(0, i + 1).reduce((sum, one) => sum + one.weight, 0));
  const end =
    ends[
      Math.max(
        0,
        upTo.findIndex(sum => drawn < sum),
      )
    ]!;
  const next = Number.isNaN(end.nextX_m) ? lie : lieAt(table, end.nextX_m, end.nextY_m);
  const { throwIndex, ...line } = shot;
  const fitted = table.player.throws[throwIndex]!;
  const t: RoundThrow = {
    discId: fitted.discId,
    hand: fitted.hand,
    ...line,
    aimBearing_deg: aim_deg,
    ...(end.kind === RESULT.holed ? { holed: true } : { rest: { east_m: end.x_m, north_m: end.y_m } }),
    ...(end.penalty > 0 && {
      lie: { east_m: next.east_m, north_m: next.north_m },
      penalties: [{ kind: kindOf(end.kind) }],
    }),
  };
  return { t, next: end.kind === RESULT.holed ? null : next };
}

function kindOf(kind: number) {
  if (kind === RESULT.lost) return 'lost' as const;
  if (kind === RESULT.mando) return 'mando' as const;
  return kind === RESULT.hazard ? ('hazard' as const) : ('out-of-bounds' as const);
}

const lieAt = ({ world }: Table, east_m: number, north_m: number): Lie => ({
  east_m,
  north_m,
  ground_m: groundAt(world, east_m, north_m),
});
