import { useQueryClient } from '@tanstack/react-query';
import { Button, ProgressBar } from 'react-aria-components';
import { usePlanner } from '../state/planner.tsx';
import type { Review } from '../state/rounds.ts';

/** Starts a review, shows how far it is, stops it, and says when the one shown is of before a change. */
export function ReviewProgress({
  roundId,
  review,
  isAny,
}: Readonly<{ roundId: string; review: Review; isAny: boolean }>) {
  const { backend, tell } = usePlanner();
  const queries = useQueryClient();
  const again = () => queries.invalidateQueries({ queryKey: ['rounds', roundId, 'review'] });
  const start = async () => {
    const answer = await backend.call.startReview({ roundId });
    if (!answer.ok) tell({ what: 'The round could not be reviewed', problems: answer.problems });
    await again();
  };
  const stop = async () => {
    await backend.call.cancelReview({ roundId });
    await again();
  };
  if (review.state === 'running')
    return (
      <div className="round-progress review-progress">
        <ProgressBar
          aria-label="Reviewing"
          value={review.done}
          maxValue={Math.max(1, review.total)}
          valueLabel={`${review.done} of ${review.total} holes`}
        >
          {({ percentage, valueText }) => (
            <>
              <svg className="progress" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
                <rect className="progress-room" width="100" height="4" />
                <rect className="progress-done" width={percentage ?? 0} height="4" />
              </svg>
              <span className="progress-text">Reviewing, {valueText}</span>
            </>
          )}
        </ProgressBar>
        <Button className="small-button" onPress={() => void stop()}>
          Stop
        </Button>
      </div>
    );
  if (!isAny)
    return <p className="review-state">Nothing to review yet: enter a hole until it is holed out, under “Enter”.</p>;
  if (review.state === 'done' && !review.isOlder) return null;
  return (
    <div className="review-state">
      {review.state === 'cancelled' && <p>Stopped.</p>}
      {review.problems.length > 0 && (
        <ul className="field-problem" role="alert">
          {review.problems.map(({ path, message }) => (
            <li key={path + message}>
              {path}: {message}
            </li>
          ))}
        </ul>
      )}
      {review.report !== null && review.isOlder && (
        <p>The round, the bag or the course was changed since this review was made.</p>
      )}
      {review.report === null && review.state === 'none' && (
        <p>
          The review values every lie of the round, as the plan does, and says what each throw won or lost: which part
          was the choice, and which the throw itself. It takes a few seconds a hole.
        </p>
      )}
      <Button className="button" onPress={() => void start()}>
        {review.report === null ? 'Review this round' : 'Review again'}
      </Button>
    </div>
  );
}
