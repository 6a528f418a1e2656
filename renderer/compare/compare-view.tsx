import { useEffect, useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import type { DayInput } from '../../core/air/day-input.ts';
import type { TimedWind } from '../../core/air/timed-winds.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { leaves_m } from '../shot/leaves.ts';
import { ShotCard } from '../shot/shot-card.tsx';
import { isSameShot } from '../shot/shot-choice.ts';
import { useCourse, useHole } from '../state/library.ts';
import { PlanFeed } from '../state/plan-feed.ts';
import { usePlanner } from '../state/planner.tsx';
import { useFeed } from '../state/use-feed.ts';
import { useHoleWinds } from '../state/use-hole-winds.ts';
import { wantedPlan } from '../state/wanted-plan.ts';
import { windOf, withWind } from '../wind/day-words.ts';
import { WindSetter } from '../wind/wind-setter.tsx';
import { againstPar, throwsWords } from '../words/number-words.ts';
import { useUnits } from '../words/use-units.ts';
import { compassPoint } from '../words/wind-words.ts';

/** The round in two winds, side by side: where the choice changes, and what it costs. */
export function CompareView() {
  const { settings, feed, change, perform, backend } = usePlanner();
  const units = useUnits();
  const course = useCourse(settings.courseId);
  const here = useFeed(feed);
  const otherFeed = useMemo(() => new PlanFeed(backend, false), [backend]);
  const there = useFeed(otherFeed);
  useEffect(() => backend.subscribe(event => otherFeed.hear(event)), [backend, otherFeed]);
  const [draft, setDraft] = useState<DayInput | null>(null);
  const [otherDay, setOtherDay] = useState<DayInput>(() => turned(settings.day));
  const [otherDraft, setOtherDraft] = useState<DayInput | null>(null);
  const { ref } = settings;
  const bearing_deg = course.data?.holes.find(h => h.ref === ref)?.bearing_deg ?? null;
  const refs = course.data?.holes.map(h => h.ref);
  // one wind all round, whatever the day's is
  const wantedThere = wantedPlan({ ...settings, isByTeeTime: false }, refs, otherDay);
  const key = JSON.stringify(wantedThere);
  // biome-ignore lint/correctness/useExhaustiveDependencies: key stands for wantedThere; the hole in view only orders the work
  useEffect(() => {
    if (wantedThere !== null) otherFeed.plan(wantedThere, ref);
    return () => otherFeed.cancel();
  }, [key, otherFeed]);
  const drag = (target: PlanFeed, set: (day: DayInput) => void) => (day: DayInput) => {
    set(day);
    const wanted = wantedPlan({ ...settings, isByTeeTime: false }, refs, day);
    if (wanted !== null && ref !== null) target.planWhileDragging(wanted, ref);
  };
  const holeWinds = useHoleWinds();
  const own = ref === null ? undefined : holeWinds?.get(ref);
  const windWords = ({ speed_mps, from_deg }: TimedWind) =>
    speed_mps === 0 ? 'calm' : `${units.speed(speed_mps)} from the ${compassPoint(from_deg)}`;
  const hole = useHole(settings.courseId, ref);
  const basket = hole.data?.map.basket ?? null;
  const [a, b] = ref === null ? [] : [here.holes.get(ref), there.holes.get(ref)];
  return (
    <main className="compare-view">
      <h1>Two winds, hole {ref}</h1>
      <div className="compare-sides">
        <section aria-label="The day’s wind">
          <h2>The day’s wind</h2>
          {own !== undefined ? (
            <p>
              By tee time: hole {own.ref} at {own.at}, <strong>{windWords(own.wind)}</strong>. The list is set under{' '}
              <a href="#round">Round</a>; the other wind blows all round.
            </p>
          ) : (
            <WindSetter
              label="Set the day’s wind"
              day={draft ?? settings.day}
              holeBearing_deg={bearing_deg}
              onDrag={drag(feed, setDraft)}
              onSet={(day, before) => {
                setDraft(null);
                perform({ what: 'change the wind', undo: () => change({ day: before }), redo: () => change({ day }) });
              }}
            />
          )}
          {a === undefined ? (
            <p className="soft">Planning…</p>
          ) : (
            <ShotCard
              label="The throw in the day’s wind"
              shot={a.plan.choice}
              report={hole.data?.report ?? null}
              leaves_m={leaves_m(a.drawing.choice, basket)}
              standing="choice"
              isStale={here.stale.has(a.plan.ref)}
            />
          )}
        </section>
        <section aria-label="Another wind">
          <h2>Another wind</h2>
          <WindSetter
            label="Set the other wind"
            day={otherDraft ?? otherDay}
            holeBearing_deg={bearing_deg}
            onDrag={drag(otherFeed, setOtherDraft)}
            onSet={(day, before) => {
              setOtherDraft(null);
              perform({ what: 'change the other wind', undo: () => setOtherDay(before), redo: () => setOtherDay(day) });
            }}
          />
          {b === undefined ? (
            <p className="soft">Planning…</p>
          ) : (
            <ShotCard
              label="The throw in the other wind"
              shot={b.plan.choice}
              report={hole.data?.report ?? null}
              leaves_m={leaves_m(b.drawing.choice, basket)}
              standing="choice"
              isStale={there.stale.has(b.plan.ref)}
            />
          )}
        </section>
      </div>
      <ScrollTable label="All holes">
        <table className="disc-table compare-table">
          <caption>All holes: a mark shows where the choice changes</caption>
          <thead>
            <tr>
              <th scope="col">Hole</th>
              <th scope="col">In the day’s wind</th>
              <th scope="col">In the other wind</th>
              <th scope="col">Changes</th>
              <th scope="col">Throws</th>
            </tr>
          </thead>
          <tbody>
            {course.data?.holes.map(hole => {
              const [mine, other] = [here.holes.get(hole.ref)?.plan, there.holes.get(hole.ref)?.plan];
              const isChanged = mine !== undefined && other !== undefined && !isSameThrow(mine.choice, other.choice);
              return (
                <tr key={hole.ref} data-changed={isChanged || undefined}>
                  <th scope="row">
                    <Button
                      className="quiet-button"
                      onPress={() => change({ ref: hole.ref })}
                      aria-label={`Show hole ${hole.ref}`}
                    >
                      {hole.ref}
                    </Button>
                  </th>
                  <td>{mine === undefined ? '…' : `${mine.choice.disc}: ${mine.choice.title}`}</td>
                  <td>{other === undefined ? '…' : `${other.choice.disc}: ${other.choice.title}`}</td>
                  <td>
                    {mine === undefined || other === undefined
                      ? ''
                      : isChanged
                        ? 'changes'
                        : isSameShot(mine.choice, other.choice)
                          ? 'same'
                          : 'same disc, other aim'}
                  </td>
                  <td>
                    {mine === undefined || other === undefined
                      ? ''
                      : `${throwsWords(mine.expectedThrows)} → ${throwsWords(other.expectedThrows)} (${againstPar(other.expectedThrows, mine.expectedThrows)})`}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollTable>
    </main>
  );
}

type Throw = Parameters<typeof isSameShot>[0];
const isSameThrow = (a: Throw, b: Throw) => a.discId === b.discId && a.hand === b.hand && a.shape === b.shape;

/** The day with its wind turned half round: the first thing to compare with. */
function turned(day: DayInput): DayInput {
  const wind = windOf(day);
  return withWind(day, { speed_mps: wind.speed_mps > 0 ? wind.speed_mps : 5, from_deg: (wind.from_deg + 180) % 360 });
}
