/** One thing the user did, and how to take it back and do it again. */
export type Deed = Readonly<{ what: string; undo: () => Promise<void> | void; redo: () => Promise<void> | void }>;

export type UndoHistory = Readonly<{ past: readonly Deed[]; future: readonly Deed[] }>;

export const noHistory: UndoHistory = { past: [], future: [] };
const MOST_KEPT = 200;

/** After a new deed nothing is left to do again. */
export const remember = (history: UndoHistory, deed: Deed): UndoHistory => ({
  past: [...history.past.slice(-MOST_KEPT + 1), deed],
  future: [],
});

/** The history once its newest deed has been taken back. */
export function steppedBack({ past, future }: UndoHistory): UndoHistory {
  const deed = past.at(-1);
  return deed === undefined ? { past, future } : { past: past.slice(0, -1), future: [deed, ...future] };
}

/** The history once the deed last taken back has been done again. */
export function steppedForward({ past, future }: UndoHistory): UndoHistory {
  const [deed, ...rest] = future;
  return deed === undefined ? { past, future } : { past: [...past, deed], future: rest };
}
