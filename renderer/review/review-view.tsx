import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useCourse } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { playedLayout } from '../state/played-layout.ts';
import { useRounds } from '../state/rounds.ts';
import { roundDay } from '../wind/round-day.ts';
import { ImportRound } from './import-round.tsx';
import { RoundDetail } from './round-detail.tsx';
import { SeasonView } from './season-view.tsx';

const REVIEWED = { no: 'not reviewed', yes: 'reviewed', older: 'changed since its review' } as const;

/** Rounds that were played: entering them, what they won and lost, and what they teach. */
export function ReviewView() {
  const { settings, backend, changeLibrary } = usePlanner();
  const { courseId, playerId } = settings;
  const rounds = useRounds(playerId);
  const refs = useCourse(courseId).data?.holes.map(hole => hole.ref) ?? [];
  const queries = useQueryClient();
  const [chosen, setChosen] = useState<string | null>(null);
  if (courseId === null || playerId === null) return null;
  const list = [...(rounds.data ?? [])].reverse();
  const roundId = list.some(line => line.roundId === chosen)
    ? chosen
    : chosen === 'season'
      ? null
      : (list[0]?.roundId ?? null);
  const begin = async () => {
    const layout = playedLayout(settings, courseId);
    const played = {
      ...(layout !== undefined && { layout }),
      ...(Object.keys(settings.limits).length > 0 && { limits: settings.limits }),
    };
    const round = { schema: 'roundwright/round@1', date: today(), day: roundDay(settings, refs), ...played } as const;
    const input = { courseId, playerId, round: { ...round, holes: [] }, what: 'Begin a round' };
    const added = await changeLibrary('The round could not be begun', backend.call.saveRound(input));
    if (added !== null) await open(added.roundId);
  };
  const open = async (id: string) => {
    // The list must hold it first, or it would count as gone.
    await queries.invalidateQueries({ queryKey: ['rounds', 'of', playerId] });
    setChosen(id);
  };
  return (
    <main className="library-view review-view">
      <section className="library-list" aria-label="Rounds">
        <h1>Rounds</h1>
        <Button className="button" onPress={() => void begin()}>
          Enter a round
        </Button>
        {settings.isByTeeTime && (
          <p className="soft">
            A round is kept with one wind: of the winds by tee time the one in the middle of the round.
          </p>
        )}
        <ImportRound courseId={courseId} playerId={playerId} onAdded={id => void open(id)} />
        <Button
          className="library-item"
          aria-pressed={chosen === 'season'}
          data-chosen={chosen === 'season' || undefined}
          onPress={() => setChosen('season')}
        >
          <strong>Season</strong>
          <span>trends over all rounds</span>
        </Button>
        <ul>
          {list.map(line => (
            <li key={line.roundId}>
              <Button
                className="library-item"
                aria-pressed={line.roundId === roundId}
                data-chosen={line.roundId === roundId || undefined}
                onPress={() => setChosen(line.roundId)}
              >
                <strong>{line.date}</strong>
                <span>
                  {line.course}: {line.finished === 0 ? 'begun' : `${line.score}, ${against(line.score - line.par)}`}
                  {line.finished < line.holes && line.finished > 0 ? ', unfinished' : ''}; {REVIEWED[line.reviewed]}
                </span>
              </Button>
            </li>
          ))}
        </ul>
        <p className="soft">
          A new round is played on the course and by the player chosen above, in the wind set under Round.
        </p>
      </section>
      {chosen === 'season' ? (
        <section className="library-detail" aria-label="Season">
          <SeasonView playerId={playerId} onOpen={setChosen} />
        </section>
      ) : roundId === null ? (
        <section className="library-detail empty-state" aria-label="The round">
          <h2>No round yet</h2>
          <p>
            Enter a round you played: which disc, and how far from the basket it left you, throw by throw. Then the
            review says what each throw won or lost, and whether it was the choice or the throw.
          </p>
          <p>A round file (JSON, or a table with one row a throw) can be imported too.</p>
        </section>
      ) : (
        <RoundDetail key={roundId} roundId={roundId} />
      )}
    </main>
  );
}

/** By the clock of the player's own place. */
const today = (): string => {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

const against = (over: number) => (over === 0 ? 'even' : `${over > 0 ? '+' : '−'}${Math.abs(over)}`);
