/** The parts of the app, by the name in the address. */
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
