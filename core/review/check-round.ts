import { nearestStation } from '../geometry/along-line.ts';
import type { HoleMap } from '../geometry/hole-map.ts';
import type { PlayerFile } from '../player/player-file.ts';
import type { Problem } from '../units/result.ts';
import { placeOf } from './place-of.ts';
import type { Place, RoundFile } from './round-file.ts';

/** Nobody throws so far off a hole: a swapped longitude and latitude, or another hole's place. */
const FAR_OFF_M = 300;

/** What of a round does not fit its course and player: holes and discs that are not there, places far off the hole. */
export function checkRound(
  round: RoundFile,
  maps: readonly HoleMap[],
  player: Pick<PlayerFile, 'name' | 'discs'>,
): Problem[] {
  const discs = new Set(player.discs.map(({ id }) => id));
  // the bag is listed once, however many throws name a disc that is not in it
  let isListed = false;
  const unknownDisc = (discId: string) => {
    const list = isListed ? '' : `: ${[...discs].join(', ')}`;
    isListed = true;
    return `"${discId}" is no disc of ${player.name}${list}`;
  };
  return round.holes.flatMap(({ ref, throws }, h) => {
    const at = `holes[${h}]`;
    const map = maps.find(own => own.ref === ref);
    if (map === undefined)
      return [
        { path: `${at}.ref`, message: `the course has no hole "${ref}": ${maps.map(own => own.ref).join(', ')}` },
      ];
    return throws.flatMap((t, i) => {
      const path = `${at}.throws[${i}]`;
      const unknown =
        t.discId === undefined || discs.has(t.discId)
          ? []
          : [{ path: `${path}.discId`, message: unknownDisc(t.discId) }];
      return [...unknown, ...farOff(map, t.rest, `${path}.rest`), ...farOff(map, t.lie, `${path}.lie`)];
    });
  });
}

function farOff(map: HoleMap, place: Place | undefined, path: string): Problem[] {
  if (place === undefined) return [];
  const { at } = placeOf(map, place);
  const { distance_m } = nearestStation(map.line, at);
  if (distance_m <= FAR_OFF_M) return [];
  const away = distance_m < 2000 ? `${Math.round(distance_m)} m` : `${Math.round(distance_m / 1000)} km`;
  const swapped = 'lonLat' in place ? ': longitude comes first, then latitude' : ': check the place';
  return [{ path, message: `lies ${away} from the line of play of hole ${map.ref}${swapped}` }];
}
