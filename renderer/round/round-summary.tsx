import { Button, ProgressBar } from 'react-aria-components';
import type { Feed } from '../state/plan-feed.ts';
import { againstPar, throwsWords } from '../words/number-words.ts';

/** What the round comes to, and how far the planning is. */
export function RoundSummary({
  feed,
  onCancel,
  onPlan,
}: Readonly<{ feed: Feed; onCancel: () => void; onPlan: () => void }>) {
  const plans = [...feed.holes.values()].map(hole => hole.plan);
  const expected = plans.reduce((sum, plan) => sum + plan.expectedThrows, 0);
  const par = plans.reduce((sum, plan) => sum + plan.par, 0);
  return (
    <div className="round-summary">
      {plans.length > 0 && (feed.state !== 'running' || feed.isQuick) && (
        <p className="round-score">
          <strong>{throwsWords(expected)}</strong> throws over {plans.length} {plans.length === 1 ? 'hole' : 'holes'},
          par {par} ({againstPar(expected, par)})
        </p>
      )}
      {feed.state === 'running' && !feed.isQuick ? (
        <div className="round-progress">
          <ProgressBar
            aria-label="Planning"
            value={feed.done}
            maxValue={Math.max(1, feed.total)}
            valueLabel={`${feed.done} of ${feed.total} holes`}
          >
            {({ percentage, valueText }) => (
              <>
                <svg className="progress" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
                  <rect className="progress-room" width="100" height="4" />
                  <rect className="progress-done" width={percentage ?? 0} height="4" />
                </svg>
                <span className="progress-text">Planning, {valueText}</span>
              </>
            )}
          </ProgressBar>
          <Button className="small-button" onPress={onCancel}>
            Stop
          </Button>
        </div>
      ) : feed.state === 'cancelled' || feed.state === 'failed' ? (
        <p className="round-stopped">
          {feed.state === 'cancelled' ? 'Stopped.' : 'Planning failed.'}{' '}
          <Button className="small-button" onPress={onPlan}>
            Plan again
          </Button>
        </p>
      ) : null}
    </div>
  );
}
