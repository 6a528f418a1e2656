import { useEffect, useState } from 'react';
import { Button, Label, TextArea, TextField } from 'react-aria-components';
import { useNotes } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { playedLayout } from '../state/played-layout.ts';

/** The player's own words on a hole; kept on the sheet too. */
export function HoleNote({ courseId, holeRef }: Readonly<{ courseId: string; holeRef: string }>) {
  const { backend, changeLibrary, settings } = usePlanner();
  const layout = playedLayout(settings, courseId);
  const notes = useNotes(courseId);
  const kept = notes.data?.find(note => note.ref === holeRef)?.text ?? '';
  const [text, setText] = useState(kept);
  useEffect(() => setText(kept), [kept]);
  const save = () => {
    if (text !== kept)
      void changeLibrary(
        'The note could not be kept',
        backend.call.setNote({ courseId, ref: holeRef, text, ...(layout !== undefined && { layout }) }),
      );
  };
  return (
    <div className="hole-note">
      <TextField value={text} onChange={setText} onBlur={save} maxLength={2000}>
        <Label>
          Your note on hole {holeRef}
          {layout === undefined ? '' : `, ${layout}`}
        </Label>
        <TextArea
          rows={5}
          placeholder="What you saw last time: a gap that opened, a soft landing, where a disc got lost…"
        />
      </TextField>
      <Button className="small-button" onPress={save} isDisabled={text === kept}>
        Keep note
      </Button>
      <p className="soft">Notes are printed on the sheet.</p>
    </div>
  );
}
