import { Button } from 'react-aria-components';
import { isFinished, scoreOf } from '../../core/review/round-file.ts';
import type { KeptRound } from '../state/rounds.ts';

type HoleStripProps = Readonly<{
  refs: readonly string[];
  round: KeptRound['round'];
  chosen: string | null;
  onChoose: (ref: string) => void;
}>;

/** All holes of the course with their scores so far. */
export function HoleStrip({ refs, round, chosen, onChoose }: HoleStripProps) {
  return (
    <nav className="hole-strip" aria-label="Holes of the round">
      {refs.map(ref => {
        const hole = round.holes.find(own => own.ref === ref);
        const score = hole === undefined ? null : isFinished(hole) ? String(scoreOf(hole)) : '…';
        const words = score === null ? 'not entered' : score === '…' ? 'begun' : ' throws';
        return (
          <Button
            key={ref}
            className="hole-chip"
            aria-current={ref === chosen ? 'true' : undefined}
            data-chosen={ref === chosen || undefined}
            onPress={() => onChoose(ref)}
          >
            <span>
              <span className="unseen">Hole </span>
              {ref}
              <span className="unseen">, </span>
            </span>
            <strong aria-hidden={score === null || score === '…'}>{score ?? '–'}</strong>
            <span className="unseen">{words}</span>
          </Button>
        );
      })}
    </nav>
  );
}
