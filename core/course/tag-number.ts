import type { Notes } from './notes.ts';
import { parseOsmLength } from './osm-length.ts';
import { type TaggedFeature, tagPath } from './tags.ts';

/** What is believable: a bound for telling slips (feet as metres, a lost decimal point) from facts, not a physical law. */
export type Range = Readonly<{ least: number; most: number }>;

/**
 * A length tag in metres.
 * @returns undefined when the tag is not given, or when it is bad (then a problem is noted)
 */
export function lengthTag(feature: TaggedFeature, key: string, range: Range, notes: Notes): number | undefined {
  const tag = feature.tags.get(key);
  if (tag === undefined) return undefined;
  const parsed = parseOsmLength(tag.value);
  if (!parsed.ok) {
    notes.problems.push({ path: tag.path, message: `${key} ${parsed.message}` });
    return undefined;
  }
  const { length_m } = parsed;
  if (length_m >= range.least && length_m <= range.most) return length_m;
  notes.problems.push({ path: tag.path, message: outOfRange(key, String(tag.value), length_m, range) });
  return undefined;
}

function outOfRange(key: string, text: string, length_m: number, { least, most }: Range): string {
  if (length_m < 0 && least >= 0)
    return `${key} ${text} is negative: it is measured upwards from the ground, in metres`;
  const feetFit = length_m * 0.3048 >= least && length_m * 0.3048 <= most;
  const feet = feetFit && /^[\d.]+$/.test(text) ? `; if it is in feet, write "${text} ft"` : '';
  return `${key} ${text} is not believable: expected ${least} to ${most} m${feet}`;
}

/**
 * A whole-number tag such as `par`.
 * @returns undefined when the tag is not given, or when it is bad (then a problem is noted)
 */
export function wholeNumberTag(feature: TaggedFeature, key: string, range: Range, notes: Notes): number | undefined {
  const tag = feature.tags.get(key);
  if (tag === undefined) return undefined;
  const text = String(tag.value).trim();
  const value = /^\d+(?:\.0+)?$/.test(text) ? Number(text) : Number.NaN;
  if (value >= range.least && value <= range.most) return value;
  notes.problems.push({
    path: tag.path,
    message: `${key} ${text} is not believable: write one whole number from ${range.least} to ${range.most}`,
  });
  return undefined;
}

/** Notes a problem when `height` does not lie above `min_height`; both in metres. */
export function checkAbove(
  feature: TaggedFeature,
  min_m: number | undefined,
  max_m: number | undefined,
  notes: Notes,
): void {
  if (min_m === undefined || max_m === undefined || min_m < max_m) return;
  notes.problems.push({
    path: tagPath(feature, 'height'),
    message: `height ${max_m} m is not above min_height ${min_m} m: height is the top, min_height the underside; swap or mend them`,
  });
}
