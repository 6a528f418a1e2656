import { anhyzerText } from '../../core/player/anhyzer-sign.ts';
import { readinessText } from '../../core/player/readiness.ts';
import type { ThrowRow, ThrowsReport } from '../../core/player/throws-report.ts';
import { usePlanner } from '../state/planner.tsx';
import { capital } from '../words/number-words.ts';

/** Which discs suit the arm, and which have changed. */
export function ArmPanel({ report }: Readonly<{ report: ThrowsReport }>) {
  const fast = report.throws.filter(t => t.role === 'throwing' && t.readiness.gate !== null);
  const early = fast.filter(t => t.readiness.verdict === 'too fast for now');
  const ready = fast.filter(t => t.readiness.verdict === 'ready');
  const known = report.throws.filter(t => t.drift !== null);
  const moved = known.filter(t => t.drift?.verdict !== 'no change shown');
  const still = known.filter(t => t.drift?.verdict === 'no change shown');
  return (
    <>
      <section aria-label="Too fast for now">
        <h2>Too fast for now</h2>
        {early.length === 0 ? (
          <p>No disc of this bag is too fast for your arm.</p>
        ) : (
          <ul className="plain-list">
            {early.map(t => (
              <FastDisc key={`${t.discId} ${t.hand}`} row={t} />
            ))}
          </ul>
        )}
        {ready.length > 0 && (
          <details>
            <summary>Fast discs your arm is ready for ({ready.length})</summary>
            <ul className="plain-list">
              {ready.map(t => (
                <FastDisc key={`${t.discId} ${t.hand}`} row={t} />
              ))}
            </ul>
          </details>
        )}
        <p className="soft">
          The distances that open a faster disc are common practice, no source. Anhyzer against flat: measured when four
          throws on anhyzer stand beside flat ones in the same session, else from the flight model. A disc too fast for
          an arm also asks for more effort: build up slowly, and stop when something hurts.
        </p>
      </section>
      <section aria-label="Wear">
        <h2>Wear</h2>
        {known.length === 0 && (
          <p>
            Not known yet. It takes sessions with a date, at least a week apart, with the sideways finish of three or
            more throws of the same disc in each.
          </p>
        )}
        {known.length > 0 && moved.length === 0 && (
          <p>No disc shows a change that its sessions can tell from chance.</p>
        )}
        {moved.length > 0 && (
          <ul className="plain-list">
            {moved.map(t => (
              <Drift key={`${t.discId} ${t.hand}`} row={t} />
            ))}
          </ul>
        )}
        {still.length > 0 && (
          <details>
            <summary>No change shown ({still.length})</summary>
            <ul className="plain-list">
              {still.map(t => (
                <Drift key={`${t.discId} ${t.hand}`} row={t} />
              ))}
            </ul>
          </details>
        )}
        <p className="soft">
          Stability in turn units, less than 0 less stable, each session in its own wind; a day’s aim and a misread wind
          are taken to shift it by 0.3 (assumed). With many discs, one in ten shows a change by chance.
        </p>
      </section>
    </>
  );
}

function FastDisc({ row }: Readonly<{ row: ThrowRow }>) {
  const { settings } = usePlanner();
  const { readiness, anhyzer } = row;
  return (
    <li>
      <strong>{readiness.verdict === 'ready' ? `${row.disc}, ${row.hand}` : capital(row.hand)}:</strong>{' '}
      {readinessText(readiness, settings)}.
      {anhyzer !== null && (
        <span className={anhyzer.isShown && readiness.verdict !== 'ready' ? 'care-word sign-line' : 'sign-line soft'}>
          {capital(anhyzerText(anhyzer, readiness.verdict, settings))}.
        </span>
      )}
    </li>
  );
}

function Drift({ row }: Readonly<{ row: ThrowRow }>) {
  const { drift } = row;
  if (drift === null) return null;
  return (
    <li>
      <strong>
        {row.disc}, {row.hand}:
      </strong>{' '}
      {drift.text}.
      <span className="sign-line soft">
        {drift.sessions.map(s => `${s.date}: ${signed(s.stability)} ± ${(1.645 * s.sd).toFixed(1)}`).join(' · ')}
      </span>
    </li>
  );
}

function signed(value: number): string {
  const size = Math.abs(value).toFixed(1);
  return Number(size) === 0 ? '0.0' : `${value < 0 ? '−' : '+'}${size}`;
}
