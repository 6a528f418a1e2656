import { InvalidArgumentError } from 'commander';
import type { Limits } from '../../../core/strategy/shots.ts';

type DiscClass = NonNullable<Limits['classes']>[number];

const CLASSES: Readonly<Record<string, readonly DiscClass[]>> = {
  putter: ['putter'],
  midrange: ['midrange'],
  fairway: ['fairway'],
  control: ['control'],
  distance: ['distance'],
  driver: ['fairway', 'control', 'distance'],
};

/** "putters,midranges": classes of disc, one or many, singular or plural. */
export function discClasses(text: string): DiscClass[] {
  const words = text.split(',').map(word => word.trim().toLowerCase());
  return [
    ...new Set(
      words.flatMap(word => {
        const classes = CLASSES[word] ?? CLASSES[word.replace(/s$/, '')];
        if (classes === undefined)
          throw new InvalidArgumentError(`"${word}" is not a class of disc; write ${Object.keys(CLASSES).join(', ')}`);
        return classes;
      }),
    ),
  ];
}
