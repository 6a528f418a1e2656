import type { RefObject } from 'react';
import type { Output } from '../../backend/api/contract/api.ts';
import type { Result } from '../../core/units/result.ts';
import { usePlanner } from '../state/planner.tsx';

/**
 * Prints a sheet or keeps it as a PDF: through the shell, or in a browser by printing the frame it is shown in.
 * @param what - "sheet", as problems name it
 */
export function useKeepSheet(
  what: string,
  frame: RefObject<HTMLIFrameElement | null>,
  render: () => Promise<Result<Output<'renderSheet'>>>,
): (how: 'print' | 'pdf') => Promise<void> {
  const { backend, tell, say } = usePlanner();
  return async how => {
    const { desktop } = backend;
    if (desktop === null) return frame.current?.contentWindow?.print();
    const sheet = await render();
    if (!sheet.ok) return tell({ what: `The ${what} could not be made`, problems: sheet.problems });
    const { title, html, fileName } = sheet.value;
    if (how === 'print') {
      const done = await desktop.desktop.printPage({ title, html });
      if (!done.ok) tell({ what: `The ${what} could not be printed`, problems: done.problems });
      else if (done.value.printed) say('Sent to the printer');
      return;
    }
    const kept = await desktop.desktop.savePdf({ fileName: fileName.replace(/\.html$/, '.pdf'), html });
    if (!kept.ok) tell({ what: 'The PDF could not be saved', problems: kept.problems });
    else if (kept.value.saved) say('PDF saved');
  };
}
