import type { Problem } from '../units/result.ts';
import { lineAndColumn } from './line-and-column.ts';

type Level = { keys: Set<string> | undefined; expectsKey: boolean };

/** Finding a place in the text takes as long as the text is; a file with thousands of faults is not mended from a list. */
const mostProblems = 20;

/**
 * Members written twice in one object. JSON parsers keep the last and drop the first without a word.
 * @param text - valid JSON
 * @returns the first of them
 */
export function duplicateKeys(text: string): Problem[] {
  const problems: Problem[] = [];
  const levels: Level[] = [];
  for (const match of text.matchAll(/"(?:[^"\\]|\\.)*"|[{}[\],]/g)) {
    const token = match[0];
    const level = levels.at(-1);
    if (token === '{') levels.push({ keys: new Set(), expectsKey: true });
    else if (token === '[') levels.push({ keys: undefined, expectsKey: false });
    else if (token === '}' || token === ']') levels.pop();
    else if (token === ',') {
      if (level?.keys !== undefined) level.expectsKey = true;
    } else if (level?.keys !== undefined && level.expectsKey) {
      level.expectsKey = false;
      const key = JSON.parse(token) as string;
      if (level.keys.has(key) && problems.length < mostProblems) {
        problems.push({
          path: lineAndColumn(text, match.index),
          message: `"${key}" stands twice in one object: keep one of the two`,
        });
      }
      level.keys.add(key);
    }
  }
  return problems;
}
