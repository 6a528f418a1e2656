import type { FeatureCollection } from 'geojson';
import type { Problem, Result } from '../../../core/units/result.ts';
import type { Backend } from '../../client/backend.ts';

/** A map on the drawing table. */
export type DraftMap = Readonly<{
  courseId: string;
  name: string;
  /** Changes to a course of the library; else one that is still to be. */
  isCourse: boolean;
  file: FeatureCollection;
  /** Whether the backend has it as it stands; what went wrong when it could not keep it. */
  keeping: 'kept' | 'keeping' | 'failed';
  problems: readonly Problem[];
}>;

type Desk = Readonly<{ editing: string | null; maps: ReadonlyMap<string, DraftMap> }>;

/**
 * Maps being drawn, apart from the screen: leaving the view, or the app, loses nothing. Every change is handed to the
 * backend at once; while one is on its way the newest waits.
 */
export class DraftDesk {
  #backend: Backend;
  #desk: Desk = { editing: null, maps: new Map() };
  #listeners = new Set<() => void>();
  #onTheWay = new Map<string, Promise<void>>();

  constructor(backend: Backend) {
    this.#backend = backend;
  }

  read = (): Desk => this.#desk;
  listen = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Puts a course, or its draft where there is one, on the table. */
  async open(courseId: string): Promise<Result<true>> {
    if (!this.#desk.maps.has(courseId)) {
      const answer = await this.#backend.call.openDraft({ courseId });
      if (!answer.ok) return answer;
      const { name, text, isCourse } = answer.value;
      const file = JSON.parse(text.replace(/^\uFEFF/, '')) as FeatureCollection;
      this.#put({ courseId, name, isCourse, file, keeping: 'kept', problems: [] });
    }
    this.#set({ ...this.#desk, editing: courseId });
    return { ok: true, value: true };
  }

  /** Puts a new map on the table. @returns the id of the course it will be */
  begin(name: string, file: FeatureCollection): string {
    const courseId = crypto.randomUUID();
    this.#put({ courseId, name, isCourse: false, file, keeping: 'kept', problems: [] });
    this.#set({ ...this.#desk, editing: courseId });
    return courseId;
  }

  /** The map as it is from now on. One that is no longer on the table is changed where it is kept. */
  async change(courseId: string, name: string, file: FeatureCollection): Promise<void> {
    const map = this.#desk.maps.get(courseId);
    if (map === undefined) {
      await this.#backend.call.keepDraft({ courseId, name, text: JSON.stringify(file) });
      return;
    }
    this.#put({ ...map, file, keeping: 'keeping' });
    const going = this.#onTheWay.get(courseId) ?? this.#keep(courseId).finally(() => this.#onTheWay.delete(courseId));
    this.#onTheWay.set(courseId, going);
    await going;
  }

  /** Once nothing of this map is on its way to the backend. */
  async settled(courseId: string): Promise<void> {
    await this.#onTheWay.get(courseId);
  }

  /** Back to the course; the draft stays. */
  leave(): void {
    this.#set({ ...this.#desk, editing: null });
  }

  /** Off the table: saved or discarded. */
  forget(courseId: string): void {
    const maps = new Map(this.#desk.maps);
    maps.delete(courseId);
    this.#set({ maps, editing: this.#desk.editing === courseId ? null : this.#desk.editing });
  }

  async #keep(courseId: string): Promise<void> {
    for (;;) {
      const map = this.#desk.maps.get(courseId);
      if (map === undefined) break;
      const { name, file } = map;
      const answer = await this.#backend.call.keepDraft({ courseId, name, text: JSON.stringify(file) });
      const now = this.#desk.maps.get(courseId);
      if (now === undefined || now.file !== file) continue;
      this.#put({ ...now, keeping: answer.ok ? 'kept' : 'failed', problems: answer.ok ? [] : answer.problems });
      break;
    }
  }

  #put(map: DraftMap): void {
    this.#set({ ...this.#desk, maps: new Map(this.#desk.maps).set(map.courseId, map) });
  }

  #set(desk: Desk): void {
    this.#desk = desk;
    for (const listener of this.#listeners) listener();
  }
}

const desks = new WeakMap<Backend, DraftDesk>();

/** The drawing table of this window. */
export function deskOf(backend: Backend): DraftDesk {
  const desk = desks.get(backend) ?? new DraftDesk(backend);
  desks.set(backend, desk);
  return desk;
}
