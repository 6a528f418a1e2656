import { type Command, Option } from 'commander';
import { type AirOptions, addAirOptions } from './air-options.ts';
import { wholeNumber } from './reading.ts';

/** What `throws` is told when it shall say which disc to measure next. */
export type MeasureWords = AirOptions & Readonly<{ course?: string; holes?: string; session?: number }>;

export function addMeasureOptions(command: Command): Command {
  command
    .option('--course <file>', 'also say which disc to measure next for this course (takes about as long as two plans)')
    .option('--holes <holes>', 'with --course: these holes only: 1,3-5 or all')
    .addOption(
      new Option('--session <throws>', 'with --course: throws of the session to come (10 when left out)').argParser(
        wholeNumber,
      ),
    );
  return addAirOptions(command);
}

const ONLY_WITH_COURSE = {
  holes: '--holes',
  session: '--session',
  wind: '--wind',
  windFrom: '--wind-from',
  gust: '--gust',
  windHeight: '--wind-height',
  metar: '--metar',
  temperature: '--temperature',
  altitude: '--altitude',
} as const satisfies Partial<Record<keyof MeasureWords, string>>;

/** An option that is given though no course is; null when none is. */
export function strayMeasureOption(words: MeasureWords): string | null {
  if (words.course !== undefined) return null;
  const stray = (Object.keys(ONLY_WITH_COURSE) as (keyof typeof ONLY_WITH_COURSE)[]).find(
    key => words[key] !== undefined,
  );
  return stray === undefined ? null : ONLY_WITH_COURSE[stray];
}
