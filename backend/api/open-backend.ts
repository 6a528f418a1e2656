import type { Result } from '../../core/units/result.ts';
import { courseBook } from '../library/course-book.ts';
import { planDesk } from '../library/plan-desk.ts';
import { playerBook } from '../library/player-book.ts';
import { seedLibrary } from '../library/seed-library.ts';
import { openPlanningDesk, type PlanningDesk } from '../planning/planning-desk.ts';
import { openStore } from '../store/open-store.ts';
import type { AppContext } from './app-context.ts';
import { appVersion } from './app-version.ts';
import type { Subscribe } from './contract/api.ts';
import type { AppEvent } from './contract/events.ts';
import { type Dispatch, dispatcher } from './dispatch.ts';
import { courseHandlers } from './handlers/courses.ts';
import { libraryHandlers } from './handlers/library.ts';
import { pinHandlers } from './handlers/pins.ts';
import { planHandlers } from './handlers/plans.ts';
import { playerHandlers } from './handlers/players.ts';
import { FIRST_SETTINGS, settingsHandlers } from './handlers/settings.ts';
import { sheetHandlers } from './handlers/sheet.ts';
import { whatIfHandlers } from './handlers/what-if.ts';

/** Everything behind the window. */
export type Backend = Readonly<{
  /** The one way in; never rejects. */
  call: Dispatch;
  subscribe: Subscribe;
  /** Stops what runs; everything that was answered is on the disk already. */
  close(): Promise<void>;
}>;

export type BackendOptions = Readonly<{
  /** Where the library lies; made when it is not there. */
  folder: string;
  /** Where long work is done; threads of its own when left out. Closed with the backend. */
  desk?: PlanningDesk;
  now_ms?: () => number;
  /** Told of what should not happen; the caller of the method gets a problem. Standard error when left out. */
  onFault?: (method: string, fault: unknown) => void;
}>;

/** @returns the backend, or one problem with path `library` when the library cannot be opened */
export function openBackend(options: BackendOptions): Result<Backend> {
  const { folder, now_ms = Date.now, onFault = printFault } = options;
  const opened = openStore(folder, { now_ms });
  if (!opened.ok) return opened;
  const store = opened.value;
  try {
    seedLibrary(store, now_ms, seed => ({ ...FIRST_SETTINGS, ...seed }));
  } catch (error) {
    store.close();
    return {
      ok: false,
      problems: [{ path: 'library', message: error instanceof Error ? error.message : String(error) }],
    };
  }
  const listeners = new Set<(event: AppEvent) => void>();
  const emit = (event: AppEvent) => {
    for (const listener of listeners) {
      try {
        listener(event);
      } catch (fault) {
        // A window that cannot hear must not stop what it listens to.
        onFault(event.kind, fault);
      }
    }
  };
  const threads = options.desk ?? openPlanningDesk();
  const version = appVersion();
  const courses = courseBook(store);
  const players = playerBook(store, threads);
  const plans = planDesk({ store, courses, players, threads, emit, version, now_ms });
  const app: AppContext = { store, courses, players, plans, threads, emit, version, now_ms };
  const call = dispatcher(
    {
      ...courseHandlers(app),
      ...playerHandlers(app),
      ...planHandlers(app),
      ...whatIfHandlers(app),
      ...pinHandlers(app),
      ...settingsHandlers(app),
      ...sheetHandlers(app),
      ...libraryHandlers(app),
    },
    onFault,
  );
  return {
    ok: true,
    value: {
      call,
      subscribe: listener => {
        // Its own function: the same listener may listen twice and stop once.
        const own = (event: AppEvent) => listener(event);
        listeners.add(own);
        return () => listeners.delete(own);
      },
      close: async () => {
        listeners.clear();
        await plans.close();
        await threads.close();
        store.close();
      },
    },
  };
}

function printFault(method: string, fault: unknown): void {
  process.stderr.write(`${method}: ${fault instanceof Error ? (fault.stack ?? fault.message) : String(fault)}\n`);
}
