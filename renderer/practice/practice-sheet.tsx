import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { usePlanner } from '../state/planner.tsx';

/** The practice round on paper: shown when asked for, printed or kept. */
export function PracticeSheet({ practiceId, courseId }: Readonly<{ practiceId: string; courseId: string }>) {
  const { settings, backend, tell, say } = usePlanner();
  const [isShown, setShown] = useState(false);
  const frame = useRef<HTMLIFrameElement>(null);
  const { length, speed } = settings;
  const keep = async (how: 'print' | 'pdf') => {
    const { desktop } = backend;
    if (desktop === null) return frame.current?.contentWindow?.print();
    const sheet = await backend.call.renderPracticeSheet({ practiceId, courseId, length, speed });
    if (!sheet.ok) return tell({ what: 'The practice sheet could not be made', problems: sheet.problems });
    const { title, html, fileName } = sheet.value;
    if (how === 'print') {
      const done = await desktop.desktop.printPage({ title, html });
      if (!done.ok) tell({ what: 'The practice sheet could not be printed', problems: done.problems });
      else if (done.value.printed) say('Sent to the printer');
      return;
    }
    const kept = await desktop.desktop.savePdf({ fileName: fileName.replace(/\.html$/, '.pdf'), html });
    if (!kept.ok) tell({ what: 'The PDF could not be saved', problems: kept.problems });
    else if (kept.value.saved) say('PDF saved');
  };
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
