import { memo, useEffect, useMemo, useRef, useState } from 'react';
import { ListBox, ListBoxItem, type Selection } from 'react-aria-components';
import type { PlannedHole } from '../../backend/api/contract/plans.ts';
import type { TimedWind } from '../../core/air/timed-winds.ts';
import { compassPoint } from '../../core/units/compass-point.ts';
import type { HoleWinds } from '../state/use-hole-winds.ts';
import { againstPar } from '../words/number-words.ts';
import { percent } from '../words/percent.ts';
import { type ShowUnits, useUnits } from '../words/use-units.ts';
import { SORTS, type SortName, sorted, stakeOf } from './sort-holes.ts';

export type ListedHole = Readonly<{ ref: string; name?: string; par: number; length_m: number }>;
type HoleListProps = Readonly<{
  holes: readonly ListedHole[];
  planned: ReadonlyMap<string, PlannedHole>;
  stale: ReadonlySet<string>;
  pinned: ReadonlySet<string>;
  noted: ReadonlySet<string>;
  /** Each hole's own wind, where winds are given by tee time. */
  winds: HoleWinds | null;
  shown: string | null;
  onShow: (ref: string) => void;
}>;

/** All holes at once: what to throw, the odds, and how much hangs on the choice. */
export const HoleList = memo(function HoleList({
  holes,
  planned,
  stale,
  pinned,
  noted,
  winds,
  shown,
  onShow,
}: HoleListProps) {
  const units = useUnits();
  const [sort, setSort] = useState<SortName>('order');
  const rows = useMemo(() => sorted(holes, planned, sort), [holes, planned, sort]);
  const list = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another hole or another order moves the row
  useEffect(() => {
    list.current?.querySelector('[data-selected]')?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [shown, sort, holes]);
  const select = (keys: Selection) => {
    const [key] = keys === 'all' ? [] : [...keys];
    if (key !== undefined) onShow(String(key));
  };
  return (
    <nav ref={list} className="hole-list" aria-label="Holes">
      <label className="sort-field">
        <span>Sort by</span>
        <select value={sort} onChange={event => setSort(event.target.value as SortName)}>
          {Object.entries(SORTS).map(([name, words]) => (
            <option key={name} value={name}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <ListBox
        aria-label="Holes"
        selectionMode="single"
        selectionBehavior="replace"
        disallowEmptySelection
        selectedKeys={shown === null ? [] : [shown]}
        onSelectionChange={select}
        className="hole-rows"
        items={rows.map(hole => ({ ...hole, id: hole.ref }))}
        dependencies={[planned, stale, pinned, noted, winds]}
      >
        {hole => {
          const plan = planned.get(hole.ref)?.plan;
          const own = winds?.get(hole.ref);
          const stake = plan === undefined ? 0 : stakeOf(plan);
          return (
            <ListBoxItem
              id={hole.ref}
              textValue={`Hole ${hole.ref}`}
              className="hole-row"
              data-stale={stale.has(hole.ref) || undefined}
            >
              <span className="hole-ref">{hole.ref}</span>
              <span className="hole-main">
                <span className="hole-shot">
                  {plan === undefined ? (hole.name ?? 'Not planned yet') : plan.choice.disc}
                </span>
                <span className="hole-facts">
                  {plan !== undefined && plan.choice.penaltyChance >= 0.05 ? (
                    <>
                      {units.length(hole.length_m, 0)}
                      <span className="hole-risk"> · {percent(plan.choice.penaltyChance)} penalty</span>
                    </>
                  ) : (
                    `par ${hole.par} · ${units.length(hole.length_m, 0)}`
                  )}
                </span>
                {own !== undefined && (
                  <span className="hole-facts hole-wind">
                    {own.at} · {windWords(own.wind, units)}
                  </span>
                )}
              </span>
              <span className="hole-side">
                <span className="hole-score">
                  {plan === undefined ? '' : againstPar(plan.expectedThrows, plan.par)}
                </span>
                <span className="hole-signs">
                  {pinned.has(hole.ref) && <span title="You pinned a throw here">pin</span>}
                  {noted.has(hole.ref) && <span title="You noted something here">note</span>}
                  {plan !== undefined && <Stake stake={stake} />}
                </span>
              </span>
            </ListBoxItem>
          );
        }}
      </ListBox>
    </nav>
  );
});

const windWords = ({ speed_mps, from_deg }: TimedWind, units: ShowUnits): string =>
  speed_mps === 0 ? 'calm' : `${compassPoint(from_deg)} ${units.speed(speed_mps)}`;

const STAKE_STEPS = [0.03, 0.1, 0.25];

/** How much hangs on the choice: none to three bars. */
function Stake({ stake }: Readonly<{ stake: number }>) {
  const level = STAKE_STEPS.filter(step => stake >= step).length;
  const words = ['any disc will do', 'a little hangs on it', 'the choice matters', 'the choice matters much'][level]!;
  return (
    <svg className="stake" viewBox="0 0 14 10" role="img" aria-label={words}>
      <title>{words}</title>
      {[0, 1, 2].map(i => (
        <rect
          key={i}
          className={i < level ? 'stake-on' : 'stake-off'}
          x={i * 5}
          y={6 - i * 3}
          width={3.5}
          height={4 + i * 3}
        />
      ))}
    </svg>
  );
}
