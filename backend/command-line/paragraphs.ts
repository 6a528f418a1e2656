import { plain } from './terminal.ts';

/** Text broken at spaces to a width; lines after the first are indented by `hang`. */
export function wrapped(text: string, columns: number, first = '', hang = ' '.repeat(first.length)): string {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of plain(text).split(/\s+/).filter(Boolean)) {
    if (!empty && line.length + 1 + word.length > columns) {
      lines.push(line);
      line = hang + word;
    } else {
      line = empty ? line + word : `${line} ${word}`;
    }
    empty = false;
  }
  return `${[...lines, line].join('\n')}\n`;
}

/** A list with dashes, each item wrapped. */
export function bullets(items: readonly string[], columns: number, indent = '  '): string {
  return items.map(item => wrapped(item, columns, `${indent}- `)).join('');
}
