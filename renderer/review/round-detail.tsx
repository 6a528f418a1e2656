import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { Button, type Key, Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { isFinished } from '../../core/review/round-file.ts';
import { offerFile } from '../shell/files.ts';
import { usePlanner } from '../state/planner.tsx';
import { type KeptRound, useReview, useRound, useRoundCourse } from '../state/rounds.ts';
import { OfferThrows } from './offer-throws.tsx';
import { ReviewProgress } from './review-progress.tsx';
import { ReviewResult } from './review-result.tsx';
import { RoundEntry } from './round-entry.tsx';
import { WindWas } from './wind-was.tsx';

type Round = KeptRound['round'];

/** One round: entering it, its review, the wind, and what its throws would teach the fit. */
export function RoundDetail({ roundId }: Readonly<{ roundId: string }>) {
  const { backend, changeLibrary, tell } = usePlanner();
  const queries = useQueryClient();
  const kept = useRound(roundId);
  const review = useReview(roundId);
  const course = useRoundCourse(kept.data?.courseId ?? null, kept.data?.round.layout);
  const [tab, setTab] = useState<Key | null>(null);
  if (kept.data === undefined || review.data === undefined)
    return (
      <section className="library-detail" aria-label="The round">
        <p className="soft">Reading the round…</p>
      </section>
    );
  const { courseId, playerId, round } = kept.data;
  const isAny = round.holes.some(isFinished);
  const isWhole =
    isAny && course.data !== undefined && round.holes.filter(isFinished).length === course.data.holes.length;
  const save = async (next: Round, what: string): Promise<boolean> => {
    // Shown at once: throws are entered faster than a library is asked.
    queries.setQueryData(['rounds', roundId], { ...kept.data, round: next });
    const call = backend.call.saveRound({ roundId, courseId, playerId, round: next, what });
    const done = await changeLibrary('The round could not be kept', call);
    if (done === null) queries.setQueryData(['rounds', roundId], kept.data);
    await queries.invalidateQueries({ queryKey: ['rounds', roundId] });
    return done !== null;
  };
  const write = async (format: 'json' | 'csv') => {
    const answer = await backend.call.exportRound({ roundId, format });
    if (answer.ok) await offerFile(backend, answer.value);
    else tell({ what: 'The round could not be written', problems: answer.problems });
  };
  const { report } = review.data;
  const shown = tab ?? (isWhole || report !== null ? 'result' : 'enter');
  return (
    <section className="library-detail" aria-label="The round">
      <div className="detail-head">
        <h2 className="round-name">{course.data?.name ?? round.course}</h2>
        <DateField date={round.date} onDate={date => void save({ ...round, date }, 'Change the date of the round')} />
        <Button className="small-button" onPress={() => void write('json')}>
          Export
        </Button>
        <Button className="small-button" onPress={() => void write('csv')}>
          Export as table
        </Button>
        <Button
          className="small-button danger"
          onPress={() => void changeLibrary('The round could not be deleted', backend.call.removeRound({ roundId }))}
        >
          Delete round
        </Button>
      </div>
      <Tabs className="review-tabs" selectedKey={shown} onSelectionChange={setTab}>
        <TabList aria-label="The round" className="tab-list">
          <Tab id="enter">Enter</Tab>
          <Tab id="result">Won and lost</Tab>
          <Tab id="wind">The wind</Tab>
          <Tab id="offer">Teach the bag</Tab>
        </TabList>
        <TabPanel id="enter" className="review-panel">
          <RoundEntry kept={kept.data} onSave={save} />
        </TabPanel>
        <TabPanel id="result" className="review-panel">
          <ReviewProgress roundId={roundId} review={review.data} isAny={isAny} />
          {report !== null && <ReviewResult report={report} courseId={courseId} layout={round.layout} />}
        </TabPanel>
        <TabPanel id="wind" className="review-panel">
          <ReviewProgress roundId={roundId} review={review.data} isAny={isAny} />
          <WindWas round={round} report={report} onSave={save} />
        </TabPanel>
        <TabPanel id="offer" className="review-panel">
          <OfferThrows roundId={roundId} isReviewed={report !== null} />
        </TabPanel>
      </Tabs>
    </section>
  );
}

function DateField({ date, onDate }: Readonly<{ date: string; onDate: (date: string) => void }>) {
  const [typed, setTyped] = useState(date);
  useEffect(() => setTyped(date), [date]);
  const commit = () => {
    if (typed !== date && /^\d{4}-\d{2}-\d{2}$/.test(typed)) onDate(typed);
    else setTyped(date);
  };
  return (
    <label className="plain-field">
      <span>Played on</span>
      <input
        type="date"
        value={typed}
        onChange={event => setTyped(event.target.value)}
        onBlur={commit}
        onKeyDown={event => {
          if (event.key === 'Enter') commit();
        }}
      />
    </label>
  );
}
