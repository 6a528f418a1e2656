import { useState } from 'react';
import { layoutRule, layoutSentences } from '../../core/player/layout-words.ts';
import type { ThrowRow, ThrowsReport } from '../../core/player/throws-report.ts';
import { usePlanner } from '../state/planner.tsx';
import { useUnits } from '../words/use-units.ts';
import { BagChart } from './bag-chart.tsx';
import { HandChoice } from './hand-choice.tsx';

/** The bag by distance and finish: what it lacks, and what it has twice. */
export function LayoutPanel({ report }: Readonly<{ report: ThrowsReport }>) {
  const { settings } = usePlanner();
  const units = useUnits();
  const hands = [...new Set(report.throws.map(t => t.hand))];
  const [chosen, setHand] = useState<ThrowRow['hand']>('backhand');
  const hand = hands.includes(chosen) ? chosen : hands[0]!;
  const rows = report.throws
    .filter(t => t.hand === hand && t.role === 'throwing')
    .sort((a, b) => a.averageDay_m - b.averageDay_m);
  const layout = {
    ...report.layout,
    gaps: report.layout.gaps.filter(gap => gap.hand === hand),
    finishGaps: report.layout.finishGaps.filter(gap => gap.hand === hand),
    doubles: report.layout.doubles.filter(double => double.hand === hand),
  };
  const { gaps, doubles } = layoutSentences(layout, settings);
  if (rows.length === 0) return <p>Every disc is kept for putting: give one the other role to see the bag laid out.</p>;
  return (
    <>
      {hands.length > 1 && <HandChoice hand={hand} onPick={setHand} />}
      <div className="layout-parts">
        <BagChart rows={rows} layout={layout} hand={hand} />
        <ol className="layout-list" aria-label={`Throwing discs, ${hand}, shortest first`}>
          {rows.map(row => (
            <li key={row.discId}>
              {row.disc}{' '}
              <span className="soft">
                {units.length(row.averageDay_m, 0)}, {units.side(row.finish_m)}
              </span>
            </li>
          ))}
        </ol>
      </div>
      <section aria-label="Gaps">
        <h2>Gaps</h2>
        <Sentences
          items={gaps}
          none="None: no two neighbours are far apart, and every kind of finish reaches far enough."
        />
      </section>
      <section aria-label="Doubles">
        <h2>Doubles</h2>
        <Sentences items={doubles} none="None: every two discs land apart by more than their own scatter." />
      </section>
      <p className="soft">{layoutRule(report.layout, settings)}</p>
    </>
  );
}

function Sentences({ items, none }: Readonly<{ items: readonly string[]; none: string }>) {
  if (items.length === 0) return <p>{none}</p>;
  return (
    <ul className="plain-list">
      {items.map(item => (
        <li key={item}>{item}</li>
      ))}
    </ul>
  );
}
