import type { HoleReview, ThrowReview } from '../../core/review/review-report.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { useUnits } from '../words/use-units.ts';
import { choiceWords, PHASE_WORDS, signed } from './cost-words.ts';

const isBound = ({ known }: ThrowReview) => known === 'line' || known === 'disc';
/** Said once for all throws, by the sign before the cost. */
const AT_LEAST = 'the choice cost at least this much';

/** Every throw of one hole: what the lie was worth, what the throw won, what would have been better. */
export function HoleThrows({ hole }: Readonly<{ hole: HoleReview }>) {
  const units = useUnits();
  const remarks = hole.throws.flatMap(t => remarksOf(t).map(text => ({ number: t.number, text })));
  return (
    <>
      <ScrollTable label={`Throws of hole ${hole.ref}`}>
        <table className="disc-table sums-table">
          <caption className="unseen">Throws of hole {hole.ref}</caption>
          <thead>
            <tr>
              <th scope="col">Throw</th>
              <th scope="col">Disc and line</th>
              <th scope="col" className="number">
                Expected
              </th>
              <th scope="col" className="number">
                Won
              </th>
              <th scope="col" className="number">
                Choice
              </th>
              <th scope="col" className="number">
                Execution
              </th>
            </tr>
          </thead>
          <tbody>
            {hole.throws.map(t => (
              <tr key={t.number}>
                <th scope="row">{t.number}</th>
                <td>
                  {[t.disc ?? 'not written', t.hand === 'forehand' ? 'forehand' : null, t.shape]
                    .filter(Boolean)
                    .join(', ')}
                  <span className="soft second-line">
                    {PHASE_WORDS[t.phase]}, {units.length(t.toBasket_m)} to go
                  </span>
                  {t.penalties.length > 0 && (
                    <span className="care-word"> {t.penalties.map(p => p.kind).join(', ')}</span>
                  )}
                </td>
                <td className="number">{t.valueBefore.throws.toFixed(2)}</td>
                <td
                  className="number"
                  data-good={t.gain.throws > 0.03 || undefined}
                  data-bad={t.gain.throws < -0.03 || undefined}
                >
                  {signed(t.gain.throws)}
                </td>
                <td className="number">
                  {choiceWords(t.choiceCost?.throws ?? null, isBound(t))}
                  {t.choiceCost !== null && t.choiceCost.throws > 0 && <ErrorOf estimate={t.choiceCost} />}
                </td>
                <td className="number">
                  {t.executionCost === null ? '?' : signed(t.executionCost.throws)}
                  {t.executionCost !== null && t.known !== 'putt' && <ErrorOf estimate={t.executionCost} />}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollTable>
      <ul className="soft throw-remarks">
        {remarks.map(({ number, text }) => (
          <li key={`${number} ${text}`}>
            Throw {number}: {text}
          </li>
        ))}
        {hole.throws.some(isBound) && (
          <li>≥: what was not written of the throw was taken at its best, so the choice cost at least so much.</li>
        )}
      </ul>
    </>
  );
}

/** One standard error, under its number. */
function ErrorOf({ estimate }: Readonly<{ estimate: Readonly<{ standardError: number }> }>) {
  return <span className="soft second-line">± {estimate.standardError.toFixed(2)}</span>;
}

function remarksOf(t: ThrowReview): string[] {
  const better =
    t.choiceCost === null || t.choiceCost.throws === 0
      ? []
      : [
          t.best === null
            ? `the putt would have saved ${t.choiceCost.throws.toFixed(2)}`
            : `${t.best.title} with ${t.best.disc} would have saved ${t.choiceCost.throws.toFixed(2)} (± ${t.choiceCost.standardError.toFixed(2)})`,
        ];
  return [...better, ...t.notes.filter(note => !note.endsWith(AT_LEAST))];
}
