import { describe, expect, it } from 'vitest';
import { allowedThrows, isNeutral, type LimitDisc, type PracticeLimit } from '../../../core/practice/practice-limit.ts';
import { inventedPlayer } from '../strategy/invented-player.ts';

const player = inventedPlayer({
  arm_mps: 24,
  discs: [
    { id: 'thimble', speed: 3, glide: 4, turn: -0.5, fade: 1 },
    { id: 'kettle', speed: 5, glide: 5, turn: -1, fade: 1 },
    { id: 'mallet', speed: 5, glide: 4, turn: 0, fade: 3 },
  ],
});
const discs: readonly LimitDisc[] = [
  { id: 'home', name: 'Home', class: 'putter', turn: 0, fade: 1, role: 'putting' },
  { id: 'thimble', name: 'Thimble', class: 'putter', turn: -0.5, fade: 1, role: 'throwing' },
  { id: 'kettle', name: 'Kettle', class: 'midrange', turn: -1, fade: 1, role: 'throwing' },
  { id: 'mallet', name: 'Mallet', class: 'midrange', turn: 0, fade: 3, role: 'throwing' },
];
const allowed = (limit: PracticeLimit, some = discs) => allowedThrows(player, some, limit);

describe('the discs a limit leaves', () => {
  it.each<{ limit: PracticeLimit; ids: string[]; words: string }>([
    { limit: { classes: ['putter'] }, ids: ['thimble'], words: 'putters only' },
    { limit: { discIds: ['mallet'] }, ids: ['mallet'], words: 'one disc: Mallet' },
    { limit: { neutral: true }, ids: ['thimble', 'kettle'], words: 'neutral discs only' },
    {
      limit: { classes: ['putter'], discIds: ['mallet'] },
      ids: ['thimble', 'mallet'],
      words: 'putters and Mallet only',
    },
    {
      limit: { classes: ['midrange'], neutral: true, hands: ['backhand'], shapes: ['hyzer'] },
      ids: ['kettle'],
      words: 'midranges only, neutral discs only, backhand only, hyzer lines only',
    },
    { limit: {}, ids: ['thimble', 'kettle', 'mallet'], words: 'the whole bag' },
  ])('$words: $ids, never the putting putter', ({ limit, ids, words }) => {
    const result = allowed(limit);
    expect(result.ok && [result.value.discIds, result.value.words]).toEqual([ids, words]);
  });

  it.each<{ limit: PracticeLimit; some?: readonly LimitDisc[]; path: string; says: string }>([
    { limit: { discIds: ['nobody'] }, path: 'limit.discIds', says: 'the discs are home, thimble, kettle, mallet' },
    { limit: { classes: ['distance'] }, path: 'limit.classes', says: 'no disc of class distance' },
    { limit: { discIds: ['home'] }, path: 'limit', says: 'kept for putting: give a disc the role "throwing"' },
    { limit: { discIds: ['mallet'], neutral: true }, path: 'limit.neutral', says: 'the nearest is Mallet at +3' },
    { limit: { hands: ['forehand'] }, path: 'limit.hands', says: 'throws none of these discs forehand' },
  ])('nothing left: $path, and how to mend it', ({ limit, path, says }) => {
    const result = allowed(limit);
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.problems).toHaveLength(1);
    expect(result.problems[0]!.path).toBe(path);
    expect(result.problems[0]!.message).toContain(says);
  });
});

it('a disc is neutral when turn and fade cancel out within 1', () => {
  expect([-2, -1, -0.5, 0, 0.5].map(turn => isNeutral({ turn, fade: 0.5 }))).toEqual([false, true, true, true, true]);
  expect(isNeutral({ turn: 0, fade: 1.5 })).toBe(false);
});
