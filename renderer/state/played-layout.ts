import type { Settings } from '../../backend/api/contract/settings.ts';

/** The layout played on a course; undefined: the course as mapped. */
export function playedLayout({ layouts }: Pick<Settings, 'layouts'>, courseId: string | null): string | undefined {
  return courseId === null ? undefined : layouts[courseId];
}

/** The choice of layouts with another one for a course; null: the course as mapped. */
export function withPlayed(layouts: Settings['layouts'], courseId: string, layout: string | null): Settings['layouts'] {
  const { [courseId]: _, ...others } = layouts;
  return layout === null ? others : { ...others, [courseId]: layout };
}
