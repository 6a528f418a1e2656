import type { TileDesk } from '../base-map/tile-desk.ts';
import type { CourseBook } from '../library/course-book.ts';
import type { PlanDesk } from '../library/plan-desk.ts';
import type { PlayerBook } from '../library/player-book.ts';
import type { ReviewDesk } from '../library/review-desk.ts';
import type { RoundBook } from '../library/round-book.ts';
import type { PlanningDesk } from '../planning/planning-desk.ts';
import type { Store } from '../store/open-store.ts';
import type { TableName } from '../store/tables.ts';
import type { AppEvent } from './contract/events.ts';

/** What the handlers share. */
export type AppContext = Readonly<{
  store: Store;
  courses: CourseBook;
  players: PlayerBook;
  plans: PlanDesk;
  rounds: RoundBook;
  reviews: ReviewDesk;
  threads: PlanningDesk;
  tiles: TileDesk;
  emit: (event: AppEvent) => void;
  version: string;
  now_ms: () => number;
}>;

const AREA_OF: Readonly<Record<TableName, 'courses' | 'players' | 'pins' | 'rounds'>> = {
  courses: 'courses',
  courseFiles: 'courses',
  courseOrigins: 'courses',
  courseDrafts: 'courses',
  grounds: 'courses',
  groundFiles: 'courses',
  players: 'players',
  pins: 'pins',
  notes: 'pins',
  rounds: 'rounds',
};

/** Tells every window what to ask for again. */
export function sayChanged({ emit }: Pick<AppContext, 'emit'>, tables: readonly TableName[]): void {
  emit({ kind: 'libraryChanged', areas: [...new Set(tables.map(table => AREA_OF[table]))] });
}
