import type { Day } from '../air/day.ts';
import { type Exposure, windProfile, windRatioAt } from '../air/wind-profile.ts';
import type { HoleMap, LocalPoint } from '../geometry/hole-map.ts';
import { groundHeight } from '../geometry/terrain.ts';
import type { FieldSession, PlayerFile } from '../player/player-file.ts';
import { holeLies, type LieToLie } from './hole-lies.ts';
import type { RoundFile, RoundThrow } from './round-file.ts';

/** One throw of a round as fieldwork would hold it, or why it cannot. */
export type OfferedThrow = Readonly<{
  /** `1.2`: hole 1, throw 2. */
  key: string;
  ref: string;
  number: number;
  discId: string | null;
  /** As it would be added; null when it is no measure of the disc. */
  session: FieldSession | null;
  /** Ticked at first: full power was written and nothing speaks against it. */
  isPlain: boolean;
  /** Why not, or what to look at before taking it. */
  why: string;
}>;

const DEGREE = Math.PI / 180;
/** About where discs fly: there the sheltered wind of a hole is compared with that of open ground. */
const FLIGHT_HEIGHT_M = 4;
/** A shorter throw says nothing about the arm. */
const SHORTEST_M = 20;
const STEEPEST_GRADE = 0.5;

type Parts = Readonly<{
  round: RoundFile;
  maps: readonly HoleMap[];
  player: PlayerFile;
  /** The air it was thrown in, as it turned out. */
  day: Day;
  /** How each hole is sheltered, from its review. */
  exposureOf: (ref: string) => Exposure;
  course: string;
}>;

/**
 * Every throw of a round looked at as fieldwork. Throws whose aim was written are measured along it and aside; of the others only
 * the distance is taken. Each is a session of its own: its wind stands otherwise to each throw.
 */
export function roundFieldwork(parts: Parts): OfferedThrow[] {
  const { round, maps } = parts;
  return round.holes.flatMap(({ ref, throws }) => {
    const map = maps.find(own => own.ref === ref);
    if (map === undefined) return [];
    const lies = holeLies(map, throws);
    return throws.map((t, i) => offered(parts, map, t, lies[i]!, i + 1));
  });
}

/** @returns the sentence by which a throw of a round is known again in the fieldwork */
function roundNote(course: string, ref: string, number: number): string {
  return `from the round on ${course}, hole ${ref}, throw ${number}`;
}

const ARTICLE = { roller: 'a', overhead: 'an' } as const;

function offered(parts: Parts, map: HoleMap, t: RoundThrow, { from, rest }: LieToLie, number: number): OfferedThrow {
  const base = { key: `${map.ref}.${number}`, ref: map.ref, number, discId: t.discId ?? null };
  const none = (why: string): OfferedThrow => ({ ...base, session: null, isPlain: false, why });
  if (t.discId === undefined) return none('the disc was not written');
  const disc = parts.player.discs.find(({ id }) => id === t.discId);
  if (disc === undefined) return none(`"${t.discId}" is no disc of ${parts.player.name}`);
  if (t.shape === 'putt' || disc.role === 'putting') return none('a putt');
  const special = t.shape === 'roller' || t.shape === 'overhead' ? t.shape : null;
  if (special !== null && (t.aimBearing_deg === undefined || t.power === undefined))
    return none(`${ARTICLE[special]} ${special}: it counts only with its aim and power written`);
  if (t.hit) return none('something stopped it on the way');
  if (t.holed) return none('it went in');
  if (rest === null) return none('where it came to rest was not written');
  if (t.rest !== undefined && 'toBasket_m' in t.rest && t.rest.side_m === undefined && t.rest.toBasket_m > 0)
    return none('only its distance to the basket is known, not where it lay');
  const session = sessionOf(parts, map, t, t.discId, from, rest, number);
  const thrown_m = session.throws[0]!.distance_m;
  if (thrown_m < SHORTEST_M) return none(`shorter than ${SHORTEST_M} m`);
  const known = parts.player.sessions.some(
    own => own.date === session.date && own.note === session.note && own.throws.some(u => u.discId === t.discId),
  );
  if (known) return none('stands in the fieldwork already');
  const doubts = [
    ...(special === null
      ? []
      : [`${ARTICLE[special]} ${special}: it counts among those only, which are fitted on their own`]),
    ...(t.power === undefined ? ['power not written: take it only if it was a full throw'] : []),
    ...(t.power !== undefined && t.power < 1 ? ['part power: its speed is taken in proportion'] : []),
    ...(t.shape === undefined ? ['line not written: taken as flat'] : []),
    ...(t.aimBearing_deg === undefined ? ['aim not written: only its distance is taken'] : []),
  ];
  return {
    ...base,
    session,
    isPlain: t.power === 1 && t.shape !== undefined && special === null,
    why: doubts.join('; '),
  };
}

function sessionOf(
  { round, day, exposureOf, course }: Parts,
  map: HoleMap,
  t: RoundThrow,
  discId: string,
  from: LocalPoint,
  rest: LocalPoint,
  number: number,
): FieldSession {
  const [dx, dy] = [rest[0] - from[0], rest[1] - from[1]];
  const away_m = Math.hypot(dx, dy);
  const bearing_deg = wrapped_deg(t.aimBearing_deg ?? Math.atan2(dx, dy) / DEGREE);
  const [sin, cos] = [Math.sin(bearing_deg * DEGREE), Math.cos(bearing_deg * DEGREE)];
  const along_m = dx * sin + dy * cos;
  const right_m = dx * cos - dy * sin;
  const isAimKnown = t.aimBearing_deg !== undefined && along_m > 0;
  const distance_m = tenth(isAimKnown ? along_m : away_m);
  const rise_m = groundHeight(map.terrain, rest[0], rest[1]) - groundHeight(map.terrain, from[0], from[1]);
  const share =
    windRatioAt(windProfile(exposureOf(map.ref)), FLIGHT_HEIGHT_M) / windRatioAt(windProfile('open'), FLIGHT_HEIGHT_M);
  const { shape = 'flat', power = 1 } = t;
  return {
    date: round.date,
    wind: { speed_mps: tenth(day.wind.speed_mps * share), from_deg: Math.round(day.wind.from_deg), height_m: 10 },
    bearing_deg: tenth(bearing_deg) % 360,
    ...(map.terrain.known &&
      Math.abs(rise_m) <= STEEPEST_GRADE * distance_m && {
        rise_m: tenth(rise_m),
      }),
    note: roundNote(course, map.ref, number),
    throws: [
      {
        discId,
        hand: t.hand ?? 'backhand',
        shape: shape === 'putt' ? 'flat' : shape,
        power: power === 1 ? 'full' : power,
        distance_m,
        ...(isAimKnown && { side_m: tenth(right_m) }),
      },
    ],
  };
}

const wrapped_deg = (bearing_deg: number) => ((bearing_deg % 360) + 360) % 360;
const tenth = (value: number) => Math.round(value * 10) / 10 + 0;
