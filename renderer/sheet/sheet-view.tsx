import { useRef, useState } from 'react';
import { Button, Label, Radio, RadioGroup } from 'react-aria-components';
import type { Input } from '../../backend/api/contract/api.ts';
import { usePlanner } from '../state/planner.tsx';
import { useFeed } from '../state/use-feed.ts';

type Form = Input<'renderSheet'>['form'];
const FORMS: Record<Form, string> = {
  pocket: 'Pocket, a hole a page',
  folded: 'Booklet, folded',
  fourAPage: 'Four holes a page',
};

/** The printed sheet as it will come out, and the ways to print or keep it. */
export function SheetView() {
  const { settings, feed, backend, tell, say } = usePlanner();
  const { planId, state } = useFeed(feed);
  const [form, setForm] = useState<Form>('pocket');
  const frame = useRef<HTMLIFrameElement>(null);
  if (planId === null || state !== 'done')
    return (
      <main className="first-steps">
        <h1>The sheet comes from a finished plan</h1>
        <p>
          {state === 'running' ? 'The round is being planned; the sheet follows at once.' : 'Plan the round first.'}
        </p>
      </main>
    );
  const { length, speed } = settings;
  const query = new URLSearchParams({ planId, form, length, speed });
  const keep = async (how: 'print' | 'pdf') => {
    const { desktop } = backend;
    if (desktop === null) return frame.current?.contentWindow?.print();
    const sheet = await backend.call.renderSheet({ planId, form, length, speed });
    if (!sheet.ok) return tell({ what: 'The sheet could not be made', problems: sheet.problems });
    const { title, html, fileName } = sheet.value;
    if (how === 'print') {
      const done = await desktop.desktop.printPage({ title, html });
      if (!done.ok) tell({ what: 'The sheet could not be printed', problems: done.problems });
      else if (done.value.printed) say('Sent to the printer');
      return;
    }
    const kept = await desktop.desktop.savePdf({ fileName: fileName.replace(/\.html$/, '.pdf'), html });
    if (!kept.ok) tell({ what: 'The PDF could not be saved', problems: kept.problems });
    else if (kept.value.saved) say('PDF saved');
  };
  return (
    <main className="sheet-view">
      <div className="sheet-tools">
        <h1>Sheet</h1>
        <RadioGroup
          value={form}
          onChange={value => setForm(value as Form)}
          orientation="horizontal"
          className="radio-group"
        >
          <Label>Size</Label>
          {Object.entries(FORMS).map(([name, words]) => (
            <Radio key={name} value={name} className="radio">
              {words}
            </Radio>
          ))}
        </RadioGroup>
        <Button className="button" onPress={() => void keep('print')}>
          Print
        </Button>
        {backend.desktop !== null && (
          <Button className="button" onPress={() => void keep('pdf')}>
            Save as PDF
          </Button>
        )}
      </div>
      <iframe
        ref={frame}
        className="sheet-frame"
        title="The sheet as it prints"
        src={`sheet?${query}`}
        sandbox="allow-same-origin allow-modals"
      />
    </main>
  );
}
