import type { Hand } from '../flight/release.ts';
import type { SurfaceName } from '../geometry/hole-map.ts';
import { airInThrowFrame } from './fieldwork.ts';
import { SPECIAL_SHAPES, type SpecialShape } from './fitted-player.ts';
import type { PlayerFile } from './player-file.ts';

/** Rollers or overhead throws made under the same conditions. */
export type SpecialGroup = Readonly<{
  /** Velocity of the air at 10 m in the throw frame (x along the throw, y left). */
  windX_mps: number;
  windY_mps: number;
  /** Rise per metre along the throw. */
  grade: number;
  surface: SurfaceName;
  /** Share of full release speed. */
  power: number;
  throws: readonly Readonly<{ along_m: number; left_m: number }>[];
}>;

/** All that was written down of one special shape of one disc from one hand. */
export type SpecialRecord = Readonly<{
  shape: SpecialShape;
  discId: string;
  hand: Hand;
  written: number;
  /** Those with a sideways finish and a known power: where a roller ends up to the side cannot be guessed. */
  counted: number;
  groups: readonly SpecialGroup[];
}>;

/** Every disc, hand and special shape with at least one throw written down. */
export function specialRecords(file: PlayerFile): SpecialRecord[] {
  const hands = ['backhand', 'forehand'] as const;
  return file.discs.flatMap(({ id }) =>
    hands.flatMap(hand => SPECIAL_SHAPES.map(shape => recordOf(file, id, hand, shape)).filter(r => r.written > 0)),
  );
}

function recordOf(file: PlayerFile, discId: string, hand: Hand, shape: SpecialShape): SpecialRecord {
  const groups = new Map<string, SpecialGroup & { throws: { along_m: number; left_m: number }[] }>();
  let written = 0;
  for (const session of file.sessions) {
    const air = airInThrowFrame(session);
    for (const t of session.throws) {
      if (t.discId !== discId || t.hand !== hand || t.shape !== shape) continue;
      written++;
      if (t.side_m === undefined || t.power === 'part') continue;
      const power = t.power === 'full' ? 1 : t.power;
      const surface = session.surface ?? 'turf';
      const rise_m = session.rise_m ?? 0;
      const key = [air.x_mps.toFixed(3), air.y_mps.toFixed(3), rise_m, surface, power].join(' ');
      const group = groups.get(key) ?? {
        windX_mps: air.x_mps,
        windY_mps: air.y_mps,
        grade: rise_m,
        surface,
        power,
        throws: [],
      };
      groups.set(key, group);
      group.throws.push({ along_m: t.distance_m, left_m: -t.side_m });
    }
  }
  const all = [...groups.values()].map(group => ({
    ...group,
    grade: group.grade / (group.throws.reduce((sum, t) => sum + t.along_m, 0) / group.throws.length),
  }));
  return {
    shape,
    discId,
    hand,
    written,
    counted: all.reduce((sum, { throws }) => sum + throws.length, 0),
    groups: all,
  };
}
