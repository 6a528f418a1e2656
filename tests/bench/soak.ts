import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { openBackend } from '../../backend/api/open-backend.ts';
import { tinyCourse, tinyPlayer } from '../backend/tiny-round.ts';

/*
 * Replans a small round again and again, as a player does who drags the wind all day: node tests/bench/soak.ts [plans] [seed]
 * Of ten, nine are quick answers and one is a full plan. Threads share a wind's flights, which are let go only when all of
 * them have collected their garbage: the memory goes up and down, so the peak of the last third is held against the middle's.
 */
const [plans, seed] = [Number(process.argv[2] ?? 2000), Number(process.argv[3] ?? 1)];
/** Our own choice: one wind's flights that wait to be collected. A leak of a tenth of that a plan would show in 2,000. */
const LIMIT_MB = 200;
const folder = mkdtempSync(join(tmpdir(), 'roundwright-soak-'));
const rng = xoroshiro128plus(seed);
const random = (below: number) => (rng.next() >>> 0) % below;

const opened = openBackend({ folder });
if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
const backend = opened.value;
const answered = async <T>(method: string, input: unknown): Promise<T> => {
  const answer = await backend.call(method, input);
  if (!answer.ok) throw new Error(`${method}: ${JSON.stringify(answer.problems)}`);
  return answer.value as T;
};
const ends = new Map<string, (kind: string) => void>();
backend.subscribe(event => {
  if (event.kind === 'planDone' || event.kind === 'planFailed' || event.kind === 'planCancelled')
    ends.get(event.planId)?.(event.kind);
});

async function plan(courseId: string, playerId: string, quick: boolean): Promise<void> {
  const planId = randomUUID();
  const day = { wind: { speed_mps: 1 + random(80) / 10, from_deg: random(360) } };
  const end = new Promise<string>(resolve => ends.set(planId, resolve));
  await answered('startPlan', { planId, courseId, playerId, day, holes: ['1'], quick, remember: !quick });
  const kind = await end;
  ends.delete(planId);
  if (kind !== 'planDone') throw new Error(`plan ended as ${kind}`);
}

const rss_MB = () => process.memoryUsage.rss() / 1e6;

try {
  const { courseId } = await answered<{ courseId: string }>('importCourse', {
    fileName: 'tiny.geojson',
    text: JSON.stringify(tinyCourse()),
  });
  const { playerId } = await answered<{ playerId: string }>('importPlayer', {
    fileName: 'tiny.json',
    text: JSON.stringify(tinyPlayer()),
  });
  const begun = performance.now();
  const seen: number[] = [];
  for (let k = 0; k < plans; k++) {
    await plan(courseId, playerId, k % 10 !== 0);
    if ((k + 1) % Math.max(1, Math.floor(plans / 20)) !== 0) continue;
    globalThis.gc?.();
    await sleep(20);
    seen.push(rss_MB());
    const { heapUsed, arrayBuffers, external } = process.memoryUsage();
    const own = [heapUsed, arrayBuffers, external].map(bytes => (bytes / 1e6).toFixed(0));
    console.log(
      `${k + 1} plans, ${((performance.now() - begun) / 1000).toFixed(0)} s: ${seen.at(-1)!.toFixed(0)} MB (this thread: heap ${own[0]}, buffers ${own[1]}, external ${own[2]})`,
    );
  }
  const third = Math.floor(seen.length / 3);
  const peak = (values: readonly number[]) => Math.max(...values);
  const growth_MB = peak(seen.slice(2 * third)) - peak(seen.slice(third, 2 * third));
  console.log(`the last third's peak is ${growth_MB.toFixed(0)} MB above the middle's; ${LIMIT_MB} MB are borne`);
  process.exitCode = growth_MB <= LIMIT_MB ? 0 : 1;
} finally {
  await backend.close();
  rmSync(folder, { recursive: true, force: true });
}
