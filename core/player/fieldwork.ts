import { windAt10m } from '../air/wind-profile.ts';
import type { Hand } from '../flight/release.ts';
import type { SurfaceName } from '../geometry/hole-map.ts';
import { type FieldDisc, type FieldSession, isUsableForFit, type PlayerFile } from './player-file.ts';

/** Throws of one disc from one hand made under the same conditions. */
export type FieldGroup = Readonly<{
  /** Velocity of the air at 10 m in the throw frame (x along the throw, y left). */
  windX_mps: number;
  windY_mps: number;
  /** Rise per metre along the throw. */
  grade: number;
  surface: SurfaceName;
  shape: 'flat' | 'hyzer' | 'anhyzer';
  /** Share of full release speed. */
  power: number;
  throws: readonly Readonly<{ along_m: number; left_m: number | null; path: string }>[];
}>;

/** All that was measured of one disc from one hand. */
export type FieldRecord = Readonly<{
  disc: FieldDisc;
  discIndex: number;
  hand: Hand;
  groups: readonly FieldGroup[];
  /** Throws that can't tell the release speed: unknown power, rollers, overhead. */
  unused: number;
}>;

const HANDS: readonly Hand[] = ['backhand', 'forehand'];

/** Every disc from every hand that has at least one usable throw of some disc; bag order, backhand first. */
export function fieldRecords(file: PlayerFile): FieldRecord[] {
  const hands = HANDS.filter(hand => file.sessions.some(s => s.throws.some(t => t.hand === hand && isUsableForFit(t))));
  return file.discs.flatMap((disc, discIndex) => hands.map(hand => recordOf(file, disc, discIndex, hand)));
}

function recordOf(file: PlayerFile, disc: FieldDisc, discIndex: number, hand: Hand): FieldRecord {
  const groups = new Map<string, FieldGroup & { throws: { along_m: number; left_m: number | null; path: string }[] }>();
  let unused = 0;
  file.sessions.forEach((session, s) => {
    const air = airInThrowFrame(session);
    session.throws.forEach((t, i) => {
      if (t.discId !== disc.id || t.hand !== hand) return;
      if (!isUsableForFit(t) || t.shape === 'roller' || t.shape === 'overhead' || t.power === 'part') {
        unused++;
        return;
      }
      const power = t.power === 'full' ? 1 : t.power;
      const surface = session.surface ?? 'turf';
      const key = [air.x_mps.toFixed(3), air.y_mps.toFixed(3), session.rise_m ?? 0, surface, t.shape, power].join(' ');
      const group = groups.get(key) ?? {
        windX_mps: air.x_mps,
        windY_mps: air.y_mps,
        grade: session.rise_m ?? 0,
        surface,
        shape: t.shape,
        power,
        throws: [],
      };
      groups.set(key, group);
      group.throws.push({
        along_m: t.distance_m,
        left_m: t.side_m === undefined ? null : -t.side_m,
        path: `sessions[${s}].throws[${i}]`,
      });
    });
  });
  return {
    disc,
    discIndex,
    hand,
    unused,
    groups: [...groups.values()].map(group => ({
      ...group,
      grade: group.grade / (group.throws.reduce((sum, t) => sum + t.along_m, 0) / group.throws.length),
    })),
  };
}

/** From "blows from, clockwise from north" to the velocity of the air along and left of the throw, at 10 m. */
export function airInThrowFrame({ wind, bearing_deg }: FieldSession): { x_mps: number; y_mps: number } {
  if (wind === undefined || wind.speed_mps === 0 || bearing_deg === undefined) return { x_mps: 0, y_mps: 0 };
  const speed_mps = windAt10m({ speed_mps: wind.speed_mps, height_m: wind.height_m, exposure: 'open' });
  const fromRightOfAim = ((wind.from_deg - bearing_deg) * Math.PI) / 180;
  return { x_mps: -speed_mps * Math.cos(fromRightOfAim), y_mps: speed_mps * Math.sin(fromRightOfAim) };
}
