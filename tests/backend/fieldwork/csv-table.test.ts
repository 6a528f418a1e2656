import { describe, expect, it } from 'vitest';
import { csvTable, type Delimiter, likelyDelimiter } from '../../../backend/fieldwork/csv-table.ts';

const cellsOf = (text: string, wanted?: Delimiter) => {
  const table = csvTable(text, wanted);
  if (!table.ok) throw new Error(JSON.stringify(table.problems));
  return table.value.rows.map(({ line, cells }) => [line, ...cells]);
};

describe('the cells of a table', () => {
  // quoting and line ends: RFC 4180, section 2
  it.each([
    {
      name: 'plain',
      text: 'a,b\r\n1,2\r\n',
      want: [
        [1, 'a', 'b'],
        [2, '1', '2'],
      ],
    },
    {
      name: 'byte order mark',
      text: '\ufeffa,b\n1,2',
      want: [
        [1, 'a', 'b'],
        [2, '1', '2'],
      ],
    },
    {
      name: 'old line ends',
      text: 'a,b\r1,2\r',
      want: [
        [1, 'a', 'b'],
        [2, '1', '2'],
      ],
    },
    {
      name: 'mixed line ends',
      text: 'a,b\r\n1,2\n3,4\r5,6',
      want: [
        [1, 'a', 'b'],
        [2, '1', '2'],
        [3, '3', '4'],
        [4, '5', '6'],
      ],
    },
    {
      name: 'empty lines',
      text: 'a,b\n\n1,2\n ,\n3,4',
      want: [
        [1, 'a', 'b'],
        [3, '1', '2'],
        [5, '3', '4'],
      ],
    },
    {
      name: 'quotes',
      text: 'a,b\n"x, y","say ""go"""\n1,2',
      want: [
        [1, 'a', 'b'],
        [2, 'x, y', 'say "go"'],
        [3, '1', '2'],
      ],
    },
    {
      name: 'a line end in a cell',
      text: 'a,b\n"x\r\ny",2\n3,4',
      want: [
        [1, 'a', 'b'],
        [2, 'x\ny', '2'],
        [4, '3', '4'],
      ],
    },
    {
      name: 'rows of other lengths',
      text: 'a,b\n1\n1,2,3',
      want: [
        [1, 'a', 'b'],
        [2, '1'],
        [3, '1', '2', '3'],
      ],
    },
  ])('$name', ({ text, want }) => expect(cellsOf(text)).toEqual(want));

  it.each([
    { text: 'a;b;c\n1,5;2,5;3', want: ';' },
    { text: 'a,b,c\n1.5,2.5,3', want: ',' },
    { text: 'a\tb\n1,5\t2,5', want: '\t' },
    { text: '"a;x",b\n1,2\n3,4', want: ',' },
    { text: 'note,side\n"far; very; far",2\n"near",3', want: ',' },
    { text: 'only\n1\n2', want: ',' },
  ])('tells the separator of $text', ({ text, want }) => expect(likelyDelimiter(text)).toBe(want));

  it.each([
    { text: '', path: 'file', message: /holds no rows/ },
    { text: '\n , \n', path: 'file', message: /holds no rows/ },
    { text: 'a,b\n1,"x\n2,3', path: 'line 3', message: /never closed/ },
    { text: 'a,b\n1,x"y\n', path: 'line 2', message: /inside a cell/ },
    { text: 'a,b\n1,"x"y\n', path: 'line 2', message: /closing quote/ },
    { text: `${'a,'.repeat(120)}b`, path: 'file', message: /121 columns/ },
    { text: 'a\n'.repeat(20_002), path: 'file', message: /more than 20000 rows/ },
  ])('refuses $path: $message', ({ text, path, message }) =>
    expect(csvTable(text)).toEqual({ ok: false, problems: [{ path, message: expect.stringMatching(message) }] }),
  );
});
