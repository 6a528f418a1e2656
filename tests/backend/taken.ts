import type { Result } from '../../core/units/result.ts';

/** The value of a result that must be good. */
export function taken<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
