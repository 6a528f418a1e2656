import { fitPlayer } from '../../core/player/fit-player.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import { parsePlayer } from '../../core/player/player-file.ts';
import { type InventedDisc, inventPlayer } from '../core/player/synthetic-player.ts';

/** An invented bag: two putters to throw, two midranges, a low-speed, a control and a distance driver. */
export const WHOLE_BAG: readonly InventedDisc[] = [
  { id: 'saucer', name: 'Saucer', speed: 2, glide: 3, turn: 0, fade: 1, throws: 40 },
  { id: 'thimble', name: 'Thimble', speed: 3, glide: 4, turn: -0.5, fade: 0.5, throws: 40 },
  { id: 'kettle', name: 'Kettle', speed: 5, glide: 5, turn: -1, fade: 1, throws: 40 },
  { id: 'mallet', name: 'Mallet', speed: 5, glide: 4, turn: 0, fade: 2.5, throws: 40 },
  { id: 'ferry', name: 'Ferry', speed: 7, glide: 5, turn: -1, fade: 1.5, throws: 40 },
  { id: 'lighthouse', name: 'Lighthouse', speed: 9, glide: 5, turn: -1, fade: 2, throws: 40 },
  { id: 'meteor', name: 'Meteor', speed: 12, glide: 5, turn: -1, fade: 3, throws: 40 },
];

/** Slower discs land tighter, as players see: invented, three quarters of the typical scatter for a putter to a third more for the fastest. */
const scatterOf = (discSpeed: number) => 0.65 + 0.055 * discSpeed;

type Fieldwork = Readonly<{
  arm_mps: number;
  seed: number;
  discs?: readonly InventedDisc[];
  handedness?: 'right' | 'left';
}>;

/** The player as a user has one: fieldwork of scattered flights written to a file, read and fitted. */
export function fieldworkPlayer({ arm_mps, seed, discs = WHOLE_BAG, handedness = 'right' }: Fieldwork): FittedPlayer {
  const parts = discs.map((disc, i) => {
    const scatter = scatterOf(disc.speed);
    return inventPlayer({
      seed: 100 * seed + i,
      arm_mps,
      discs: [disc],
      longScatter: scatter,
      sideScatter: scatter,
      speedSpread: 0.01,
      stabilitySpread: 0.3,
      handedness,
    }).file;
  });
  const parsed = parsePlayer({
    name: `Invented ${seed}`,
    handedness,
    discs: parts.flatMap(part => part.discs),
    sessions: parts.flatMap(part => part.sessions),
    putting: [
      { distance_m: 3, attempts: 60, makes: 58 },
      { distance_m: 6, attempts: 60, makes: 45 },
      { distance_m: 9, attempts: 60, makes: 24 },
      { distance_m: 14, attempts: 40, makes: 5 },
    ],
  });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return fitPlayer(parsed.value);
}
