import { isFinished, parseRound, scoreOf } from '../../core/review/round-file.ts';
import type { AppContext } from '../api/app-context.ts';
import type { RoundLine } from '../api/contract/rounds.ts';
import { SUMMARY_VERSION } from '../store/summaries.ts';
import type { RowOf } from '../store/tables.ts';

/** What a list says of a round, less what other rows say. */
type RoundSummary = Pick<RoundLine, 'date' | 'holes' | 'finished' | 'score' | 'par'> &
  Readonly<{ /** What the layout adds to the course's name. */ layout: string }>;

/** A player's rounds, oldest first, each summed up once. */
export function roundLines(app: Pick<AppContext, 'store' | 'courses' | 'reviews'>, playerId: string): RoundLine[] {
  const { store, reviews } = app;
  const { tables, summaries } = store;
  const playerRow = tables.players.get({ playerId });
  if (playerRow === undefined) return [];
  // Only the name is wanted: what is kept was read as a player before.
  const player = (JSON.parse(playerRow.file) as { name: string }).name;
  const known = summaries.rounds.all(SUMMARY_VERSION);
  const lines = tables.rounds.where({ playerId }).flatMap((row): RoundLine[] => {
    const { roundId, courseId } = row;
    const courseRow = tables.courses.get({ courseId });
    let summary = known.get(roundId) as RoundSummary | undefined;
    if (summary === undefined) {
      summary = summedUp(app, row, courseRow?.name ?? '');
      if (summary !== undefined) summaries.rounds.put(roundId, SUMMARY_VERSION, summary);
    }
    if (summary === undefined || courseRow === undefined) return [];
    const { layout, ...facts } = summary;
    return [
      {
        roundId,
        courseId,
        playerId,
        course: courseRow.name + layout,
        player,
        ...facts,
        reviewed: reviews.standing(roundId),
      },
    ];
  });
  return lines.sort((a, b) => a.date.localeCompare(b.date) || a.roundId.localeCompare(b.roundId));
}

function summedUp(
  { courses }: Pick<AppContext, 'courses'>,
  { courseId, file }: RowOf<'rounds'>,
  courseName: string,
): RoundSummary | undefined {
  const read = parseRound(JSON.parse(file));
  if (!read.ok) return undefined;
  const round = read.value;
  const course = courses.get(courseId, round.layout);
  if (!course.ok) return undefined;
  const finished = round.holes.filter(isFinished);
  const par = (ref: string) => {
    const mapped = course.value.holes.find(hole => hole.ref === ref)?.par;
    if (mapped !== undefined) return mapped;
    // Only a par that has to be derived needs the ground, which takes its time.
    const map = courses.map(courseId, ref, round.layout);
    return map.ok ? map.value.par : 0;
  };
  return {
    date: round.date,
    holes: round.holes.length,
    finished: finished.length,
    score: finished.reduce((sum, hole) => sum + scoreOf(hole), 0),
    par: finished.reduce((sum, { ref }) => sum + par(ref), 0),
    layout: course.value.name.slice(courseName.length),
  };
}
