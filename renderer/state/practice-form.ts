import { useSyncExternalStore } from 'react';
import type { Input } from '../../backend/api/contract/api.ts';

type Limit = Input<'startPractice'>['limit'];
export type DiscClass = NonNullable<Limit['classes']>[number];
export type Hand = NonNullable<Limit['hands']>[number];
export type Shape = NonNullable<Limit['shapes']>[number];

export type LimitKind = 'putters' | 'disc' | 'neutral' | 'forehand' | 'own';

/** What the player has picked, before it is asked for. */
export type PracticeForm = Readonly<{
  kind: LimitKind;
  /** For `disc`; empty: the first there is. */
  discId: string;
  /** For `own`. */
  classes: readonly DiscClass[];
  hands: readonly Hand[];
  shapes: readonly Shape[];
  /** Courses left out of the search. */
  without: readonly string[];
  holes: number;
  rounds: number;
  compare: boolean;
}>;

const FIRST_FORM: PracticeForm = {
  kind: 'putters',
  discId: '',
  classes: ['putter', 'midrange'],
  hands: ['backhand', 'forehand'],
  shapes: ['hyzer', 'flat', 'anhyzer'],
  without: [],
  holes: 9,
  rounds: 1,
  compare: true,
};

/** Changes the form as it stands, also when it was changed a moment ago. */
export type ChangeForm = (how: (now: PracticeForm) => Partial<PracticeForm>) => void;

let current = FIRST_FORM;
const listeners = new Set<() => void>();
const listen = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};
const change: ChangeForm = how => {
  current = { ...current, ...how(current) };
  for (const listener of listeners) listener();
};

/** What the form says, kept while the app is open. */
export function usePracticeForm(): readonly [PracticeForm, ChangeForm] {
  return [useSyncExternalStore(listen, () => current), change];
}

/** The limit a form asks for; null when nothing is picked. @param discIds - of the discs that may be thrown, bag order */
export function limitOf(form: PracticeForm, discIds: readonly string[]): Limit | null {
  switch (form.kind) {
    case 'putters':
      return { classes: ['putter'] };
    case 'neutral':
      return { neutral: true };
    case 'forehand':
      return { hands: ['forehand'] };
    case 'disc': {
      const discId = discIds.includes(form.discId) ? form.discId : discIds[0];
      return discId === undefined ? null : { discIds: [discId] };
    }
    case 'own': {
      const { classes, hands, shapes } = form;
      if (classes.length === 0 || hands.length === 0 || shapes.length === 0) return null;
      return {
        classes: [...classes],
        ...(hands.length < 2 && { hands: [...hands] }),
        ...(shapes.length < 3 && { shapes: [...shapes] }),
      };
    }
    default:
      return form.kind satisfies never;
  }
}
