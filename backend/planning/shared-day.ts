import { type FlownRoom, sharedFlownRoom, sharedWindRooms, type WindRooms } from '../../core/strategy/day-libraries.ts';
import { libraryKey, type RoundSetting, windKey } from './plan-task.ts';

/** Memory in which all threads keep a day's flights: flown once, by whoever is free. */
export type SharedDay = Readonly<{ flown: FlownRoom; bins: WindRooms }>;

/** The last day's only: flights and their paths in one wind are tens of megabytes. */
let flown: Readonly<{ key: string; room: FlownRoom }> | null = null;
let bins: Readonly<{ key: string; rooms: WindRooms }> | null = null;

/** The same memory for rounds that need the same flights, fresh memory for others. */
function sharedDay(round: Omit<RoundSetting, 'shared'>): SharedDay {
  const { player, day, limits } = round;
  const [flights, wind] = [libraryKey(round), windKey(round)];
  if (flown?.key !== flights) flown = { key: flights, room: sharedFlownRoom(player, day, limits) };
  if (bins?.key !== wind) bins = { key: wind, rooms: sharedWindRooms(player, day, limits) };
  return { flown: flown.room, bins: bins.rooms };
}

/** A task for a thread, with the memory its round shares. */
export function withSharedDay<T extends Readonly<{ round: RoundSetting }>>(task: T): T {
  return { ...task, round: { ...task.round, shared: sharedDay(task.round) } };
}
