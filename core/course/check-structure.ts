import type { FeatureCollection } from 'geojson';
import type { Problem, Result } from '../units/result.ts';
import { featureCollectionSchema } from './feature-schema.ts';
import { problemPath } from './problem-path.ts';

/**
 * Is this a GeoJSON FeatureCollection (RFC 7946)?
 * @param input - anything, usually parsed JSON
 * @returns the input itself, untouched and typed, or at most one problem per feature and kind
 */
export function checkStructure(input: unknown): Result<FeatureCollection> {
  const fault = wrongRoot(input);
  if (fault !== undefined) return { ok: false, problems: [fault] };
  const parsed = featureCollectionSchema.safeParse(input);
  const problems = parsed.success
    ? []
    : parsed.error.issues.map(issue => ({ path: problemPath(issue.path), message: issue.message }));
  const all = [...onePerFeature(problems), ...nonFiniteProperties(input)];
  return all.length > 0 ? { ok: false, problems: all } : { ok: true, value: input as FeatureCollection };
}

function wrongRoot(input: unknown): Problem | undefined {
  const wanted = 'a course file is one GeoJSON FeatureCollection: {"type": "FeatureCollection", "features": [ ... ]}';
  if (typeof input !== 'object' || input === null || Array.isArray(input)) return { path: 'type', message: wanted };
  const type = 'type' in input ? input.type : undefined;
  if (type === 'FeatureCollection') return undefined;
  if (type === 'Feature') {
    return { path: 'type', message: `this is a single Feature; put it in the "features" list: ${wanted}` };
  }
  return { path: 'type', message: `"type" is ${JSON.stringify(type) ?? 'missing'}; ${wanted}` };
}

/** A ring of swapped positions would give hundreds of lines: the first of a kind speaks for its feature. */
function onePerFeature(problems: readonly Problem[]): Problem[] {
  const groups = Map.groupBy(problems, ({ path, message }) => {
    const feature = /^features\[\d+\]/.exec(path)?.[0] ?? path;
    // Numbers apart, so that each position of the same fault counts as the same kind.
    return `${feature} ${message.replace(/-?\d+(?:\.\d+)?(?:e[+-]?\d+)?/g, '#')}`;
  });
  return [...groups.values()].map(([first, ...more]) =>
    more.length === 0
      ? first!
      : { ...first!, message: `${first!.message} (and ${more.length} more like it in this feature)` },
  );
}

/** JSON such as 1e999 reads as infinity, which no file can hold: it would not survive an export. */
function nonFiniteProperties(input: unknown): Problem[] {
  const features = (input as { features?: unknown }).features;
  if (!Array.isArray(features)) return [];
  return features.flatMap((feature, i) => {
    const properties = (feature as { properties?: unknown } | null)?.properties;
    return nonFinitePaths(properties, `features[${i}].properties`).map(path => ({
      path,
      message: 'this number is not finite: write a number of ordinary size',
    }));
  });
}

function nonFinitePaths(value: unknown, path: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    nonFinitePaths(inner, Array.isArray(value) ? `${path}[${key}]` : `${path}.${key}`),
  );
}
