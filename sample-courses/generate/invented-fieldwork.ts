import { atArmSpeed, type FlightKindName, flightKinds } from './arm-and-wind-tables.ts';
import type { Disc, Putts, Session, Throw } from './player-file.ts';
import type { SeededRandom } from './seeded-random.ts';

/** What is true of a disc from this player's hand, backhand, flat, full power, calm and level: mean at rest. */
export type Habit = Readonly<{ disc: Disc; kind: FlightKindName; distance_m: number; side_m: number }>;

export type Thrower = Readonly<{
  arm_mps: number;
  /** Forehand distance as a share of backhand distance. */
  forehand: number;
  /** Standard deviation of distance and of finish, as shares of the distance, for a disc of a trade speed. */
  scatter: (discSpeed: number) => number;
}>;

/** Some throws alike: so many of one disc, hand, shape and power. */
export type Batch = Readonly<{
  discId: string;
  hand: Throw['hand'];
  shape: Throw['shape'];
  power: Throw['power'];
  count: number;
}>;
export type SessionPlan = Omit<Session, 'throws'> & Readonly<{ batches: readonly Batch[] }>;

/** The winds of the tables. */
const TABLE_WIND_MPS = 5;
/** A throw at an angle, kept on it: share of the distance it loses and finishes to the disc's fading side. Invented. */
const shapes = {
  flat: { loss: 0, fade: 0 },
  hyzer: { loss: 0.08, fade: 0.25 },
  anhyzer: { loss: 0.05, fade: -0.2 },
} as const;
/** Good and bad days, as a share of the distance. */
const DAY_SD = 0.01;

/** Throws of a session, each with its own scatter. */
export function inventSession(
  plan: SessionPlan,
  habits: readonly Habit[],
  thrower: Thrower,
  random: SeededRandom,
): Session {
  const { batches, ...session } = plan;
  const day = 1 + DAY_SD * random.normal();
  const throws = batches.flatMap(({ count, ...batch }) => {
    const habit = habits.find(h => h.disc.id === batch.discId);
    if (!habit) throw new RangeError(`no habit for disc ${batch.discId}`);
    const mean = meanThrow(batch, habit, thrower, session);
    const sd_m = mean.distance_m * thrower.scatter(habit.disc.speed);
    return Array.from(
      { length: count },
      (): Throw => ({
        ...batch,
        distance_m: tenth(mean.distance_m * day + sd_m * random.normal()),
        side_m: tenth(mean.side_m + sd_m * random.normal()),
      }),
    );
  });
  return { ...session, throws };
}

/** The mean of a batch in its session's wind and slope; side right positive. */
function meanThrow(batch: Omit<Batch, 'count'>, habit: Habit, thrower: Thrower, session: Omit<Session, 'throws'>) {
  const kind = flightKinds[habit.kind];
  const power = batch.power === 'full' ? 1 : batch.power;
  const byPower = (column: readonly number[]) => atArmSpeed(column, thrower.arm_mps * power);
  // forehand is the mirror image: what moves a backhand left moves it right
  const mirror = batch.hand === 'forehand' ? -1 : 1;
  const calm_m =
    habit.distance_m *
    (byPower(kind.carry_m) / atArmSpeed(kind.carry_m, thrower.arm_mps)) *
    (mirror < 0 ? thrower.forehand : 1);
  const reach = calm_m / habit.distance_m;
  const straightLeft_m = -habit.side_m * reach + (byPower(kind.left_m) - atArmSpeed(kind.left_m, thrower.arm_mps));
  const shape = shapes[batch.shape];

  const angle = ((session.wind.from_deg - session.bearing_deg) * Math.PI) / 180;
  const head = (session.wind.speed_mps * Math.cos(angle)) / TABLE_WIND_MPS;
  const fromRight = (session.wind.speed_mps * Math.sin(angle)) / TABLE_WIND_MPS;
  const windShare = head >= 0 ? kind.head * head : -kind.tail * head;
  const curve_m = reach * (head >= 0 ? kind.headLeft_m * head : -kind.tailLeft_m * head);
  // a mirrored throw meets wind from the right as the other meets wind from the left
  const crossColumn = fromRight * mirror >= 0 ? kind.fromRightLeft_m : -kind.fromLeftLeft_m;
  const cross_m = reach * crossColumn * fromRight;

  const distance_m = calm_m * (1 + windShare) * (1 - shape.loss) - kind.perRise * session.rise_m;
  return { distance_m, side_m: -(mirror * (straightLeft_m + curve_m + shape.fade * calm_m) + cross_m) };
}

/** A slip of the grip: short, and far out to the side the arm swings to. */
export function gripSlip(t: Throw, rightHanded: boolean, random: SeededRandom): Throw {
  const late = (rightHanded ? 1 : -1) * (t.hand === 'backhand' ? 1 : -1);
  return {
    ...t,
    distance_m: tenth(t.distance_m * random.between(0.55, 0.72)),
    side_m: tenth(late * random.between(26, 38)),
  };
}

/** Practised putts: half are made at `half_m`; `steepness` says how fast the share falls. */
export function inventPutting(
  rows: readonly (readonly [distance_m: number, attempts: number])[],
  half_m: number,
  steepness: number,
  random: SeededRandom,
): Putts[] {
  return rows.map(([distance_m, attempts]) => {
    const chance = 1 / (1 + (distance_m / half_m) ** steepness);
    const makes = Array.from({ length: attempts }, () => random.between(0, 1) < chance).filter(Boolean).length;
    return { distance_m, attempts, makes };
  });
}

const tenth = (value: number) => Number(value.toFixed(1));
