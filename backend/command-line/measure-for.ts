import type { Command } from 'commander';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import type { MeasureNext } from '../../core/strategy/measure-next.ts';
import { measureRound } from '../planning/measure-round.ts';
import type { Context } from './context.ts';
import { loadCourse } from './load.ts';
import { AIR_OPTION_OF, dayOf } from './options/air-options.ts';
import { holeList } from './options/hole-list.ts';
import type { MeasureWords } from './options/measure-options.ts';
import { usageError } from './options/usage.ts';
import { EXIT, printProblems } from './problems.ts';
import { startProgress } from './progress.ts';

const FEWEST_THROWS = 3;
const MOST_THROWS = 100;
const OPTION_OF = { ...AIR_OPTION_OF, holes: '--holes', session: '--session' };

/**
 * Which disc to measure next for the course named by the options; null when none is named.
 * @returns 'ended' when that could not be done: the user has been told, and the process's end is set
 */
export async function measureFor(
  player: FittedPlayer,
  words: MeasureWords,
  command: Command,
  { terminal, exit }: Context,
): Promise<MeasureNext | null | 'ended'> {
  if (words.course === undefined) return null;
  const { session } = words;
  const day = dayOf(words);
  if (!day.ok) return usageError(command, day.problems, OPTION_OF);
  if (session !== undefined && (session < FEWEST_THROWS || session > MOST_THROWS))
    return usageError(
      command,
      [{ path: 'session', message: `must be ${FEWEST_THROWS} to ${MOST_THROWS} throws, got ${session}` }],
      OPTION_OF,
    );
  const course = loadCourse(words.course);
  if (!course.ok) {
    printProblems(words.course, course.problems, terminal);
    exit(EXIT.badInput);
    return 'ended';
  }
  const holes = words.holes === undefined ? undefined : holeList(words.holes, course.value);
  if (holes?.ok === false) return usageError(command, holes.problems, OPTION_OF);
  const progress = startProgress(terminal, 'asking', holes?.value.length ?? course.value.holes.length);
  const interrupt = new AbortController();
  const stop = () => interrupt.abort();
  process.once('SIGINT', stop);
  try {
    const answer = await measureRound(
      {
        course: course.value,
        player,
        day: day.value,
        limits: {},
        seed: 1,
        ...(session !== undefined && { throws: session }),
        ...(holes && { holes: holes.value }),
      },
      { onProgress: ({ done }) => progress.set(done), signal: interrupt.signal },
    );
    if (answer.ok) return answer.value;
    printProblems(words.course, answer.problems, terminal);
    exit(EXIT.badInput);
    return 'ended';
  } catch (error) {
    if (!interrupt.signal.aborted) throw error;
    terminal.err('stopped\n');
    exit(EXIT.interrupted);
    return 'ended';
  } finally {
    process.removeListener('SIGINT', stop);
    progress.stop();
  }
}
