import { randomUUID } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Input, Method } from '../../backend/api/contract/api.ts';
import { type Backend, openBackend } from '../../backend/api/open-backend.ts';
import { openStore } from '../../backend/store/open-store.ts';
import { parsePlayerText } from '../../core/player/player-file.ts';
import { parseRound } from '../../core/review/round-file.ts';

/*
 * Lists of a large library: node tests/bench/scale-library.ts [courses] [throws]
 * Half of the throws are fieldwork of twenty players, half are in their rounds. Fails when a list takes 100 ms or more.
 */
const [courses, throws] = [Number(process.argv[2] ?? 2000), Number(process.argv[3] ?? 200_000)];
const PLAYERS = 20;
const LIMIT_ms = 100;
const folder = mkdtempSync(join(tmpdir(), 'roundwright-scale-'));

const sample = (name: string) => readFileSync(new URL(`../../sample-courses/${name}`, import.meta.url), 'utf8');
const text = sample('short-nine.geojson');
const read = parsePlayerText(sample('sample-player.json'));
const round = parseRound(JSON.parse(sample('sample-round.json')));
if (!read.ok || !round.ok) throw new Error('a sample is damaged');
const player = read.value;
const played = round.value;
const throwsOfRound = played.holes.reduce((sum, hole) => sum + hole.throws.length, 0);

function fill(): void {
  const opened = openStore(folder);
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const { tables, transaction, close } = opened.value;
  const courseIds = Array.from({ length: courses }, () => randomUUID());
  transaction(() => {
    courseIds.forEach((courseId, k) => {
      tables.courses.put({ courseId, name: `Course number ${k}`, fileName: 'c.geojson', sample: 0, addedAt_ms: k });
      tables.courseFiles.put({ courseId, text });
    });
    const each = Math.ceil(throws / 2 / PLAYERS);
    const pool = player.sessions.flatMap(session => session.throws);
    for (let k = 0; k < PLAYERS; k++) {
      const playerId = randomUUID();
      const sessions = Array.from({ length: Math.ceil(each / 50) }, (_, s) => ({
        ...player.sessions[0]!,
        throws: Array.from({ length: 50 }, (_, t) => pool[(s * 50 + t) % pool.length]!),
      }));
      const file = JSON.stringify({ ...player, name: `Player ${k}`, sessions });
      tables.players.put({ playerId, file, sample: 0, addedAt_ms: k });
      for (let r = 0; r < Math.ceil(each / throwsOfRound); r++) {
        const file = JSON.stringify(played);
        const courseId = courseIds[r % courses]!;
        const { date } = played;
        tables.rounds.put({ roundId: randomUUID(), courseId, playerId, date, file, addedAt_ms: r });
      }
    }
  });
  close();
}

async function timed<K extends Method>(backend: Backend, method: K, input: Input<K>, runs: number) {
  const times: number[] = [];
  let size = 0;
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    const answer = await backend.call(method, input);
    times.push(performance.now() - start);
    if (!answer.ok) throw new Error(`${method}: ${JSON.stringify(answer.problems)}`);
    size = Array.isArray(answer.value) ? answer.value.length : 1;
  }
  const first = times[0]!;
  times.sort((a, b) => a - b);
  return { size, first, min: times[0]!, median: times[Math.floor(runs / 2)]! };
}

function opened(): Backend {
  const backend = openBackend({ folder });
  if (!backend.ok) throw new Error(JSON.stringify(backend.problems));
  return backend.value;
}

try {
  const start = performance.now();
  fill();
  console.log(`${courses} courses, ${throws} throws: filled in ${((performance.now() - start) / 1000).toFixed(1)} s`);
  let backend = opened();
  for (const method of ['listCourses', 'listPlayers'] as const) {
    const { first } = await timed(backend, method, {}, 1);
    console.log(`${method}: ${(first / 1000).toFixed(1)} s once, while nothing is summed up (files of an older app)`);
  }
  await backend.close();
  const startAgain = performance.now();
  backend = opened();
  console.log(`opened again in ${(performance.now() - startAgain).toFixed(0)} ms (the whole file is looked over)`);
  const listed = await backend.call('listPlayers', {});
  const { playerId } = (listed.ok ? (listed.value as { playerId: string; name: string }[]) : []).find(({ name }) =>
    name.startsWith('Player '),
  )!;
  const lists = [
    ['listCourses', {}],
    ['listPlayers', {}],
    ['listRounds', { playerId }],
    ['listChanges', {}],
    ['getSettings', {}],
  ] as const;
  let slow = 0;
  for (const [method, input] of lists) {
    // The rounds are summed up the first time they are listed.
    if (method === 'listRounds') {
      const { first } = await timed(backend, method, input as never, 1);
      console.log(`listRounds: ${(first / 1000).toFixed(1)} s once, while nothing is summed up`);
    }
    const { size, first, min, median } = await timed(backend, method, input as never, 20);
    const isSlow = median >= LIMIT_ms;
    if (isSlow) slow++;
    const words = [first, min, median].map(time => `${time.toFixed(1)}`);
    console.log(
      `${method} (${size}): first ${words[0]} ms, min ${words[1]} ms, median ${words[2]} ms of 20${isSlow ? '  TOO SLOW' : ''}`,
    );
  }
  const { min } = await timed(backend, 'renamePlayer', { playerId, name: 'Somebody' }, 3);
  console.log(`renamePlayer (5,000 throws): min ${min.toFixed(1)} ms of 3`);
  await backend.close();
  process.exitCode = slow === 0 ? 0 : 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
