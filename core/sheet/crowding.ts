/** How much a card carries; the first that fits is taken. */
export type Crowding = Readonly<{
  /** Of all type sizes. */
  scale: number;
  keepAway: number;
  next: number;
  instead: number;
  why: boolean;
  /** The least change of wind that changes the throw. */
  otherWind: boolean;
  side_mm: number;
  notes_mm: number;
}>;

/** From roomy to crowded. What to throw, how, how sure and the cautions are on all of them, whole. */
export const CROWDINGS: readonly Crowding[] = [
  { scale: 1, keepAway: 8, next: 3, instead: 3, why: true, otherWind: true, side_mm: 16, notes_mm: 9 },
  { scale: 1, keepAway: 6, next: 3, instead: 2, why: true, otherWind: true, side_mm: 14, notes_mm: 6 },
  { scale: 1, keepAway: 5, next: 3, instead: 1, why: true, otherWind: true, side_mm: 13, notes_mm: 4 },
  { scale: 1, keepAway: 4, next: 3, instead: 1, why: false, otherWind: true, side_mm: 12, notes_mm: 4 },
  { scale: 0.96, keepAway: 4, next: 2, instead: 1, why: false, otherWind: true, side_mm: 11, notes_mm: 3 },
  { scale: 0.92, keepAway: 3, next: 2, instead: 1, why: false, otherWind: true, side_mm: 10, notes_mm: 3 },
  { scale: 0.88, keepAway: 3, next: 2, instead: 1, why: false, otherWind: true, side_mm: 10, notes_mm: 2 },
  { scale: 0.88, keepAway: 2, next: 2, instead: 1, why: false, otherWind: true, side_mm: 9, notes_mm: 0 },
  { scale: 0.86, keepAway: 2, next: 1, instead: 1, why: false, otherWind: true, side_mm: 9, notes_mm: 0 },
  { scale: 0.84, keepAway: 2, next: 1, instead: 1, why: false, otherWind: false, side_mm: 9, notes_mm: 0 },
  { scale: 0.86, keepAway: 3, next: 2, instead: 1, why: false, otherWind: false, side_mm: 0, notes_mm: 0 },
  { scale: 0.83, keepAway: 2, next: 1, instead: 1, why: false, otherWind: false, side_mm: 0, notes_mm: 0 },
  { scale: 0.8, keepAway: 2, next: 1, instead: 1, why: false, otherWind: false, side_mm: 0, notes_mm: 0 },
  { scale: 0.77, keepAway: 2, next: 1, instead: 1, why: false, otherWind: false, side_mm: 0, notes_mm: 0 },
  { scale: 0.73, keepAway: 2, next: 1, instead: 1, why: false, otherWind: false, side_mm: 0, notes_mm: 0 },
];
