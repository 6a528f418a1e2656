import { Radio, RadioGroup } from 'react-aria-components';
import type { ThrowRow } from '../../core/player/throws-report.ts';

/** Which hand's discs are shown. */
export function HandChoice({
  hand,
  onPick,
}: Readonly<{ hand: ThrowRow['hand']; onPick: (hand: ThrowRow['hand']) => void }>) {
  return (
    <RadioGroup
      className="radio-group"
      aria-label="Hand"
      orientation="horizontal"
      value={hand}
      onChange={value => onPick(value === 'forehand' ? 'forehand' : 'backhand')}
    >
      <Radio className="radio" value="backhand">
        Backhand
      </Radio>
      <Radio className="radio" value="forehand">
        Forehand
      </Radio>
    </RadioGroup>
  );
}
