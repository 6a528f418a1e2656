import { InvalidArgumentError } from 'commander';
import type { PracticeLimit } from '../../../core/practice/practice-limit.ts';
import { discClasses } from './limit-options.ts';
import { wholeNumber } from './reading.ts';

const HANDS = ['backhand', 'forehand'] as const;
const SHAPES = ['hyzer', 'flat', 'anhyzer'] as const;

export const LIMIT_HELP =
  'what may be thrown, comma between: putters, midranges, fairways, controls, distances, drivers, disc:ID, neutral, backhand, forehand, flat, hyzer, anhyzer; or all';

/** "putters,forehand", "disc:kettle", "neutral": each word narrows; classes and discs add up. */
export function practiceLimit(text: string): PracticeLimit {
  let limit: PracticeLimit = {};
  for (const word of text.split(',').map(part => part.trim())) limit = withWord(limit, word);
  return limit;
}

function withWord(limit: PracticeLimit, word: string): PracticeLimit {
  const lower = word.toLowerCase();
  if (lower === '') throw new InvalidArgumentError('is empty: write putters, disc:ID, neutral, forehand …');
  if (lower === 'all') return limit;
  if (lower === 'neutral') return { ...limit, neutral: true };
  const id = /^disc:\s*(.+)$/i.exec(word)?.[1];
  if (id !== undefined) return { ...limit, discIds: [...(limit.discIds ?? []), id] };
  const hand = HANDS.find(one => one === lower);
  if (hand !== undefined) return { ...limit, hands: [...new Set([...(limit.hands ?? []), hand])] };
  const shape = SHAPES.find(one => one === lower);
  if (shape !== undefined) return { ...limit, shapes: [...new Set([...(limit.shapes ?? []), shape])] };
  try {
    return { ...limit, classes: [...new Set([...(limit.classes ?? []), ...discClasses(lower)])] };
  } catch {
    throw new InvalidArgumentError(`"${word}" is not known; ${LIMIT_HELP}`);
  }
}

/** A count in a range, for numbers of holes and courses. */
export const countUpTo =
  (most: number) =>
  (text: string): number => {
    const count = wholeNumber(text);
    if (count >= 1 && count <= most) return count;
    throw new InvalidArgumentError(`write a whole number from 1 to ${most}`);
  };
