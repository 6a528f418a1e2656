import { useQueryClient } from '@tanstack/react-query';
import { Button } from 'react-aria-components';
import type { SeasonShot, Trend } from '../../core/review/season-report.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { usePlanner } from '../state/planner.tsx';
import { useReview, useSeason } from '../state/rounds.ts';
import { useUnits } from '../words/use-units.ts';
import { choiceWords, PHASE_WORDS, plural, signed } from './cost-words.ts';
import { ReviewProgress } from './review-progress.tsx';
import { TrendLine } from './trend-line.tsx';

const VERDICTS = {
  tooFew: 'too few rounds',
  cannotTell: 'no clear trend',
  better: 'getting better',
  worse: 'getting worse',
};

/** Several rounds of one player: where the throws go, whether that changes, and the best and worst of them. */
export function SeasonView({ playerId, onOpen }: Readonly<{ playerId: string; onOpen: (roundId: string) => void }>) {
  const { backend, tell } = usePlanner();
  const season = useSeason(playerId);
  const queries = useQueryClient();
  if (season.data === undefined) return <p className="soft">Reading the rounds…</p>;
  const { rounds, trends, best, worst, worstChoices, waiting, notes } = season.data;
  const reviewAll = async () => {
    for (const { roundId } of waiting) {
      const answer = await backend.call.startReview({ roundId });
      if (!answer.ok) tell({ what: 'A round could not be reviewed', problems: answer.problems });
    }
    // Those that are shown ask on by themselves from here.
    await queries.invalidateQueries({ queryKey: ['rounds'] });
  };
  return (
    <div className="season">
      <h1>Season</h1>
      {waiting.length > 0 && (
        <p className="review-state">
          {plural(waiting.length, 'round is', 'rounds are')} not reviewed, or changed since.{' '}
          <Button className="small-button" onPress={() => void reviewAll()}>
            Review {waiting.length === 1 ? 'it' : 'them'}
          </Button>
        </p>
      )}
      {waiting.map(({ roundId, date }) => (
        <RunningReview key={roundId} roundId={roundId} date={date} />
      ))}
      {rounds.length === 0 ? (
        <p>
          Once rounds are reviewed, this shows where throws are won and lost over the season. Three rounds give a mean
          with its interval, five a trend.
        </p>
      ) : (
        <>
          <ScrollTable label="Reviewed rounds">
            <table className="disc-table sums-table">
              <caption>Reviewed rounds</caption>
              <thead>
                <tr>
                  <th scope="col">Date</th>
                  <th scope="col">Course</th>
                  {['Holes', 'Score', 'Expected', 'Won', 'Choices', 'Execution'].map(head => (
                    <th key={head} scope="col" className="number">
                      {head}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {rounds.map(round => (
                  <tr key={round.roundId}>
                    <th scope="row">
                      <Button className="small-button" onPress={() => onOpen(round.roundId)}>
                        {round.date}
                      </Button>
                    </th>
                    <td>{round.course}</td>
                    <td className="number">{round.holes}</td>
                    <td className="number">
                      {round.score} <span className="soft">par {round.par}</span>
                    </td>
                    <td className="number">{round.expected.toFixed(1)}</td>
                    <td className="number">{signed(round.gain)}</td>
                    <td className="number">{choiceWords(round.choiceCost)}</td>
                    <td className="number">{signed(round.executionCost)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollTable>
          <h2>Trends</h2>
          <div className="trends">
            {trends.map(trend => (
              <TrendCard key={trend.measure} trend={trend} />
            ))}
          </div>
          <ShotList title="Throws that won most" shots={best} onOpen={onOpen} />
          <ShotList title="Throws that lost most" shots={worst} onOpen={onOpen} />
          <ShotList title="Choices that cost most" shots={worstChoices} onOpen={onOpen} isChoice />
          <ul className="soft review-notes">
            {notes.map(note => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

/** How far the review of a round is, with a way to stop it; nothing while none is made. */
function RunningReview({ roundId, date }: Readonly<{ roundId: string; date: string }>) {
  const review = useReview(roundId);
  if (review.data?.state !== 'running') return null;
  return (
    <section aria-label={`Review of ${date}`}>
      <p className="soft">{date}</p>
      <ReviewProgress roundId={roundId} review={review.data} isAny />
    </section>
  );
}

function TrendCard({ trend }: Readonly<{ trend: Trend }>) {
  const { words, mean, meanInterval, perRoundInterval, perRound, verdict, text, isBetterUp } = trend;
  if (mean === null) return null;
  return (
    <section className="trend-card" aria-label={words}>
      <h3>{words}</h3>
      <p>
        <strong>{signed(mean)}</strong>{' '}
        {meanInterval !== null && (
          <span className="soft">
            ({signed(meanInterval.low)} to {signed(meanInterval.high)}, 90 %)
          </span>
        )}
      </p>
      {trend.n > 1 && <TrendLine trend={trend} />}
      <p className="trend-verdict" data-verdict={verdict}>
        {VERDICTS[verdict]}
        <span className="soft">
          {perRound !== null && perRoundInterval !== null
            ? `: ${signed(perRound)} a round (${signed(perRoundInterval.low)} to ${signed(perRoundInterval.high)})`
            : `: ${text}`}
        </span>
      </p>
      <p className="soft">{isBetterUp ? 'Up is better.' : 'Down is better.'}</p>
    </section>
  );
}

type ShotListProps = Readonly<{
  title: string;
  shots: readonly SeasonShot[];
  onOpen: (roundId: string) => void;
  isChoice?: boolean;
}>;

function ShotList({ title, shots, onOpen, isChoice = false }: ShotListProps) {
  const units = useUnits();
  if (shots.length === 0) return null;
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <ol className="shot-list">
        {shots.map(shot => (
          <li key={`${shot.roundId} ${shot.ref} ${shot.number}`}>
            <strong>{isChoice ? `−${shot.choiceCost!.toFixed(2)}` : signed(shot.gain)}</strong>{' '}
            {shot.disc ?? 'disc not written'} {PHASE_WORDS[shot.phase]}, {units.length(shot.toBasket_m)} to the basket
            {shot.holed ? ', holed' : ''}; hole {shot.ref}, throw {shot.number}{' '}
            <Button
              className="quiet-button"
              aria-label={`Open the round of ${shot.date} on ${shot.course}`}
              onPress={() => onOpen(shot.roundId)}
            >
              {shot.date}
            </Button>
          </li>
        ))}
      </ol>
    </section>
  );
}
