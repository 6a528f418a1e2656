import { newerPlayer } from './newer-player.ts';
import { oldOrchard } from './old-orchard.ts';
import { ridgeAndReservoir } from './ridge-and-reservoir.ts';
import { samplePlayer } from './sample-player.ts';
import { sampleRound } from './sample-round.ts';
import { shortNine } from './short-nine.ts';

/** Every sample file by name, and its text as it must be. */
export const samples = (): readonly Readonly<{ file: string; text: string }>[] => [
  { file: 'short-nine.geojson', text: shortNine() },
  { file: 'old-orchard.geojson', text: oldOrchard() },
  { file: 'ridge-and-reservoir.geojson', text: ridgeAndReservoir() },
  { file: 'sample-player.json', text: samplePlayer() },
  { file: 'newer-player.json', text: newerPlayer() },
  { file: 'sample-round.json', text: sampleRound() },
];
