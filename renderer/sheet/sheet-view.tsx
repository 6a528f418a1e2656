import { useRef, useState } from 'react';
import { Button, Label, Radio, RadioGroup } from 'react-aria-components';
import type { Input } from '../../backend/api/contract/api.ts';
import { usePlanner } from '../state/planner.tsx';
import { useFeed } from '../state/use-feed.ts';
import { useKeepSheet } from './use-keep-sheet.ts';

type Form = Input<'renderSheet'>['form'];
const FORMS: Record<Form, string> = {
  pocket: 'Pocket, a hole a page',
  folded: 'Booklet, folded',
  fourAPage: 'Four holes a page',
};

/** The printed sheet as it will come out, and the ways to print or keep it. */
export function SheetView() {
  const { settings, feed, backend } = usePlanner();
  const { planId, state } = useFeed(feed);
  const [form, setForm] = useState<Form>('pocket');
  const frame = useRef<HTMLIFrameElement>(null);
  const { length, speed } = settings;
  const keep = useKeepSheet('sheet', frame, () => backend.call.renderSheet({ planId: planId!, form, length, speed }));
  if (planId === null || state !== 'done')
    return (
      <main className="first-steps">
        <h1>The sheet comes from a finished plan</h1>
        <p>
          {state === 'running' ? 'The round is being planned; the sheet follows at once.' : 'Plan the round first.'}
        </p>
      </main>
    );
  const query = new URLSearchParams({ planId, form, length, speed });
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
