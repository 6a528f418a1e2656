import type { Result } from '../../core/units/result.ts';
import { tileDesk } from '../base-map/tile-desk.ts';
import { courseBook } from '../library/course-book.ts';
import { measureDesk } from '../library/measure-desk.ts';
import { planDesk } from '../library/plan-desk.ts';
import { playerBook } from '../library/player-book.ts';
import { practiceDesk } from '../library/practice-desk.ts';
import { reviewDesk } from '../library/review-desk.ts';
import { roundBook } from '../library/round-book.ts';
import { seedLibrary } from '../library/seed-library.ts';
import { openPlanningDesk, type PlanningDesk } from '../planning/planning-desk.ts';
import { openStore } from '../store/open-store.ts';
import type { AppContext } from './app-context.ts';
import { appVersion } from './app-version.ts';
import type { Subscribe } from './contract/api.ts';
import type { AppEvent } from './contract/events.ts';
import { type Dispatch, dispatcher } from './dispatch.ts';
import { baseMapHandlers } from './handlers/base-map.ts';
import { courseDraftHandlers } from './handlers/course-drafts.ts';
import { courseHandlers } from './handlers/courses.ts';
import { fieldworkHandlers } from './handlers/fieldwork.ts';
import { importHandlers } from './handlers/imports.ts';
import { libraryHandlers } from './handlers/library.ts';
import { measuringHandlers } from './handlers/measuring.ts';
import { pinHandlers } from './handlers/pins.ts';
import { planHandlers } from './handlers/plans.ts';
import { playerHandlers } from './handlers/players.ts';
import { practiceHandlers } from './handlers/practice.ts';
import { puttingHandlers } from './handlers/putting.ts';
import { roundHandlers } from './handlers/rounds.ts';
import { FIRST_SETTINGS, settingsHandlers } from './handlers/settings.ts';
import { shareHandlers } from './handlers/share.ts';
import { sheetHandlers } from './handlers/sheet.ts';
import { terrainHandlers } from './handlers/terrain.ts';
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
  const rounds = roundBook(store);
  const onMade = () => emit({ kind: 'libraryChanged', areas: ['rounds'] });
  const reviews = reviewDesk({ store, courses, players, rounds, threads, onMade, version, now_ms });
  const tiles = tileDesk({ userAgent: `Roundwright/${version} (a disc golf planner; pictures for one player's map)` });
  const practices = practiceDesk({ store, courses, players, threads });
  const measures = measureDesk({ courses, players });
  const app: AppContext = { store, courses, players, plans, rounds, reviews, threads, tiles, emit, version, now_ms };
  const call = dispatcher(
    {
      ...courseHandlers(app),
      ...importHandlers(app),
      ...courseDraftHandlers(app),
      ...playerHandlers(app),
      ...measuringHandlers(measures),
      ...practiceHandlers(practices),
      ...fieldworkHandlers(app),
      ...puttingHandlers(app),
      ...planHandlers(app),
      ...whatIfHandlers(app),
      ...pinHandlers(app),
      ...roundHandlers(app),
      ...settingsHandlers(app),
      ...sheetHandlers(app),
      ...libraryHandlers(app),
      ...terrainHandlers(app),
      ...baseMapHandlers(app),
      ...shareHandlers(app, { ...courseHandlers(app), ...sheetHandlers(app) }),
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
        await measures.close();
        await practices.close();
        await reviews.close();
        await threads.close();
        tiles.close();
        store.close();
      },
    },
  };
}

function printFault(method: string, fault: unknown): void {
  process.stderr.write(`${method}: ${fault instanceof Error ? (fault.stack ?? fault.message) : String(fault)}\n`);
}
