import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { placeWindow, readWindowState, type WindowState, writeWindowState } from '../../electron/window-state.ts';

const SCREEN = { x: 0, y: 25, width: 1440, height: 875 };
const SECOND = { x: 1440, y: 0, width: 1920, height: 1080 };
const at = (x: number, y: number, width = 1000, height = 700): WindowState => ({
  bounds: { x, y, width, height },
  maximized: false,
  fullScreen: false,
});

describe('where the window opens', () => {
  // Wanted values by hand from the rule: centred at 1280 × 800 on the main screen, or as left when it can be caught.
  it.each([
    { name: 'first start', state: null, areas: [SCREEN], want: { x: 80, y: 63, width: 1280, height: 800 } },
    {
      name: 'a small screen',
      state: null,
      areas: [{ x: 0, y: 0, width: 1024, height: 700 }],
      want: { x: 0, y: 0, width: 1024, height: 700 },
    },
    { name: 'as left', state: at(100, 50), areas: [SCREEN], want: { x: 100, y: 50, width: 1000, height: 700 } },
    {
      name: 'as left on the second screen',
      state: at(1500, 10),
      areas: [SCREEN, SECOND],
      want: { x: 1500, y: 10, width: 1000, height: 700 },
    },
    {
      name: 'the second screen is gone',
      state: at(1500, 10),
      areas: [SCREEN],
      want: { x: 220, y: 113, width: 1000, height: 700 },
    },
    {
      name: 'title bar above the screen',
      state: at(100, -40),
      areas: [SCREEN],
      want: { x: 220, y: 113, width: 1000, height: 700 },
    },
    {
      name: 'title bar below the screen',
      state: at(100, 890),
      areas: [SCREEN],
      want: { x: 220, y: 113, width: 1000, height: 700 },
    },
    {
      name: 'all but a sliver to the left',
      state: at(-950, 50),
      areas: [SCREEN],
      want: { x: 220, y: 113, width: 1000, height: 700 },
    },
    {
      name: 'half to the left',
      state: at(-500, 50),
      areas: [SCREEN],
      want: { x: -500, y: 50, width: 1000, height: 700 },
    },
    {
      name: 'too small to use',
      state: at(100, 50, 300, 200),
      areas: [SCREEN],
      want: { x: 100, y: 50, width: 640, height: 480 },
    },
    { name: 'no screen known', state: null, areas: [], want: { x: 0, y: 0, width: 1280, height: 800 } },
  ])('$name', ({ state, areas, want }) => expect(placeWindow(state, areas)).toEqual(want));
});

describe('the state file', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'roundwright-window-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('comes back as it was written, with nothing left beside it', () => {
    const file = join(folder, 'window.json');
    const state = { ...at(1, 2), maximized: true };
    writeWindowState(file, state);
    expect(readWindowState(file)).toEqual(state);
    expect(readdirSync(folder)).toEqual(['window.json']);
  });

  it.each([
    '',
    '{',
    'null',
    '[]',
    '{"bounds":{"x":0,"y":0,"width":-5,"height":1e99},"maximized":false,"fullScreen":false}',
  ])('is passed over when it says %j', text => {
    const file = join(folder, 'broken.json');
    writeFileSync(file, text);
    expect(readWindowState(file)).toBeNull();
  });

  it('may be missing, or not writable', () => {
    expect(readWindowState(join(folder, 'none.json'))).toBeNull();
    expect(() => writeWindowState(join(folder, 'no', 'such', 'folder.json'), at(0, 0))).not.toThrow();
  });
});
