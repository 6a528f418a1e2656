import { useSyncExternalStore } from 'react';
import type { PickedFile } from '../../backend/api/contract/course-file.ts';

/** Course files picked and not yet looked at; each gets its dialog in turn. */
let waiting: readonly PickedFile[] = [];
const listeners = new Set<() => void>();

function set(files: readonly PickedFile[]): void {
  waiting = files;
  for (const listener of listeners) listener();
}

export const offerCourseFile = (file: PickedFile): void => set([...waiting, file]);
/** The first is done with: taken in or left. */
export const doneWithCourseFile = (): void => set(waiting.slice(1));

const listen = (listener: () => void) => {
  listeners.add(listener);
  return () => void listeners.delete(listener);
};
const first = () => waiting[0] ?? null;

/** The file to look at now. */
export const useCourseFile = (): PickedFile | null => useSyncExternalStore(listen, first);
