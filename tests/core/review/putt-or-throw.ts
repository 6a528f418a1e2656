import { SAMPLE_DIMENSIONS } from '../../../core/flight/normal-samples.ts';
import { answer } from '../../../core/review/played-shot.ts';
import { type Choice, NEXT_EFFORT, type Table } from '../../../core/strategy/choose-shot.ts';
import type { Lie } from '../../../core/strategy/march.ts';
import { puttFrom } from '../../../core/strategy/putting-value.ts';
import { distanceToBasket, isPutt } from '../../../core/strategy/value-field.ts';

/** What the plan would do from a lie beyond 10 m: the putt or the shot, whichever has fewer expected throws. */
export function puttFromOrThrow(table: Table, lie: Lie, search: Choice): 'putt' | 'throw' {
  const { field, answerNormals } = table;
  const d = distanceToBasket(field, lie.east_m, lie.north_m);
  if (!isPutt(field, lie.east_m, lie.north_m, d)) return 'throw';
  const first = NEXT_EFFORT.answerRows;
  const rows = { first, count: answerNormals.length / SAMPLE_DIMENSIONS - first };
  const shot = answer(table, lie, search.best.shot, search.best.aim_deg, rows);
  return puttFrom(field.putting, d) <= shot.outcome.expectedThrows ? 'putt' : 'throw';
}
