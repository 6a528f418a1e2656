import { InvalidArgumentError } from 'commander';
import type { FlyInput } from '../../api/fly-disc.ts';

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;

/** Trade numbers "7/5/-1/1.5", or the id of a disc. */
export function discOf(text: string): FlyInput['disc'] {
  if (!text.includes('/')) return text;
  const parts = text.split('/').map(part => part.trim().replace(/^−/, '-'));
  if (parts.length !== 4 || !parts.every(part => NUMBER.test(part)))
    throw new InvalidArgumentError('write four numbers, speed/glide/turn/fade, such as 7/5/-1/1.5');
  const [speed, glide, turn, fade] = parts.map(Number) as [number, number, number, number];
  return { speed, glide, turn, fade };
}
