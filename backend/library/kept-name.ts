import { isPlainText } from '../api/contract/values.ts';

const LONGEST = 120;

/** The name a course of this file goes by in the library: one line of plain text, whatever the file says. */
export function keptName(name: string): string {
  const characters = Array.from(name.toWellFormed()).map(character => (isPlainText(character) ? character : ' '));
  const line = characters.join('').replace(/\s+/g, ' ').trim();
  const short = Array.from(line).slice(0, LONGEST).join('').trim();
  return short === '' ? 'Course without a name' : short;
}
