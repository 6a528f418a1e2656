import { describe, expect, it } from 'vitest';
import { countWords } from '../../../core/course/count-words.ts';

describe('countWords', () => {
  it.each([
    { count: 0, what: 'mandos', words: '0 mandos' },
    { count: 1, what: 'trees', words: '1 tree' },
    { count: 3, what: 'trees', words: '3 trees' },
    { count: 1, what: 'woods and scrub', words: '1 wood or scrub' },
    { count: 1, what: 'places where people pass', words: '1 place where people pass' },
    { count: 2, what: 'out-of-bounds', words: '2 out-of-bounds' },
    { count: 1, what: 'out-of-bounds', words: '1 out-of-bounds' },
  ])('$words', ({ words, ...line }) => expect(countWords(line)).toBe(words));
});
