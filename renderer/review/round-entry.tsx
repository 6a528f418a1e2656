import { useEffect, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import { holeLies, type LieToLie } from '../../core/review/hole-lies.ts';
import { placeOf } from '../../core/review/place-of.ts';
import { isFinished, scoreOf } from '../../core/review/round-file.ts';
import type { Problem } from '../../core/units/result.ts';
import { usePlayer } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { playedLayout } from '../state/played-layout.ts';
import { type KeptRound, type RoundThrow, useRoundCourse, useRoundHole } from '../state/rounds.ts';
import { useFeed } from '../state/use-feed.ts';
import { useUnits } from '../words/use-units.ts';
import { EnteredThrows } from './entered-throws.tsx';
import { HoleStrip } from './hole-strip.tsx';
import { NextThrowForm } from './next-throw-form.tsx';
import { ReviewMap } from './review-map.tsx';
import { draftOf, EMPTY_DRAFT, isUntouched, type ThrowDraft, throwOf } from './throw-draft.ts';

type Round = KeptRound['round'];
type RoundEntryProps = Readonly<{ kept: KeptRound; onSave: (round: Round, what: string) => Promise<boolean> }>;

const PUTT_FROM_M = 12;

/** A round hole by hole: disc, how far from the basket, next; every throw is kept at once and can be undone. */
export function RoundEntry({ kept, onSave }: RoundEntryProps) {
  const { settings, feed } = usePlanner();
  const { courseId, playerId, round } = kept;
  const units = useUnits();
  const course = useRoundCourse(courseId, round.layout);
  const player = usePlayer(playerId);
  const plan = useFeed(feed);
  const refs = course.data?.holes.map(hole => hole.ref) ?? [];
  const [chosen, setRef] = useState<string | null>(null);
  const ref = chosen ?? firstOpen(round, refs);
  const hole = useRoundHole(courseId, ref, round.layout);
  const map = hole.data?.map;
  const throws = useMemo(() => round.holes.find(own => own.ref === ref)?.throws ?? [], [round, ref]);
  const lies = useMemo(() => (map === undefined ? [] : holeLies(map, throws)), [map, throws]);
  const [draft, setDraft] = useState<ThrowDraft>(EMPTY_DRAFT);
  const [changed, setChanged] = useState<number | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const firstField = useRef<HTMLSelectElement>(null);
  const discs = player.data?.discs ?? [];
  const from: LocalPoint = changed === null ? (lies.at(-1)?.next ?? [0, 0]) : (lies[changed]?.from ?? [0, 0]);
  const away_m = map === undefined ? null : Math.hypot(map.basket[0] - from[0], map.basket[1] - from[1]);
  const bearing_deg =
    map === undefined ? 0 : (Math.atan2(map.basket[0] - from[0], map.basket[1] - from[1]) * 180) / Math.PI;
  const isDone = throws.at(-1)?.holed === true;

  // A likely disc for the next throw: the putting putter near the basket, from the tee what the plan asks for.
  const isPlanOfThis =
    plan.courseId === courseId &&
    settings.playerId === playerId &&
    playedLayout(settings, courseId) === round.layout &&
    !plan.stale.has(ref ?? '');
  const planned = isPlanOfThis ? plan.holes.get(ref ?? '')?.plan : undefined;
  const putter = discs.find(({ role }) => role === 'putting')?.id;
  const likely =
    away_m !== null && away_m <= PUTT_FROM_M ? putter : throws.length === 0 ? planned?.choice.discId : undefined;
  const fresh = (): ThrowDraft => ({ ...EMPTY_DRAFT, discId: likely ?? '' });
  const count = throws.length;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new draft for each throw and hole, not while it is typed
  useEffect(() => {
    setDraft(fresh());
    setChanged(null);
    setProblems([]);
  }, [ref, count, map === undefined]);
  useEffect(() => {
    // A plan that comes later may still say the disc, as long as nothing was typed.
    setDraft(own => (isUntouched(own) ? { ...own, discId: likely ?? '' } : own));
  }, [likely]);

  if (map === undefined || ref === null) return <p className="soft">Reading the hole…</p>;

  const withThrows = (own: readonly RoundThrow[]): Round => {
    const others = round.holes.filter(other => other.ref !== ref);
    const all = own.length === 0 ? others : [...others, { ref, throws: [...own] }];
    return { ...round, holes: all.sort((a, b) => refs.indexOf(a.ref) - refs.indexOf(b.ref)) };
  };
  const add = async (holed: boolean) => {
    const read = throwOf(draft, holed, bearing_deg, settings);
    if (!read.ok) return setProblems(read.problems);
    const next = changed === null ? [...throws, read.value] : throws.with(changed, read.value);
    const number = (changed ?? throws.length) + 1;
    const what = `${changed === null ? 'Enter' : 'Change'} throw ${number} of hole ${ref}`;
    if (!(await onSave(withThrows(next), what))) return;
    setProblems([]);
    // A throw more gets its new draft with the new lie.
    if (changed !== null) setDraft(fresh());
    setChanged(null);
    if (holed) setRef(firstOpen(withThrows(next), refs, ref));
    firstField.current?.focus();
  };
  const remove = (index: number) =>
    void onSave(withThrows(throws.toSpliced(index, 1)), `Take throw ${index + 1} of hole ${ref} out`);
  const change = (index: number) => {
    const t = throws[index]!;
    const local = (place: RoundThrow['rest']) => {
      if (place === undefined || !('lonLat' in place)) return place;
      const { at } = placeOf(map, place);
      return { east_m: at[0], north_m: at[1] };
    };
    const start = lies[index]!.from;
    const bearing = (Math.atan2(map.basket[0] - start[0], map.basket[1] - start[1]) * 180) / Math.PI;
    setChanged(index);
    setProblems([]);
    setDraft(draftOf({ ...t, rest: local(t.rest), lie: local(t.lie) }, bearing, settings));
    firstField.current?.focus();
  };
  const tap = (at: LocalPoint) => {
    const isLie = draft.penalty !== '' && (draft.tapped !== null || draft.toBasket !== '');
    setDraft(isLie ? { ...draft, lieTapped: at } : { ...draft, tapped: at });
  };
  const awayWords = (at: LocalPoint | null) =>
    at === null
      ? null
      : `${units.length(Math.hypot(map.basket[0] - at[0], map.basket[1] - at[1]))} to the basket, tapped`;
  const toBasket = ({ next, rest }: LieToLie) => {
    const at = next ?? rest;
    return at === null ? null : Math.hypot(map.basket[0] - at[0], map.basket[1] - at[1]);
  };
  const nameOf = (discId: string | undefined) =>
    discId === undefined ? 'disc not written' : (discs.find(({ id }) => id === discId)?.name ?? discId);
  const takePlanned = () => {
    if (planned === undefined) return;
    const { discId, hand, shape, power, height, hyzer_deg, launch_deg, aimBearing_deg } = planned.choice;
    const rounded = {
      height,
      hyzer_deg: tenth(hyzer_deg),
      launch_deg: tenth(launch_deg),
      aimBearing_deg: tenth(aimBearing_deg),
    };
    setDraft({ ...draft, discId, hand, shape, power: String(tenth(power * 10) / 10), aim: '', planned: rounded });
  };

  return (
    <div className="round-entry">
      <HoleStrip refs={refs} round={round} chosen={ref} onChoose={setRef} />
      <ReviewMap
        map={map}
        throws={throws.map((t, i) => ({
          number: i + 1,
          ...lies[i]!,
          holed: t.holed === true,
          words: `Throw ${i + 1}: ${nameOf(t.discId)}`,
        }))}
        marked={draft.lieTapped ?? draft.tapped}
        {...((!isDone || changed !== null) && { onTap: tap })}
      />
      {isDone && changed === null ? (
        <p className="hole-done" role="status">
          Hole {ref}: holed in {scoreOf({ ref, throws: [...throws] })}, par {map.par}.{' '}
          {firstOpen(round, refs, ref) !== ref && (
            <Button className="small-button" onPress={() => setRef(firstOpen(round, refs, ref))}>
              Next hole
            </Button>
          )}
        </p>
      ) : (
        <>
          <NextThrowForm
            title={
              changed === null
                ? `Hole ${ref}, throw ${throws.length + 1}${throws.length === 0 ? ' from the tee' : ''}: ${units.length(away_m ?? 0)} to the basket`
                : `Hole ${ref}: change throw ${changed + 1}`
            }
            draft={draft}
            discs={discs}
            problems={problems}
            tapped={awayWords(draft.tapped)}
            lieTapped={awayWords(draft.lieTapped)}
            firstField={firstField}
            onPlanned={planned !== undefined && (changed ?? throws.length) === 0 ? takePlanned : null}
            onChange={setDraft}
            onAdd={() => void add(changed !== null && throws[changed]?.holed === true)}
            onHoled={() => void add(true)}
            onLeave={
              changed === null
                ? null
                : () => {
                    setChanged(null);
                    setDraft(fresh());
                  }
            }
          />
          <p className="soft">
            Enter adds the throw, Ctrl+Enter holes out. Tap the map to say where it came to rest, or write the distance;
            without a side it is put on the line of play. What you do not know, leave out.
          </p>
        </>
      )}
      <EnteredThrows
        holeRef={ref}
        throws={throws}
        lies={lies}
        toBasket={toBasket}
        nameOf={nameOf}
        changed={changed}
        onChange={change}
        onRemove={remove}
      />
    </div>
  );
}

/** The first hole after `after` that is not holed out; `after` itself, or the last, when all are. */
function firstOpen(round: Round, refs: readonly string[], after?: string): string | null {
  const start = after === undefined ? 0 : refs.indexOf(after) + 1;
  const order = [...refs.slice(start), ...refs.slice(0, start)];
  const isOpen = (ref: string) => {
    const own = round.holes.find(hole => hole.ref === ref);
    return own === undefined || !isFinished(own);
  };
  return order.find(isOpen) ?? after ?? refs[0] ?? null;
}

const tenth = (value: number) => Math.round(value * 10) / 10 + 0;
