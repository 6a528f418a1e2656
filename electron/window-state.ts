import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import type { Rectangle } from 'electron';
import { z } from 'zod';

const DEFAULT_WIDTH = 1280;
const DEFAULT_HEIGHT = 800;
export const LEAST_WIDTH = 640;
export const LEAST_HEIGHT = 480;
/** So much of the title bar must lie on a screen for the window to be caught with the mouse. */
const GRIP = { width: 120, height: 32 };

const WindowStateSchema = z.strictObject({
  bounds: z.strictObject({
    x: z.int(),
    y: z.int(),
    width: z.int().min(1).max(32_767),
    height: z.int().min(1).max(32_767),
  }),
  maximized: z.boolean(),
  fullScreen: z.boolean(),
});
export type WindowState = z.output<typeof WindowStateSchema>;

/** The state left behind by the last window; null when there is none that can be read, which costs the player nothing. */
export function readWindowState(file: string): WindowState | null {
  try {
    return WindowStateSchema.safeParse(JSON.parse(readFileSync(file, 'utf8'))).data ?? null;
  } catch {
    return null;
  }
}

/** Never half a file: written beside it and moved over. A full disk loses the place of the window, nothing else. */
export function writeWindowState(file: string, state: WindowState): void {
  try {
    writeFileSync(`${file}.part`, JSON.stringify(state));
    renameSync(`${file}.part`, file);
  } catch {
    // The window opens in its default place next time.
  }
}

/**
 * Where to open the window: as it was left, if it can still be reached on today's screens.
 * @param areas - the screens' areas without task bars; the first is the main one
 */
export function placeWindow(state: WindowState | null, areas: readonly Rectangle[]): Rectangle {
  if (state !== null && areas.some(area => canBeReached(state.bounds, area))) {
    const { x, y, width, height } = state.bounds;
    return { x, y, width: Math.max(LEAST_WIDTH, width), height: Math.max(LEAST_HEIGHT, height) };
  }
  const main = areas[0];
  if (main === undefined) return { x: 0, y: 0, width: DEFAULT_WIDTH, height: DEFAULT_HEIGHT };
  const width = Math.min(state?.bounds.width ?? DEFAULT_WIDTH, main.width);
  const height = Math.min(state?.bounds.height ?? DEFAULT_HEIGHT, main.height);
  return {
    x: main.x + Math.round((main.width - width) / 2),
    y: main.y + Math.round((main.height - height) / 2),
    width,
    height,
  };
}

function canBeReached(bounds: Rectangle, area: Rectangle): boolean {
  const across = Math.min(bounds.x + bounds.width, area.x + area.width) - Math.max(bounds.x, area.x);
  const isTopVisible = bounds.y >= area.y && bounds.y + GRIP.height <= area.y + area.height;
  return across >= GRIP.width && isTopVisible;
}
