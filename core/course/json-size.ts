import type { Problem } from '../units/result.ts';
import { lineAndColumn } from './line-and-column.ts';

/** A GeoJSON MultiPolygon with tags in a tag object lies 8 deep. */
const mostDepth = 60;
/** Lists and objects: a position is one. */
const mostBrackets = 400_000;
/** One text: a description of a course fills a page. Patterns that run over far longer ones run out of stack. */
const mostText = 1_000_000;

const [QUOTE, BACKSLASH, OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT] = [34, 92, 91, 93, 123, 125];

/**
 * Is this JSON too deep or too large to be a map? Asked before it is parsed, so that no reader after it can run out of stack
 * or memory.
 * @param text - anything
 * @returns what is too much and where, or undefined
 */
export function oversizedJson(text: string): Problem | undefined {
  let depth = 0;
  let brackets = 0;
  let isInText = false;
  let textStart = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (isInText) {
      if (code === BACKSLASH) i++;
      else if (code === QUOTE) isInText = false;
      if (i - textStart > mostText)
        return {
          path: lineAndColumn(text, textStart),
          message: `one text here is longer than ${mostText} characters: a quote is missing, or this is no map`,
        };
    } else if (code === QUOTE) {
      isInText = true;
      textStart = i;
    } else if (code === OPEN_LIST || code === OPEN_OBJECT) {
      brackets++;
      if (++depth > mostDepth)
        return {
          path: lineAndColumn(text, i),
          message: `lists and objects lie more than ${mostDepth} deep in each other: this is no map; check that it is the right file`,
        };
      if (brackets > mostBrackets)
        return {
          path: lineAndColumn(text, i),
          message: `the file holds more than ${mostBrackets} positions and objects: cut it down to the course and its surroundings`,
        };
    } else if (code === CLOSE_LIST || code === CLOSE_OBJECT) depth--;
  }
  return undefined;
}
