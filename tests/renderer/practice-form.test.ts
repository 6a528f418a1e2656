import { describe, expect, it } from 'vitest';
import { limitOf, type PracticeForm } from '../../renderer/state/practice-form.ts';

const form: PracticeForm = {
  kind: 'putters',
  discId: '',
  classes: ['midrange'],
  hands: ['backhand', 'forehand'],
  shapes: ['hyzer', 'flat', 'anhyzer'],
  without: [],
  holes: 9,
  rounds: 1,
  compare: true,
};

describe('the limit a form asks for', () => {
  it.each<{ change: Partial<PracticeForm>; limit: object | null }>([
    { change: {}, limit: { classes: ['putter'] } },
    { change: { kind: 'neutral' }, limit: { neutral: true } },
    { change: { kind: 'forehand' }, limit: { hands: ['forehand'] } },
    { change: { kind: 'disc', discId: 'b' }, limit: { discIds: ['b'] } },
    // nothing picked yet, or a disc that is gone: the first there is
    { change: { kind: 'disc' }, limit: { discIds: ['a'] } },
    { change: { kind: 'disc', discId: 'gone' }, limit: { discIds: ['a'] } },
    // both hands and all lines are no limit
    { change: { kind: 'own' }, limit: { classes: ['midrange'] } },
    {
      change: { kind: 'own', hands: ['forehand'], shapes: ['hyzer'] },
      limit: { classes: ['midrange'], hands: ['forehand'], shapes: ['hyzer'] },
    },
    { change: { kind: 'own', hands: [] }, limit: null },
    { change: { kind: 'own', classes: [] }, limit: null },
    { change: { kind: 'own', shapes: [] }, limit: null },
  ])('$change: $limit', ({ change, limit }) => {
    expect(limitOf({ ...form, ...change }, ['a', 'b'])).toEqual(limit);
  });

  it('one disc needs a disc', () => {
    expect(limitOf({ ...form, kind: 'disc' }, [])).toBeNull();
  });
});
