import { Button } from 'react-aria-components';
import type { ShotReport } from '../../core/strategy/plan-report.ts';
import { aimWords } from '../words/aim-words.ts';
import { costWords } from '../words/number-words.ts';

type TryBarProps = Readonly<{
  shot: ShotReport;
  /** What it costs against the choice; null while it is worked out or when it is the choice. */
  cost: Pick<ShotReport, 'regret' | 'tie'> | null;
  isChoice: boolean;
  isPending: boolean;
  isPinned: boolean;
  onTurn: (by_deg: number) => void;
  onBack: () => void;
  onPin: () => void;
  onUnpin: () => void;
}>;

/** Turn the aim and see what it costs; keep a throw or go back to the plan's. */
export function TryBar(props: TryBarProps) {
  const { shot, cost, isChoice, isPending, isPinned, onTurn, onBack, onPin, onUnpin } = props;
  return (
    <fieldset className="try-bar" aria-label="Aim and pin">
      <Button className="small-button" aria-label="Aim 1° further left" onPress={() => onTurn(-1)}>
        ◂ 1°
      </Button>
      <span className="try-aim">Aim {aimWords(shot.aimFromBasket_deg)}</span>
      <Button className="small-button" aria-label="Aim 1° further right" onPress={() => onTurn(1)}>
        1° ▸
      </Button>
      <span
        className="try-cost"
        aria-live="polite"
        data-worse={(cost !== null && !cost.tie && cost.regret >= 0.05) || undefined}
      >
        {isChoice
          ? 'the plan’s choice'
          : isPending
            ? 'working out the cost…'
            : cost === null
              ? ''
              : costWords(cost.regret, cost.tie)}
      </span>
      <span className="spring" />
      {!isChoice && (
        <Button className="small-button" onPress={onBack}>
          Back to the choice
        </Button>
      )}
      {isPinned ? (
        <Button className="small-button" onPress={onUnpin}>
          Unpin
        </Button>
      ) : (
        <Button className="small-button" onPress={onPin}>
          Pin this throw
        </Button>
      )}
    </fieldset>
  );
}
