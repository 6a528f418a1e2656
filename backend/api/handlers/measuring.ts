import type { MeasureDesk } from '../../library/measure-desk.ts';
import type { measuring } from '../contract/measuring.ts';
import type { Handlers } from '../dispatch.ts';

export function measuringHandlers(desk: MeasureDesk): Pick<Handlers, keyof typeof measuring> {
  return {
    startMeasuring: input => desk.start(input),
    getMeasuring: ({ measuringId }) => desk.get(measuringId),
    cancelMeasuring: ({ measuringId }) => ({ ok: true, value: { cancelled: desk.cancel(measuringId) } }),
  };
}
