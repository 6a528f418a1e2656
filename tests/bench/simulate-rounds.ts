import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { makeDay } from '../../core/air/day.ts';
import { parseCourseText } from '../../core/course/parse-course-text.ts';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import { fitPlayer } from '../../core/player/fit-player.ts';
import { parsePlayerText } from '../../core/player/player-file.ts';
import { makeDayLibraries } from '../../core/strategy/day-libraries.ts';
import { chiSquareAt } from './chi-square.ts';
import { type SimulatedRounds, sampleMean, shareWithin, simulateRounds, worstFifth } from './round-simulation.ts';

/**
 * Rounds of the sample courses played throw by throw with fresh scatter by the sample player, as the plans for the three attitudes
 * advise; against what the plans state.
 * Run: node tests/bench/simulate-rounds.ts [rounds] [course …]
 */

const ALLOWED_A_HOLE = 0.03;
const STANDARD_ERRORS = 3;
const LEAST_CHANCE = 0.01;
const DROP_M = 22;
const SEED = 1;

const [rounds = '10000', ...courses] = process.argv.slice(2);
const sample = (name: string) => readFileSync(new URL(`../../sample-courses/${name}`, import.meta.url), 'utf8');
const player = fitPlayer(ok(parsePlayerText(sample('sample-player.json'))));
const day = ok(makeDay({ wind: { speed_mps: 4, from_deg: 250, gust_mps: 7 } }));
const libraries = makeDayLibraries(player, day, {}, DROP_M, SEED);

console.log(
  `${cpus()[0]?.model}, ${cpus().length} cores, Node ${process.version}; ${rounds} rounds, wind 4 m/s from 250°`,
);
for (const name of courses.length > 0 ? courses : ['short-nine', 'old-orchard', 'ridge-and-reservoir']) {
  const course = ok(parseCourseText(sample(`${name}.geojson`), name));
  console.log(`\n${name}: hole, length, stated, simulated (standard error), difference`);
  const maps = course.holes.map(hole => buildHoleMap(course, hole));
  const simulated = simulateRounds(maps, libraries, Number(rounds), undefined, hole => {
    const { mean, error } = sampleMean(hole.scores);
    const off = mean - hole.expectedThrows;
    const flag = Math.abs(off) > STANDARD_ERRORS * error + ALLOWED_A_HOLE ? '  out of the allowance' : '';
    const row = [hole.ref, `${hole.length_m.toFixed(0)} m`, hole.expectedThrows.toFixed(3), mean.toFixed(3)];
    console.log(`${row.join('  ')} (${error.toFixed(3)})  ${off.toFixed(3)}${flag}`);
  });
  judge(name, simulated);
}

function judge(name: string, { holes, even, guard, push, target, statedEven, statedPush }: SimulatedRounds): void {
  const { mean, error } = sampleMean(even);
  const stated = holes.reduce((sum, hole) => sum + hole.expectedThrows, 0);
  const allowed = STANDARD_ERRORS * error + ALLOWED_A_HOLE * holes.length;
  console.log(
    `${name}: round ${stated.toFixed(2)} stated, ${mean.toFixed(2)} simulated, ${verdict(Math.abs(mean - stated) <= allowed)} (allowed ${allowed.toFixed(2)})`,
  );
  const chances = holes.reduce((sum, hole) => convolved(sum, hole.stated), [1]);
  const counts = chances.map((_, throws) => even.filter(total => total === throws).length);
  const fit = chiSquareAt(counts, chances, ALLOWED_A_HOLE * holes.length);
  console.log(
    `  scores of the round: chi-square ${fit.statistic.toFixed(1)} on ${fit.freedom}, chance ${fit.chance.toFixed(3)} at a shift of ${fit.shift.toFixed(2)} throws, ${verdict(fit.chance >= LEAST_CHANCE)}`,
  );
  const gain = push.map((total, r) => Number(total <= target) - Number((even[r] ?? 0) <= target));
  const won = sampleMean(gain);
  console.log(
    `  push, target ${target}: ${shareWithin(push, target).toFixed(4)} against even ${shareWithin(even, target).toFixed(4)}, gain ${won.mean.toFixed(4)} (${won.error.toFixed(4)}), ${verdict(won.mean > 0)}; stated ${statedPush.toFixed(4)} and ${statedEven.toFixed(4)}`,
  );
  const tail = worstFifth(even) - worstFifth(guard);
  console.log(
    `  guard: worst fifth ${worstFifth(guard).toFixed(3)} against even ${worstFifth(even).toFixed(3)}, gain ${tail.toFixed(3)}, ${verdict(tail > 0)}; other shots on ${holes.filter(hole => hole.guardOption !== 0).length} holes`,
  );
}

function convolved(totals: readonly number[], scores: readonly number[]): number[] {
  const next = new Array<number>(totals.length + scores.length).fill(0);
  totals.forEach((chance, total) => {
    scores.forEach((p, i) => {
      next[total + i + 1] = (next[total + i + 1] ?? 0) + chance * p;
    });
  });
  return next;
}

function verdict(good: boolean): string {
  return good ? 'holds' : 'FAILS';
}

function ok<T>(result: { ok: true; value: T } | { ok: false; problems: readonly { message: string }[] }): T {
  if (result.ok) return result.value;
  throw new Error(result.problems.map(problem => problem.message).join('; '));
}
