import type { AppContext } from '../app-context.ts';
import { type Settings, SettingsSchema, type settings } from '../contract/settings.ts';
import type { Handlers } from '../dispatch.ts';

export const FIRST_SETTINGS: Settings = {
  length: 'm',
  speed: 'mps',
  temperature: 'C',
  theme: 'system',
  courseId: null,
  playerId: null,
  layouts: {},
  ref: null,
  day: {},
  winds: null,
  isByTeeTime: false,
  startRefs: {},
  attitude: 'even',
  target: null,
  limits: {},
  baseMap: null,
};

export function settingsHandlers(app: AppContext): Pick<Handlers, keyof typeof settings> {
  const { store, emit, plans } = app;
  return {
    getSettings: () => ({ ok: true, value: currentSettings(app) }),
    setSettings: ({ change }) => {
      const { courseId, playerId } = change;
      const { tables } = store;
      if (courseId != null && tables.courses.get({ courseId }) === undefined)
        return { ok: false, problems: [{ path: 'change.courseId', message: 'is no course of the library' }] };
      if (playerId != null && tables.players.get({ playerId }) === undefined)
        return { ok: false, problems: [{ path: 'change.playerId', message: 'is no player of the library' }] };
      store.settings.set({ ...currentSettings(app), ...change });
      emit({ kind: 'libraryChanged', areas: ['settings'] });
      const settings = currentSettings(app);
      // Another hole in view: what is asked about it next is answered sooner.
      if (change.ref != null && settings.courseId !== null && settings.playerId !== null)
        plans.latest(settings.courseId, settings.playerId, change.ref);
      return { ok: true, value: settings };
    },
  };
}

/** What is stored, less a course or player that is gone; a value an older app wrote and this one does not know starts anew. */
export function currentSettings({ store }: Pick<AppContext, 'store'>): Settings {
  const stored = store.settings.get();
  const entries = Object.entries(FIRST_SETTINGS).map(([name, first]) => {
    const field = SettingsSchema.shape[name as keyof Settings];
    const read = field.safeParse((stored as Record<string, unknown> | undefined)?.[name]);
    return [name, read.success ? read.data : first];
  });
  const settings = Object.fromEntries(entries) as Settings;
  const { courseId, playerId } = settings;
  return {
    ...settings,
    courseId: courseId !== null && store.tables.courses.get({ courseId }) !== undefined ? courseId : null,
    playerId: playerId !== null && store.tables.players.get({ playerId }) !== undefined ? playerId : null,
  };
}
