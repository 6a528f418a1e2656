import { useUnits } from '../words/use-units.ts';
import type { Scatter } from './scatter-panel.tsx';
import { TimeChart } from './time-chart.tsx';

/** Stability and distance from session to session with what each leaves open, and what that says. */
export function DriftCharts({ scatter }: Readonly<{ scatter: Scatter }>) {
  const { drift, byDay } = scatter;
  return (
    <>
      <h3>Over time</h3>
      {drift === null ? (
        <p className="soft">
          No drift can be told yet: it takes two dated sessions a week apart with three measured sides each.
        </p>
      ) : (
        <StabilityChart drift={drift} />
      )}
      {byDay.length > 1 && <DistanceChart byDay={byDay} />}
    </>
  );
}

function StabilityChart({ drift }: Readonly<{ drift: NonNullable<Scatter['drift']> }>) {
  const { sessions, text, verdict } = drift;
  return (
    <figure className="drift-chart">
      <TimeChart
        days={sessions.map(({ date, day, stability, sd }) => ({ date, day, value: stability, sd }))}
        label={`Stability by session. ${text}`}
        least={[-0.5, 0.5]}
        unit={1}
        write={signed}
      />
      <figcaption>
        <strong>{verdict === 'no change shown' ? 'No change of stability shown' : `Now ${verdict}`}.</strong> {text}. Up
        is more stable than its numbers say; bars are 90 % intervals of one day’s throws.
      </figcaption>
    </figure>
  );
}

function DistanceChart({ byDay }: Pick<Scatter, 'byDay'>) {
  const units = useUnits();
  const values = byDay.map(({ along_m }) => along_m);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return (
    <figure className="drift-chart">
      <TimeChart
        days={byDay.map(({ date, day, along_m, sd_m }) => ({ date, day, value: along_m, sd: sd_m }))}
        label={`Distance by session: ${byDay.map(({ date, along_m }) => `${date} ${units.length(along_m, 0)}`).join(', ')}`}
        least={[low - 2, high + 2]}
        unit={units.lengthUnit_m}
        write={value_m => String(Math.round(value_m / units.lengthUnit_m))}
      />
      <figcaption>
        <strong>Distance by session</strong>, in {units.lengthUnit_m === 1 ? 'metres' : 'feet'}, with wind, slope and
        power taken out. Bars are 90 % intervals of one day’s throws; a wind misread moves a whole day.
      </figcaption>
    </figure>
  );
}

function signed(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return `${rounded > 0 ? '+' : rounded < 0 ? '−' : ''}${Math.abs(rounded)}`;
}
