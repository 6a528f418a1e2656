import { useQueryClient } from '@tanstack/react-query';
import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useRef, useState } from 'react';
import type { Settings } from '../../backend/api/contract/settings.ts';
import type { Undo } from '../../backend/api/contract/values.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import type { Backend } from '../client/backend.ts';
import { PlanFeed } from './plan-feed.ts';
import { type Deed, noHistory, remember, steppedBack, steppedForward, type UndoHistory } from './undo-history.ts';

export type Trouble = Readonly<{ what: string; problems: readonly Problem[] }>;

export type Planner = Readonly<{
  backend: Backend;
  settings: Settings;
  feed: PlanFeed;
  /** Changes how the app reads or what is planned; with `what` it can be taken back. */
  change: (change: Partial<Settings>, what?: string) => void;
  /** Does something that can be taken back. */
  perform: (deed: Deed) => void;
  /** Runs a call that changes the library; its undo joins the history, its problems are shown. */
  changeLibrary: <T extends Readonly<{ undo: Undo }>>(what: string, call: Promise<Result<T>>) => Promise<T | null>;
  history: UndoHistory;
  undo: () => void;
  redo: () => void;
  trouble: Trouble | null;
  tell: (trouble: Trouble | null) => void;
  /** Said once, politely, to screen readers and shown for a moment at the bottom. */
  said: string;
  say: (text: string) => void;
}>;

const PlannerContext = createContext<Planner | null>(null);

export function usePlanner(): Planner {
  const planner = useContext(PlannerContext);
  if (planner === null) throw new Error('usePlanner needs a PlannerProvider above it');
  return planner;
}

type ProviderProps = Readonly<{ backend: Backend; initial: Settings; children: ReactNode }>;

export function PlannerProvider({ backend, initial, children }: ProviderProps) {
  const [settings, setSettings] = useState(initial);
  const [history, setHistory] = useState(noHistory);
  const [trouble, tell] = useState<Trouble | null>(null);
  const [said, say] = useState('');
  const feed = useMemo(() => new PlanFeed(backend, true), [backend]);
  const latest = useRef({ settings, history });
  latest.current = { settings, history };
  useBackendEvents(backend, feed);

  const apply = useCallback(
    (change: Partial<Settings>) => {
      setSettings(now => ({ ...now, ...change }));
      void backend.call.setSettings({ change }).then(answer => {
        if (!answer.ok) tell({ what: 'The setting could not be kept', problems: answer.problems });
      });
    },
    [backend],
  );
  const perform = useCallback((deed: Deed) => {
    void deed.redo();
    setHistory(now => remember(now, deed));
  }, []);
  const change = useCallback(
    (wanted: Partial<Settings>, what?: string) => {
      if (what === undefined) return apply(wanted);
      const before = pick(latest.current.settings, Object.keys(wanted) as (keyof Settings)[]);
      perform({ what, undo: () => apply(before), redo: () => apply(wanted) });
    },
    [apply, perform],
  );
  const changeLibrary = useCallback(
    async <T extends Readonly<{ undo: Undo }>>(what: string, call: Promise<Result<T>>): Promise<T | null> => {
      const answer = await call;
      if (!answer.ok) {
        tell({ what, problems: answer.problems });
        return null;
      }
      tell(null);
      setHistory(now => remember(now, deedOf(backend, answer.value.undo, tell)));
      return answer.value;
    },
    [backend],
  );
  const undo = useCallback(() => {
    const deed = latest.current.history.past.at(-1);
    if (deed === undefined) return;
    setHistory(steppedBack);
    void Promise.resolve(deed.undo()).then(() => say(`Undone: ${deed.what}`));
  }, []);
  const redo = useCallback(() => {
    const deed = latest.current.history.future[0];
    if (deed === undefined) return;
    setHistory(steppedForward);
    void Promise.resolve(deed.redo()).then(() => say(`Done again: ${deed.what}`));
  }, []);

  const planner: Planner = {
    backend,
    settings,
    feed,
    change,
    perform,
    changeLibrary,
    history,
    undo,
    redo,
    trouble,
    tell,
    said,
    say,
  };
  return <PlannerContext value={planner}>{children}</PlannerContext>;
}

function useBackendEvents(backend: Backend, feed: PlanFeed): void {
  const queries = useQueryClient();
  useEffect(
    () =>
      backend.onReconnect(() => {
        void queries.invalidateQueries();
        void feed.catchUp();
      }),
    [backend, feed, queries],
  );
  useEffect(
    () =>
      backend.subscribe(event => {
        if (event.kind !== 'libraryChanged') return feed.hear(event);
        for (const area of event.areas) void queries.invalidateQueries({ queryKey: [area] });
      }),
    [backend, feed, queries],
  );
}

/** A stored change as a deed: each way answers with what takes it back. */
function deedOf(backend: Backend, change: Undo, tell: (trouble: Trouble) => void): Deed {
  let { changeId } = change;
  const flip = async () => {
    const answer = await backend.call.undo({ changeId });
    if (answer.ok) changeId = answer.value.undo.changeId;
    else tell({ what: `"${change.what}" could not be taken back`, problems: answer.problems });
  };
  return { what: change.what, undo: flip, redo: flip };
}

function pick<T extends object, K extends keyof T>(from: T, keys: readonly K[]): Pick<T, K> {
  return Object.fromEntries(keys.map(key => [key, from[key]])) as Pick<T, K>;
}
