/**
 * A value as it comes out at the other side of a bridge between two worlds: functions become functions that copy what goes
 * in and what comes out, all else is structurally cloned, and what cannot be cloned throws, as in Electron.
 */
export function bridgeCopy(value: unknown): unknown {
  if (typeof value === 'function') {
    return (...args: unknown[]) => {
      const answer: unknown = value(...args.map(bridgeCopy));
      return answer instanceof Promise ? answer.then(bridgeCopy) : bridgeCopy(answer);
    };
  }
  if (isPlainObject(value))
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, bridgeCopy(item)]));
  return structuredClone(value);
}

function isPlainObject(value: unknown): value is Record<string, unknown> {
  if (typeof value !== 'object' || value === null) return false;
  // The preload script runs in a realm of its own, so its Object.prototype is another one.
  const prototype = Object.getPrototypeOf(value);
  return prototype === null || Object.getPrototypeOf(prototype) === null;
}
