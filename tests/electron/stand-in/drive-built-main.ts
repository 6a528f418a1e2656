import { registerHooks } from 'node:module';
import { setImmediate, setTimeout } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import type { AppEvent } from '../../../backend/api/contract/events.ts';
import type { DesktopBridge } from '../../../backend/api/desktop-bridge.ts';
import type { Result } from '../../../core/units/result.ts';

/*
 * Run as a process of its own: node drive-built-main.ts BUILT_MAIN --data=FOLDER. Runs the built main.js on the stand-in,
 * does through its window what a player does, and prints what came of it as one line of JSON.
 */

const url = new URL('./electron-module.ts', import.meta.url).href;
registerHooks({
  resolve: (name, context, next) => (name === 'electron' ? { url, shortCircuit: true } : next(name, context)),
});
const { standIn } = await import('./electron-module.ts');
await import(pathToFileURL(process.argv[2]!).href);

while (standIn.windows.length === 0 && standIn.seen.exits.length === 0) await setImmediate();
const window = standIn.windows[0];
if (window === undefined) {
  print({ errors: standIn.seen.errors });
  process.exit(1);
}
await window.loaded;
const app = window.webContents.page?.roundwright as DesktopBridge;

const events: AppEvent[] = [];
app.subscribe(event => events.push(event));
const { courseId, playerId } = answered(await app.getSettings({}));
if (courseId === null || playerId === null) throw new Error('a new library has no sample');
const courses = answered(await app.listCourses({}));
const planId = crypto.randomUUID();
const { total } = answered(
  await app.startPlan({ planId, courseId, playerId, day: {}, holes: ['1'], limits: { classes: ['putter'] } }),
);
while (!events.some(({ kind }) => kind === 'planDone' || kind === 'planFailed')) await setTimeout(20);
const sheet = await window.session.fetch(`roundwright://app/sheet?planId=${planId}&form=pocket&length=m&speed=mps`);

print({
  url: window.webContents.mainFrame.url,
  courses: courses.map(({ name }) => name),
  total,
  events: events.map(({ kind }) => kind),
  sheet: { status: sheet.status, holdsHole: /Hole 1|>1</.test(await sheet.text()) },
});
standIn.app.once('quit', () => process.exit(0));
standIn.app.quit();

function answered<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(result.problems.map(({ path, message }) => `${path}: ${message}`).join('\n'));
}

function print(value: unknown): void {
  process.stdout.write(`${JSON.stringify(value)}\n`);
}
