import { withSpecials } from '../../../core/player/fit-special.ts';
import type { FittedPlayer } from '../../../core/player/fitted-player.ts';
import { parsePlayer } from '../../../core/player/player-file.ts';
import { BAG, inventedPlayer, type Numbers } from './invented-player.ts';

type Landing = readonly [distance_m: number, side_m: number];
type Special = Readonly<{ discId: string; shape: 'roller' | 'overhead'; landings: readonly Landing[] }>;

/** Eight invented rollers of an understable driver. */
export const ROLLERS: readonly Landing[] = [
  [78, 4],
  [86, 8],
  [70, 2],
  [90, 11],
  [82, 6],
  [74, -1],
  [84, 7],
  [80, 5],
];
/** Seven invented overhead throws. */
export const OVERHEADS: readonly Landing[] = [
  [51, -12],
  [62, -3],
  [54, -9],
  [65, 0],
  [57, -13],
  [49, -6],
  [61, 1],
];

/** A player known exactly on the flat, with rollers and overhead throws fitted from a few invented throws. */
export function specialPlayer(
  arm_mps: number,
  specials: readonly Special[],
  discs: readonly Numbers[] = BAG,
): FittedPlayer {
  const known = inventedPlayer({ arm_mps, discs });
  const parsed = parsePlayer({
    name: known.name,
    handedness: known.handedness,
    discs: discs.map(({ id, ...numbers }) => ({ id, name: id, ...numbers })),
    sessions: [
      {
        throws: [
          { discId: discs[0]!.id, distance_m: 50, side_m: 0 },
          ...specials.flatMap(({ discId, shape, landings }) =>
            landings.map(([distance_m, side_m]) => ({ discId, shape, distance_m, side_m })),
          ),
        ],
      },
    ],
  });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return { ...known, throws: withSpecials(parsed.value, known.throws) };
}
