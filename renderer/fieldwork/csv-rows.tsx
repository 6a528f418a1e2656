import { keyed } from '../frame/keyed.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { counted } from '../words/counted.ts';
import { meaningWords } from './csv-columns.tsx';
import type { CsvPreview } from './csv-import.tsx';

/** Rows as the file has them; what is wrong stands under the row, and its cells are marked. */
export function CsvRows({ preview }: Readonly<{ preview: CsvPreview }>) {
  const { rows, columns, good, bad } = preview;
  const hidden = good + bad - rows.length;
  return (
    <ScrollTable label="Rows of the table">
      <table className="disc-table csv-rows">
        <caption>
          {bad > 0 ? `${counted(bad, 'bad row')}, marked; ` : ''}
          {counted(good, 'good row')}
          {hidden > 0 ? ` (${hidden} rows not shown)` : ''}
        </caption>
        <thead>
          <tr>
            <th scope="col">Line</th>
            {keyed(columns).map(({ key, item }) => (
              <th key={key} scope="col">
                {item.name}
                <span className="csv-meaning">{item.meaning === null ? 'left out' : meaningWords(item.meaning)}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ line, cells, problems }) => {
            const wrong = new Set(problems.map(({ column }) => column));
            return [
              <tr key={line} data-bad={problems.length > 0 || undefined}>
                <th scope="row">
                  {line}
                  {problems.length > 0 && <span className="csv-bad-word"> bad</span>}
                </th>
                {keyed(cells).map(({ key, item }, i) => (
                  <td
                    key={key}
                    data-wrong={wrong.has(i) || undefined}
                    data-ignored={columns[i]?.meaning === null || undefined}
                  >
                    {item}
                  </td>
                ))}
              </tr>,
              problems.length > 0 && (
                <tr key={`${line} why`} className="csv-why">
                  <td colSpan={columns.length + 1}>
                    <ul>
                      {problems.map(({ column, message }) => (
                        <li key={`${column} ${message}`}>
                          {column !== null && <strong>{columns[column]?.name ?? `column ${column + 1}`}: </strong>}
                          {message}
                        </li>
                      ))}
                    </ul>
                  </td>
                </tr>
              ),
            ];
          })}
        </tbody>
      </table>
    </ScrollTable>
  );
}
