import type { HoleMap } from '../../geometry/hole-map.ts';
import { haloed, number, type Place, pathData } from './svg.ts';
import type { ViewFrame } from './view-frame.ts';

/** A pad: where the thrower stands, thrown upwards from. */
export function teeMark([x, y]: Place): string {
  return `<rect class="tee" x="${number(x - 0.8)}" y="${number(y)}" width="1.6" height="2.2"/>`;
}

/** A pole in a ring. */
export function basketMark([x, y]: Place): string {
  const at = `cx="${number(x)}" cy="${number(y)}"`;
  return `<circle class="ring" ${at} r="1.25"/><circle class="pole" ${at} r="0.5"/>`;
}

/** The plane a throw must not enter, and the object itself. */
export function mandoMarks(map: HoleMap, frame: ViewFrame): string {
  return map.mandos
    .map(({ line, at }) => {
      const [x, y] = frame.place(at);
      return `${haloed('mando', pathData(line.map(frame.place)))}${haloed('mandoPost', `M${number(x - 0.8)} ${number(y - 0.8)}l1.6 1.6m0 -1.6l-1.6 1.6`)}`;
    })
    .join('');
}
