import { type Command, InvalidArgumentError, Option } from 'commander';
import { columnOfHeader } from '../../../core/player/csv-columns.ts';
import type { Problem, Result } from '../../../core/units/result.ts';
import type { Delimiter } from '../../fieldwork/csv-table.ts';
import type { CsvOptions } from '../../fieldwork/plan-csv-import.ts';

type MapEntry = Readonly<{ column: string; meaning: string | null }>;

/** What the options of `throws --csv` hold. */
export type CsvWords = Readonly<{
  csv?: string;
  map?: readonly MapEntry[];
  separator?: Delimiter;
  header?: boolean;
  decimal?: 'point' | 'comma';
  dates?: 'ymd' | 'dmy' | 'mdy';
  disc?: string;
  hand?: 'backhand' | 'forehand';
  shape?: 'flat' | 'hyzer' | 'anhyzer' | 'roller' | 'overhead';
  leaveOut?: number;
  out?: string;
}>;

const SEPARATORS: Readonly<Record<string, Delimiter>> = { comma: ',', semicolon: ';', tab: '\t' };

export function addCsvOptions(command: Command): Command {
  return command
    .option('--csv <file>', 'show what a table of throws would add (comma, semicolon or tab separated)')
    .addOption(
      new Option(
        '--map <column=meaning>',
        'with --csv: what a column holds, such as "Dist=distance_ft" or "#3=side_m"; "Dist=" leaves it out; may be repeated',
      ).argParser(mapEntry),
    )
    .addOption(
      new Option('--separator <name>', 'with --csv: comma, semicolon or tab').argParser((text: string) => {
        const found = SEPARATORS[text];
        if (found === undefined) throw new InvalidArgumentError('write comma, semicolon or tab');
        return found;
      }),
    )
    .option('--no-header', 'with --csv: the first row holds a throw already')
    .addOption(new Option('--decimal <mark>', 'with --csv: mark of decimals').choices(['point', 'comma']))
    .addOption(new Option('--dates <order>', 'with --csv: order in dates like 3/4/2026').choices(['ymd', 'dmy', 'mdy']))
    .option('--disc <id>', 'with --csv: the disc where the table names none')
    .addOption(
      new Option('--hand <hand>', 'with --csv: the hand where the table names none').choices(['backhand', 'forehand']),
    )
    .addOption(
      new Option('--shape <shape>', 'with --csv: the shape where the table names none').choices([
        'flat',
        'hyzer',
        'anhyzer',
        'roller',
        'overhead',
      ]),
    )
    .addOption(
      new Option('--leave-out <rows>', 'with --csv: agree to leave out exactly so many bad rows').argParser(rowCount),
    )
    .option('--out <file>', 'with --csv: write the player with the throws added');
}

/** An option of the import given without one; null when there is none. */
export function strayCsvOption({
  csv,
  map,
  separator,
  header,
  decimal,
  dates,
  disc,
  hand,
  shape,
  leaveOut,
  out,
}: CsvWords) {
  if (csv !== undefined) return null;
  const given = {
    '--map': map,
    '--separator': separator,
    '--no-header': header === false ? true : undefined,
    '--decimal': decimal,
    '--dates': dates,
    '--disc': disc,
    '--hand': hand,
    '--shape': shape,
    '--leave-out': leaveOut,
    '--out': out,
  };
  return Object.entries(given).find(([, value]) => value !== undefined)?.[0] ?? null;
}

function mapEntry(text: string, before: readonly MapEntry[] | undefined): readonly MapEntry[] {
  const at = text.lastIndexOf('=');
  if (at <= 0) throw new InvalidArgumentError('write COLUMN=MEANING, such as "Dist=distance_ft"');
  const meaning = text.slice(at + 1).trim();
  if (meaning !== '' && columnOfHeader(meaning) === null)
    throw new InvalidArgumentError(
      `"${meaning}" is no meaning of a column: write one like distance_ft, straight_m, side_m, disc, date, wind_mph or windFrom_deg`,
    );
  return [...(before ?? []), { column: text.slice(0, at).trim(), meaning: meaning === '' ? null : meaning }];
}

function rowCount(text: string): number {
  if (!/^\d{1,6}$/.test(text)) throw new InvalidArgumentError('write a whole number of rows');
  return Number(text);
}

/**
 * The options as an import takes them.
 * @param names - the columns of the table as it was read without them
 */
export function csvOptionsOf(
  words: CsvWords,
  names: readonly string[],
  meanings: readonly (string | null)[],
): Result<CsvOptions> {
  const problems: Problem[] = [];
  const columns = [...meanings];
  for (const { column, meaning } of words.map ?? []) {
    const number = /^#(\d+)$/.exec(column)?.[1];
    const at = number === undefined ? names.indexOf(column) : Number(number) - 1;
    if (at < 0 || at >= names.length)
      problems.push({
        path: 'map',
        message: `"${column}" is no column of the table: it has ${names.map((name, i) => `"${name}" (#${i + 1})`).join(', ')}`,
      });
    else columns[at] = meaning;
  }
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, value: { ...plainOptions(words), ...(words.map === undefined ? {} : { columns }) } };
}

/** All but the meaning of columns. */
export function plainOptions({ separator, header, decimal, dates, disc, hand, shape }: CsvWords): CsvOptions {
  return {
    delimiter: separator,
    hasHeader: header === false ? false : undefined,
    decimal,
    dates,
    defaults: { discId: disc, hand, shape },
  };
}
