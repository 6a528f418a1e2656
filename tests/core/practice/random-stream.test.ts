import { expect, it } from 'vitest';
import { normalOf, randomStream, saltOf } from '../../../core/practice/random-stream.ts';

const COUNT = 40_000;

function moments(values: readonly number[]) {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  return { mean, variance };
}

it('a stream is standard normal, and uniform', () => {
  const stream = randomStream(3, 1);
  // standard errors of 40,000: mean 0.005, variance 0.007; uniform mean 0.0014 ([C] computed by hand); four of each allowed
  const normal = moments(Array.from({ length: COUNT }, () => stream.normal()));
  expect(Math.abs(normal.mean)).toBeLessThan(0.02);
  expect(Math.abs(normal.variance - 1)).toBeLessThan(0.03);
  const uniform = moments(Array.from({ length: COUNT }, () => stream.uniform()));
  expect(Math.abs(uniform.mean - 0.5)).toBeLessThan(0.006);
  expect(Math.abs(uniform.variance - 1 / 12)).toBeLessThan(0.002);
});

it('the one number of a round and disc is standard normal over the rounds, and not that of another disc', () => {
  const rounds = Array.from({ length: COUNT }, (_, round) => round);
  const [first, second] = [0, 1].map(disc => rounds.map(round => normalOf(7, round, disc, 0)));
  const one = moments(first!);
  expect(Math.abs(one.mean)).toBeLessThan(0.02);
  expect(Math.abs(one.variance - 1)).toBeLessThan(0.03);
  const correlation = first!.reduce((sum, value, i) => sum + value * second![i]!, 0) / COUNT;
  expect(Math.abs(correlation)).toBeLessThan(0.02);
  expect(normalOf(7, 12, 0, 0)).toBe(normalOf(7, 12, 0, 0));
});

it('seed and salts each make another stream', () => {
  const first = (...salts: [number, ...number[]]) => randomStream(...salts).uniform();
  const all = [first(1), first(2), first(1, 1), first(1, 2), first(1, 1, 1), first(1, saltOf('hole 4'))];
  expect(new Set(all).size).toBe(all.length);
  expect(first(1, 2)).toBe(first(1, 2));
});
