import { SHAPE_HYZER_DEG } from './disc-fit.ts';
import type { PlayerFile } from './player-file.ts';

/** What was assumed about a player's file, in plain sentences. */
export function fileNotes(file: PlayerFile): string[] {
  const throws = file.sessions.flatMap(session => session.throws);
  const count = (accept: (t: (typeof throws)[number]) => boolean) => throws.filter(accept).length;
  const part = count(t => t.power === 'part');
  const special = count(t => t.shape === 'roller' || t.shape === 'overhead');
  const shaped = count(t => t.shape === 'hyzer' || t.shape === 'anhyzer');
  const sideless = count(t => t.side_m === undefined);
  return [
    ...(part > 0 ? [`${part} throws at part power without a number say nothing about your arm and were left out`] : []),
    ...(special > 0 ? [`${special} rollers and overhead throws were left out: they are not modelled`] : []),
    ...(shaped > 0
      ? [
          `${shaped} shaped throws: hyzer taken as ${SHAPE_HYZER_DEG.hyzer}° and anhyzer as ${-SHAPE_HYZER_DEG.anhyzer}° of tilt (assumed), so their sideways finish counts little`,
        ]
      : []),
    ...(sideless > 0 ? [`${sideless} throws have no sideways finish: it was not measured, not taken as 0`] : []),
    ...(file.putting === undefined || file.putting.length === 0
      ? ['no putting log: make chances are an assumed, careful default (half from 6 m)']
      : []),
  ];
}
