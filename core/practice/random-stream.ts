import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { inverseNormal } from '../flight/normal-samples.ts';

/** Numbers that look random and are the same for the same seed on every machine. */
export type RandomStream = Readonly<{
  /** In (0, 1). */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
}>;

const WARM_UP = 32;

/**
 * A stream of its own for each seed and salts.
 * @param salts - whole numbers that tell the uses of one seed apart
 */
export function randomStream(seed: number, ...salts: readonly number[]): RandomStream {
  const rng = xoroshiro128plus(salts.reduce(mixed, seed | 0));
  for (let i = 0; i < WARM_UP; i++) rng.next(); // small seeds start the generator near zero
  const uniform = () => ((rng.next() >>> 0) + 0.5) / 2 ** 32;
  return { uniform, normal: () => inverseNormal(uniform()) };
}

/** One standard normal for a seed and salts: the same number whenever it is asked for. */
export function normalOf(seed: number, ...salts: readonly number[]): number {
  return inverseNormal(((salts.reduce(mixed, seed | 0) >>> 0) + 0.5) / 2 ** 32);
}

/** A whole number for a text, to salt with. */
export function saltOf(text: string): number {
  let salt = 0;
  for (let i = 0; i < text.length; i++) salt = mixed(salt, text.charCodeAt(i));
  return salt;
}

/** @source integer hash finaliser (from memory, Steele et al. 2014, SplitMix) */
function mixed(seed: number, salt: number): number {
  let h = (seed ^ Math.imul(salt + 1, 0x9e3779b9)) | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) | 0;
}
