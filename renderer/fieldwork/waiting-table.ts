import { useSyncExternalStore } from 'react';

export type TableFile = Readonly<{ name: string; text: string }>;

/** A table of throws dropped on the window and not yet looked at; the newest only. */
let waiting: TableFile | null = null;
const listeners = new Set<() => void>();

function set(table: TableFile | null): void {
  waiting = table;
  for (const listener of listeners) listener();
}

export const offerTable = (table: TableFile): void => set(table);
export const doneWithTable = (): void => set(null);

const listen = (listener: () => void) => {
  listeners.add(listener);
  return () => void listeners.delete(listener);
};

/** The table to look at now. */
export const useWaitingTable = (): TableFile | null => useSyncExternalStore(listen, () => waiting);
