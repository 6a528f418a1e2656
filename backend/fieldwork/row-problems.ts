import type { Problem } from '../../core/units/result.ts';
import type { CsvPlan } from './plan-csv-import.ts';

/** Every problem of every row, by line and the name of its column. */
export function rowProblems({ rows, columns }: Pick<CsvPlan, 'rows' | 'columns'>): Problem[] {
  return rows.flatMap(({ line, problems }) =>
    problems.map(({ column, message }) => ({
      path: `line ${line}${column === null ? '' : `, ${columns[column]?.name || `column ${column + 1}`}`}`,
      message,
    })),
  );
}
