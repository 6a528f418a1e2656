import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import {
  absoluteOf,
  biasOf,
  borrowing,
  coveredOf,
  FIFTH_GENERATOR,
  FIRST_GENERATOR,
  FOURTH_GENERATOR,
  floorOf,
  type Generator,
  type Recovery,
  recover,
  rmsOf,
  SECOND_GENERATOR,
  SIXTH_GENERATOR,
  slipShifts,
  THIRD_GENERATOR,
} from '../core/player/fit-trials.ts';

/**
 * Fits many invented players whose truth is known: bias, error, coverage of the 90 % intervals, a grip slip, borrowing.
 * `fit-recovery.ts [players] [players of the smaller tables] [--write]`: with --write the tables of docs/fit.md are made anew.
 */
const ARGUMENTS = process.argv.slice(2).filter(word => !word.startsWith('--'));
const PLAYERS = Number(ARGUMENTS[0] ?? 200);
const WRITE = process.argv.includes('--write');
const DOCUMENT = new URL('../../docs/fit.md', import.meta.url);
const NOISES = [0.6, 1, 1.6] as const;
const BEGIN = '<!-- tables: tests/bench/fit-recovery.ts --write -->';

const SET_ON = [FIRST_GENERATOR, SECOND_GENERATOR, THIRD_GENERATOR, FOURTH_GENERATOR];
const CHECKED_ON = [FIFTH_GENERATOR, SIXTH_GENERATOR];
const FEWER = Number(ARGUMENTS[1] ?? Math.max(2, Math.round(PLAYERS / 8)));

const fixed = (value: number, digits: number) => value.toFixed(digits).replace('-', '−');
const percent = (share: number, digits = 0) => `${fixed(100 * share, digits)} %`;
const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
const lines: string[] = [];
function say(line: string): void {
  lines.push(line);
  console.log(line);
}

function recoveryRow(g: Generator, players: number, throws: number, noise: number, r: Recovery): string {
  return row([
    `${g.name} (${CHECKED_ON.includes(g) ? 'checked on' : 'set on'}, ${players})`,
    String(throws),
    `× ${noise}`,
    `${percent(biasOf(r.speed), 2)}, ${percent(rmsOf(r.speed), 2)}`,
    `${fixed(biasOf(r.distance), 2)}, ${fixed(absoluteOf(r.distance), 2)}, ${fixed(rmsOf(r.distance), 2)}`,
    fixed(floorOf(r.distance), 2),
    `${fixed(biasOf(r.finish), 2)}, ${fixed(rmsOf(r.finish), 2)}`,
    `${percent(coveredOf(r.speed))}, ${percent(coveredOf(r.distance))}, ${percent(coveredOf(r.finish))}, ${percent(coveredOf(r.stability))}, ${percent(coveredOf(r.best))}`,
  ]);
}

function recoveryTable(throwsOf: readonly number[], generators: readonly (readonly [Generator, number])[]): void {
  say(
    row([
      'players made by (their number)',
      'throws a disc',
      'scatter',
      'speed: bias, rms',
      'distance, m: bias, mean size, rms',
      'rms of a plain mean, m',
      'finish, m: bias, rms',
      '90 % intervals hold: speed, distance, finish, stability, best',
    ]),
  );
  say(row(Array.from({ length: 8 }, () => '---')));
  for (const throws of throwsOf)
    for (const [g, players] of generators)
      for (const noise of NOISES) say(recoveryRow(g, players, throws, noise, recover(g, players, throws, noise)));
}

const started = performance.now();
say(BEGIN);
say('');
say('### At 20 throws, 7 discs a player');
say('');
recoveryTable([20], [...CHECKED_ON.map(g => [g, PLAYERS] as const), ...SET_ON.map(g => [g, FEWER] as const)]);
say('');
say('### At 3, 10 and 40 throws');
say('');
recoveryTable(
  [3, 10, 40],
  CHECKED_ON.map(g => [g, FEWER] as const),
);
say('');
say(`### One grip slip among 20 throws (45 or 60 % of the distance, 14 m off the line): ${FEWER} players`);
say('');
say(row(['players made by', 'scatter', 'mean moves by: middle', '95 of 100 under', 'most', 'over 1 %']));
say(row(Array.from({ length: 6 }, () => '---')));
for (const g of CHECKED_ON)
  for (const noise of NOISES) {
    const sizes = slipShifts(g, FEWER, 20, noise)
      .map(Math.abs)
      .sort((a, b) => a - b);
    const at = (share: number) => sizes[Math.min(sizes.length - 1, Math.floor(share * sizes.length))]!;
    say(
      row([
        g.name,
        `× ${noise}`,
        percent(at(0.5), 2),
        percent(at(0.95), 2),
        percent(sizes.at(-1)!, 2),
        `${sizes.filter(size => size > 0.01).length} of ${sizes.length}`,
      ]),
    );
  }
say('');
say(`### A disc with 3 throws: rms error against the mean of 20 throws held back, m: ${FEWER} players`);
say('');
say(
  row([
    'players made by',
    'scatter',
    'with the bag',
    'the disc alone',
    'plain mean of the three',
    'no prediction can beat',
  ]),
);
say(row(Array.from({ length: 6 }, () => '---')));
for (const g of CHECKED_ON)
  for (const noise of NOISES) {
    const b = borrowing(g, FEWER, 3, noise);
    say(row([g.name, `× ${noise}`, fixed(b.borrowed, 2), fixed(b.alone, 2), fixed(b.plain, 2), fixed(b.floor, 2)]));
  }
say('');
say(
  `${new Date().toISOString().slice(0, 10)}, ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.versions.node}, ${Math.round((performance.now() - started) / 60_000)} minutes by the clock on a shared machine.`,
);
if (WRITE) {
  const before = readFileSync(DOCUMENT, 'utf8').split(BEGIN)[0]!;
  writeFileSync(DOCUMENT, `${before}${lines.join('\n')}\n`);
}
