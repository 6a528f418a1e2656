import { useCallback, useMemo, useRef, useState } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import type { ShotChoice } from '../../backend/api/contract/values.ts';
import type { DayInput } from '../../core/air/day-input.ts';
import type { ShotReport } from '../../core/strategy/plan-report.ts';
import { GapView } from '../gap-view/gap-view.tsx';
import { HoleList } from '../holes/hole-list.tsx';
import { HoleView } from '../map/hole-view.tsx';
import { Alternatives } from '../shot/alternatives.tsx';
import { Cautions } from '../shot/cautions.tsx';
import { FlipRose } from '../shot/flip-rose.tsx';
import { leaves_m } from '../shot/leaves.ts';
import { Reasons } from '../shot/reasons.tsx';
import { ScoreOdds } from '../shot/score-odds.tsx';
import { ShotCard } from '../shot/shot-card.tsx';
import { choiceOf, isSameShot } from '../shot/shot-choice.ts';
import { SideView } from '../side-view/side-view.tsx';
import { useCourse, useHole, useNotes, usePins } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { playedLayout } from '../state/played-layout.ts';
import { useFeed } from '../state/use-feed.ts';
import { useHoleWinds } from '../state/use-hole-winds.ts';
import { wantedPlan } from '../state/wanted-plan.ts';
import { DayDetails } from '../wind/day-details.tsx';
import { dayUnderstood, windOf } from '../wind/day-words.ts';
import { RoundWind } from '../wind/round-wind.tsx';
import { useUnits } from '../words/use-units.ts';
import { HoleNote } from './hole-note.tsx';
import { RoundAim } from './round-aim.tsx';
import { RoundSummary } from './round-summary.tsx';
import { TryBar } from './try-bar.tsx';
import { useTriedShot } from './use-tried-shot.ts';

type Tried = Readonly<{ ref: string; shot: ShotChoice }>;

/** The one screen a round is planned on. */
export function RoundView() {
  const planner = usePlanner();
  const { settings, feed, change, perform, changeLibrary, backend } = planner;
  const { courseId, playerId, ref } = settings;
  const units = useUnits();
  const layout = playedLayout(settings, courseId);
  const played = layout === undefined ? {} : { layout };
  const shownFeed = useFeed(feed);
  const course = useCourse(courseId);
  const hole = useHole(courseId, ref);
  const pins = usePins(courseId, playerId);
  const notes = useNotes(courseId);
  const [draftDay, setDraftDay] = useState<DayInput | null>(null);
  const [tried, setTried] = useState<Tried | null>(null);
  const [range, setRange] = useState<readonly [number, number]>([0, 100]);

  const planned = ref === null ? undefined : shownFeed.holes.get(ref);
  const choice = planned?.plan.choice ?? null;
  const pin = pins.data?.find(p => p.ref === ref) ?? null;
  const wantedShot = tried !== null && tried.ref === ref ? tried.shot : (pin?.shot ?? null);
  const ownShot = wantedShot !== null && choice !== null && !isSameShot(wantedShot, choice) ? wantedShot : null;
  const refs = useMemo(() => course.data?.holes.map(h => h.ref) ?? [], [course.data]);
  const own = useTriedShot(ref, ownShot, choice, refs);

  const dayShown = draftDay ?? dayUnderstood(settings.day, shownFeed.summary?.air ?? null);
  const holeWinds = useHoleWinds();
  const ownWind = ref === null ? undefined : holeWinds?.get(ref);
  const windShown = useMemo(
    () => (ownWind === undefined ? windOf(dayShown) : { gust_mps: null, ...ownWind.wind }),
    [dayShown, ownWind],
  );
  const bearing_deg = course.data?.holes.find(h => h.ref === ref)?.bearing_deg ?? null;
  const dragDay = (day: DayInput) => {
    setDraftDay(day);
    const wanted = wantedPlan(settings, refs, day);
    if (wanted !== null && ref !== null) feed.planWhileDragging(wanted, ref);
  };
  const setDay = (day: DayInput, before: DayInput) => {
    setDraftDay(null);
    if (JSON.stringify(day) === JSON.stringify(before)) {
      // Dragged back to where it was: the plan for it is shown again.
      const wanted = wantedPlan(settings, refs, day);
      if (wanted !== null && shownFeed.isQuick) feed.plan(wanted, ref);
      return;
    }
    perform({
      what: 'change the wind',
      undo: () => change({ day: before }),
      redo: () => change({ day }),
    });
  };
  const tryShot = useCallback(
    (shot: ShotChoice | null, what: string) => {
      const next = shot === null || ref === null ? null : { ref, shot };
      perform({ what, undo: () => setTried(tried), redo: () => setTried(next) });
    },
    [perform, ref, tried],
  );
  const pickShot = (shot: ShotReport) =>
    tryShot(choice !== null && isSameShot(shot, choice) && pin === null ? null : choiceOf(shot), `try ${shot.disc}`);
  const base = ownShot ?? (choice === null ? null : choiceOf(choice));
  const beforeDrag = useRef<{ tried: Tried | null } | null>(null);
  const dragAim = useCallback(
    (aimBearing_deg: number) => {
      beforeDrag.current ??= { tried };
      if (base !== null && ref !== null)
        setTried({ ref, shot: { ...base, aimBearing_deg: roundedAim(aimBearing_deg) } });
    },
    [base, ref, tried],
  );
  const settleAim = useCallback(() => {
    const before = beforeDrag.current;
    beforeDrag.current = null;
    if (before !== null)
      perform({ what: 'drag the aim', undo: () => setTried(before.tried), redo: () => setTried(tried) });
  }, [perform, tried]);

  const holes = useMemo(
    () =>
      (course.data?.holes ?? []).map(({ ref, name, par, playLength_m }) => ({
        ref,
        name,
        par,
        length_m: playLength_m,
      })),
    [course.data],
  );
  const pinned = useMemo(() => new Set(pins.data?.map(p => p.ref)), [pins.data]);
  const noted = useMemo(() => new Set(notes.data?.map(n => n.ref)), [notes.data]);
  const showHole = useCallback((next: string) => change({ ref: next }), [change]);

  const isStale = ref !== null && shownFeed.stale.has(ref);
  const shot = ownShot === null ? choice : (own.value?.shot ?? null);
  const drawing = ownShot === null ? (planned?.drawing.choice ?? null) : (own.value?.drawing ?? null);
  const aimBearing_deg = ownShot?.aimBearing_deg ?? choice?.aimBearing_deg ?? null;
  const isPinShown = pin !== null && wantedShot !== null && isSameShot(pin.shot, wantedShot);
  const lineHole = holes.find(h => h.ref === ref);

  return (
    <div className="round-view">
      <aside className="round-left" aria-label="The round">
        <RoundSummary
          feed={shownFeed}
          onCancel={() => feed.cancel()}
          onPlan={() => {
            const wanted = wantedPlan(settings, refs);
            if (wanted !== null) feed.plan(wanted, ref);
          }}
        />
        <HoleList
          holes={holes}
          planned={shownFeed.holes}
          stale={shownFeed.stale}
          pinned={pinned}
          noted={noted}
          winds={holeWinds}
          shown={ref}
          onShow={showHole}
        />
      </aside>

      <main className="round-main" aria-label={ref === null ? 'The hole' : `Hole ${ref}`}>
        {lineHole !== undefined && (
          <h1 className="hole-title">
            <span className="hole-number">{lineHole.ref}</span> {lineHole.name}{' '}
            <span className="hole-sub">
              par {lineHole.par} · {units.length(lineHole.length_m, 0)}
              {hole.data?.report.rise_m != null &&
                Math.abs(hole.data.report.rise_m) >= 0.5 &&
                ` · ${units.length(Math.abs(hole.data.report.rise_m))} ${hole.data.report.rise_m > 0 ? 'up' : 'down'}`}
              {ownWind !== undefined && ` · ${ownWind.at}`}
            </span>
          </h1>
        )}
        {shot !== null ? (
          <ShotCard
            shot={shot}
            report={hole.data?.report ?? null}
            leaves_m={leaves_m(drawing, hole.data?.map.basket ?? null)}
            standing={ownShot === null ? 'choice' : isPinShown ? 'pinned' : 'tried'}
            isStale={isStale || own.isPending}
          />
        ) : (
          <section className="shot-card empty" aria-label="The throw">
            <p className="shot-standing">{shownFeed.state === 'failed' ? 'No plan' : 'Planning this hole…'}</p>
            {shownFeed.problems.map(problem => (
              <p key={problem.path + problem.message}>
                <strong>{problem.path}</strong> {problem.message}
              </p>
            ))}
          </section>
        )}
        {choice !== null && base !== null && (
          <TryBar
            shot={shot ?? choice}
            cost={ownShot === null ? null : (own.value?.shot ?? null)}
            isChoice={ownShot === null}
            isPending={own.isPending}
            isPinned={isPinShown}
            onTurn={by_deg =>
              tryShot({ ...base, aimBearing_deg: roundedAim(base.aimBearing_deg + by_deg) }, 'turn the aim')
            }
            onBack={() => tryShot(choiceOf(choice), 'go back to the choice')}
            onPin={() => {
              if (ref === null || courseId === null || playerId === null || shot === null) return;
              void changeLibrary(
                'The throw could not be pinned',
                backend.call.pinShot({
                  courseId,
                  playerId,
                  ...played,
                  ref,
                  shot: base,
                  title: `${shot.disc}: ${shot.title}`,
                }),
              );
            }}
            onUnpin={() => {
              if (ref === null || courseId === null || playerId === null) return;
              setTried(null);
              void changeLibrary(
                'The throw could not be unpinned',
                backend.call.unpinShot({ courseId, playerId, ...played, ref }),
              );
            }}
          />
        )}
        {hole.data !== undefined && (
          <div className="hole-pictures">
            <HoleView
              map={hole.data.map}
              drawing={drawing}
              other={ownShot === null ? null : (planned?.drawing.choice ?? null)}
              aimBearing_deg={aimBearing_deg}
              onRange={setRange}
              onAim={base === null ? null : dragAim}
              onAimSettled={settleAim}
              wind={windShown}
              windText={units.speed(windShown.speed_mps)}
              isStale={isStale}
            />
            <Tabs className="picture-tabs">
              <TabList aria-label="Picture" className="tab-list picture-choice">
                <Tab id="side">From the side</Tab>
                <Tab id="gap">From the tee</Tab>
              </TabList>
              <TabPanel id="side" className="picture-panel">
                <SideView
                  map={hole.data.map}
                  drawing={drawing}
                  other={ownShot === null ? null : (planned?.drawing.choice ?? null)}
                  range={range}
                  isStale={isStale}
                />
              </TabPanel>
              <TabPanel id="gap" className="picture-panel">
                <GapView map={hole.data.map} report={hole.data.report} drawing={drawing} />
              </TabPanel>
            </Tabs>
          </div>
        )}
      </main>

      <aside className="round-right" aria-label="Day and reasons">
        <RoundWind
          day={dayShown}
          refs={refs}
          holeRef={ref}
          holeBearing_deg={bearing_deg}
          winds={holeWinds}
          onDrag={dragDay}
          onSet={setDay}
        />
        <DayDetails day={settings.day} onSet={setDay} />
        <RoundAim par={holes.reduce((sum, { par }) => sum + par, 0)} />
        {planned !== undefined && ref !== null && courseId !== null && (
          <Tabs className="why-tabs">
            <TabList aria-label="About this hole" className="tab-list">
              <Tab id="why">Why</Tab>
              <Tab id="instead">Instead</Tab>
              <Tab id="wind">Wind</Tab>
              <Tab id="care">Care</Tab>
              <Tab id="note">Note</Tab>
            </TabList>
            <TabPanel id="why" className="why-panel">
              <ScoreOdds plan={planned.plan} />
              <Reasons plan={planned.plan} />
            </TabPanel>
            <TabPanel id="instead" className="why-panel">
              <Alternatives plan={planned.plan} shown={shot ?? planned.plan.choice} onPick={pickShot} />
            </TabPanel>
            <TabPanel id="wind" className="why-panel">
              <FlipRose plan={planned.plan} today={windShown} isPlanning={shownFeed.state === 'running'} />
            </TabPanel>
            <TabPanel id="care" className="why-panel">
              <Cautions
                cautions={[...planned.plan.cautions, ...(shownFeed.summary?.cautions ?? [])]}
                assumptions={planned.plan.assumptions}
                notMapped={hole.data?.report.notMapped ?? []}
              />
            </TabPanel>
            <TabPanel id="note" className="why-panel">
              <HoleNote courseId={courseId} holeRef={ref} />
            </TabPanel>
          </Tabs>
        )}
      </aside>
    </div>
  );
}

/** Aims are told apart by tenths of a degree; no arm holds less. */
const roundedAim = (bearing_deg: number): number => Math.round((((bearing_deg % 360) + 360) % 360) * 10) / 10;
