import type { PracticeDesk } from '../../library/practice-desk.ts';
import { sheetOfPractice } from '../../sheet/sheet-of-practice.ts';
import type { practice } from '../contract/practice.ts';
import type { Handlers } from '../dispatch.ts';
import { fileNameOf } from '../file-name.ts';

export function practiceHandlers(desk: PracticeDesk): Pick<Handlers, keyof typeof practice> {
  return {
    startPractice: input => desk.start(input),
    getPractice: ({ practiceId }) => desk.get(practiceId),
    cancelPractice: ({ practiceId }) => ({ ok: true, value: { cancelled: desk.cancel(practiceId) } }),
    renderPracticeSheet: ({ practiceId, courseId, paper, length, speed }) => {
      const found = desk.found(practiceId);
      if (!found.ok) return found;
      const { report, played } = found.value;
      const at = report.rounds.findIndex(({ key }) => key === courseId);
      const round = report.rounds[at];
      if (round === undefined)
        return { ok: false, problems: [{ path: 'courseId', message: 'has no round in this search' }] };
      const html = sheetOfPractice(report, round, played[at]!, { paper, units: { length, speed } });
      const title = `Practice at ${round.course}, ${report.player}`;
      return { ok: true, value: { title, fileName: fileNameOf(`${title} sheet`, 'html'), html } };
    },
  };
}
