import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { useKeepSheet } from '../sheet/use-keep-sheet.ts';
import { usePlanner } from '../state/planner.tsx';

/** The practice round on paper: shown when asked for, printed or kept. */
export function PracticeSheet({ practiceId, courseId }: Readonly<{ practiceId: string; courseId: string }>) {
  const { settings, backend } = usePlanner();
  const [isShown, setShown] = useState(false);
  const frame = useRef<HTMLIFrameElement>(null);
  const { length, speed } = settings;
  const keep = useKeepSheet('practice sheet', frame, () =>
    backend.call.renderPracticeSheet({ practiceId, courseId, length, speed }),
  );
  if (!isShown)
    return (
      <Button className="button" onPress={() => setShown(true)}>
        Show the practice sheet
      </Button>
    );
  const query = new URLSearchParams({ practiceId, courseId, length, speed });
  return (
    <section className="practice-sheet" aria-label="The practice sheet">
      <div className="sheet-tools">
        <h3>Practice sheet</h3>
        <Button className="button" autoFocus onPress={() => void keep('print')}>
          Print
        </Button>
        {backend.desktop !== null && (
          <Button className="button" onPress={() => void keep('pdf')}>
            Save as PDF
          </Button>
        )}
        <Button className="small-button" onPress={() => setShown(false)}>
          Put away
        </Button>
      </div>
      <iframe
        ref={frame}
        className="sheet-frame practice-frame"
        title="The practice sheet as it prints"
        src={`sheet?${query}`}
        sandbox="allow-same-origin allow-modals"
      />
    </section>
  );
}
