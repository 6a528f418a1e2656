import { useSyncExternalStore } from 'react';

export const PLACES = {
  round: 'Round',
  compare: 'Two winds',
  sheet: 'Sheet',
  bag: 'Bag',
  fieldwork: 'Fieldwork',
  course: 'Course',
  practice: 'Practice',
  review: 'Review',
} as const;
export type Place = keyof typeof PLACES;

/** As they stand together: the plan, what it is made from, what comes of it. */
export const PLACE_GROUPS: Readonly<Record<string, readonly Place[]>> = {
  plan: ['round', 'compare', 'sheet'],
  known: ['bag', 'fieldwork', 'course'],
  played: ['practice', 'review'],
};

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
