import { useState } from 'react';
import { Button } from 'react-aria-components';
import { offerFile } from '../shell/files.ts';
import { usePlanner } from '../state/planner.tsx';
import { useFeed } from '../state/use-feed.ts';

/** Hands the course on as one page: with the sheet of the plan shown, where there is one of this course. */
export function ShareButton({ courseId }: Readonly<{ courseId: string }>) {
  const { backend, feed, settings, tell, say } = usePlanner();
  const plan = useFeed(feed);
  const [isBusy, setBusy] = useState(false);
  const { length, speed } = settings;
  const isPlanned = plan.state === 'done' && plan.courseId === courseId && plan.planId !== null;
  const share = async () => {
    setBusy(true);
    const planId = isPlanned ? plan.planId : null;
    const page = await backend.call.shareCourse({ courseId, length, speed, ...(planId !== null && { planId }) });
    setBusy(false);
    if (!page.ok) return tell({ what: 'The course could not be made into a page', problems: page.problems });
    const kept = await offerFile(backend, page.value);
    if (!kept.ok) return tell({ what: 'The page could not be saved', problems: kept.problems });
    if (kept.value.saved) say(`${page.value.fileName}: any browser shows it, and Import takes the course out of it`);
  };
  return (
    <Button className="small-button" isDisabled={isBusy} onPress={() => void share()}>
      {isPlanned ? 'Share with sheet' : 'Share'}
    </Button>
  );
}
