/** What a key does on the map. Metres are east and north. */
export type MapKey =
  | Readonly<{ does: 'shift'; east_m: number; north_m: number }>
  | Readonly<{ does: 'place' | 'finish' | 'takeBack' | 'cancel' | 'remove' | 'hold' | 'copy' | 'insert' }>
  | Readonly<{ does: 'step'; by: 1 | -1 }>
  | Readonly<{ does: 'zoom'; by: 1 | -1 }>;

type Pressed = Readonly<{ key: string; shiftKey: boolean; ctrlKey: boolean; metaKey: boolean; altKey: boolean }>;

const ARROWS: Readonly<Record<string, readonly [east: number, north: number]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

const OTHERS: Readonly<Record<string, MapKey>> = {
  Enter: { does: 'place' },
  ' ': { does: 'place' },
  f: { does: 'finish' },
  Backspace: { does: 'takeBack' },
  Escape: { does: 'cancel' },
  Delete: { does: 'remove' },
  m: { does: 'hold' },
  c: { does: 'copy' },
  i: { does: 'insert' },
  n: { does: 'step', by: 1 },
  p: { does: 'step', by: -1 },
  '+': { does: 'zoom', by: 1 },
  '=': { does: 'zoom', by: 1 },
  '-': { does: 'zoom', by: -1 },
};

/**
 * Arrows move a metre, with Shift ten, with Ctrl a tenth.
 * @returns null for keys that are not the map's
 */
export function mapKey({ key, shiftKey, ctrlKey, metaKey, altKey }: Pressed): MapKey | null {
  const arrow = ARROWS[key];
  if (arrow !== undefined && !altKey && !metaKey) {
    const step_m = ctrlKey ? 0.1 : shiftKey ? 10 : 1;
    return { does: 'shift', east_m: arrow[0] * step_m + 0, north_m: arrow[1] * step_m + 0 };
  }
  if (ctrlKey || metaKey || altKey) return null;
  return OTHERS[key.length === 1 ? key.toLowerCase() : key] ?? null;
}

/** As shown beside the map. */
export const KEY_HELP: readonly (readonly [keys: string, does: string])[] = [
  ['Arrows', 'move the cross 1 m; with Shift 10 m, with Ctrl 0.1 m'],
  [
    'Enter',
    'place a point; without a kind to draw: choose what lies under the cross, then pick up and put down its points',
  ],
  ['F', 'finish the shape'],
  ['Backspace', 'take the last point back'],
  ['N, P', 'next, previous point of the chosen thing'],
  ['M', 'pick the whole thing up, Enter puts it down'],
  ['I', 'new point after the chosen one'],
  ['C', 'copy the chosen thing'],
  ['Delete', 'delete the chosen point, or thing'],
  ['Esc', 'stop drawing, put back, let go'],
  ['+, −', 'nearer, farther'],
];
