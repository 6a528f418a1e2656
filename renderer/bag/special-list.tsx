import type { SpecialReport } from '../../core/player/special-report.ts';
import { specialText } from '../../core/player/special-text.ts';
import { usePlanner } from '../state/planner.tsx';

type SpecialListProps = Readonly<{
  rows: readonly Readonly<{ discId: string; disc: string; hand: string; specials: readonly SpecialReport[] }>[];
}>;

/** Rollers and overhead throws: what is fitted of them, how many more are needed. Nothing where none was written down. */
export function SpecialList({ rows }: SpecialListProps) {
  const { settings } = usePlanner();
  const known = rows.flatMap(({ discId, disc, hand, specials }) =>
    specials.map(special => ({ key: `${discId} ${hand} ${special.shape}`, disc, hand, special })),
  );
  if (known.length === 0) return null;
  return (
    <section className="special-list" aria-label="Rollers and overhead throws">
      <p>
        <strong>Rollers and overhead throws</strong>
      </p>
      <ul>
        {known.map(({ key, disc, hand, special }) => (
          <li key={key}>
            <strong>
              {disc}, {hand}
            </strong>
            : {specialText(special, settings)}.
          </li>
        ))}
      </ul>
      <p className="soft">
        Plainer models than for flat throws, not checked against measured flights. Overhead throws load shoulder and
        elbow: ease in. Rollers run far: look along their whole way.
      </p>
    </section>
  );
}
