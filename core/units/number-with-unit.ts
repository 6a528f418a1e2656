import type { Result } from './result.ts';

/** How one kind of quantity is written: `factors` maps each accepted spelling (lower case) to SI; '' is the plain number. */
export type Spelling = Readonly<{ what: string; factors: ReadonlyMap<string, number>; examples: string }>;

const NUMBER = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(.*)$/i;

/**
 * Reads "12mph", "12 mph" or a plain number. Spaces and letter case do not matter; typographic primes count as ' and ".
 * @param path - where the text stands in the input, for the problem
 * @returns the number in SI, sign kept (the caller knows which signs make sense); a problem that lists the accepted forms otherwise
 */
export function readNumberWithUnit(text: string, spelling: Spelling, path: string): Result<number> {
  const problem = (message: string): Result<number> => ({
    ok: false,
    problems: [{ path, message: `${message}; ${spelling.examples}` }],
  });
  const clean = plainPrimes(text).trim().replace(/^−/, '-');
  if (clean === '') return problem(`${spelling.what} is empty`);
  if (/^[+-]?\d+,\d+/.test(clean)) return problem(`"${text}": write the decimal mark as a point`);
  const match = NUMBER.exec(clean);
  if (match === null) return problem(`"${text}" is not a ${spelling.what}`);
  const unit = match[2]!.replace(/\s+/g, ' ').trim().toLowerCase();
  const factor = spelling.factors.get(unit);
  if (factor === undefined) return problem(`"${text}": "${match[2]!.trim()}" is not a unit of ${spelling.what}`);
  const value = Number(match[1]) * factor;
  if (!Number.isFinite(value)) return problem(`"${text}" is too large for a ${spelling.what}`);
  return { ok: true, value };
}

/** Typographic primes and quotation marks, as phones and maps write them, made plain. */
export function plainPrimes(text: string): string {
  return text.replace(/[′’‘]/g, "'").replace(/[″”“]|''/g, '"');
}

/** Map from many spellings to a factor: `spellings({ 'mph': 0.44704, 'm/s|mps': 1 })`. */
export function spellings(table: Readonly<Record<string, number>>): ReadonlyMap<string, number> {
  return new Map(
    Object.entries(table).flatMap(([names, factor]) => names.split('|').map(name => [name, factor] as const)),
  );
}

/** `value` with so many decimals and never "-0". */
export function rounded(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text;
}
