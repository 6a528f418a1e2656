import { useSyncExternalStore } from 'react';
import { PLACES, type Place } from './places.ts';

const isPlace = (name: string): name is Place => Object.hasOwn(PLACES, name);
const read = (): Place => {
  const name = window.location.hash.slice(1);
  return isPlace(name) ? name : 'round';
};
const listen = (listener: () => void) => {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
};

export function goTo(place: Place): void {
  window.location.hash = place;
}

/** Which part of the app is shown; kept in the address, so a reload stays there. */
export const usePlace = (): Place => useSyncExternalStore(listen, read);
