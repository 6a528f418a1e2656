import { SHAPE_HYZER_DEG } from './disc-fit.ts';
import { FEWEST_SPECIAL_THROWS } from './fitted-player.ts';
import { isUsableForFit, type PlayerFile } from './player-file.ts';
import { specialRecords } from './special-record.ts';

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
    ...(special > 0
      ? [
          `${special} rollers and overhead throws say nothing about your arm: each kind is fitted on its own, by disc and hand, from ${FEWEST_SPECIAL_THROWS} throws on with their sideways finish, to plainer models that were not checked against measured throws`,
        ]
      : []),
    ...handsMissing(file),
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

/** Special throws written for a hand from which nothing else was thrown: there is no arm to fit them with. */
function handsMissing(file: PlayerFile): string[] {
  return (['backhand', 'forehand'] as const).flatMap(hand => {
    const own = specialRecords(file).filter(record => record.hand === hand);
    const isArmKnown = file.sessions.some(({ throws }) => throws.some(t => t.hand === hand && isUsableForFit(t)));
    if (own.length === 0 || isArmKnown) return [];
    const written = own.reduce((sum, record) => sum + record.written, 0);
    return [
      `${written} rollers and overhead throws are written down as ${hand}, but no other ${hand} throw: measure one disc thrown flat, or correct the hand`,
    ];
  });
}
