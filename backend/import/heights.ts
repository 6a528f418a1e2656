import type { Feature, Geometry, Position } from 'geojson';

/** The features without third coordinates. @returns also how many positions had one */
export function withoutHeights(features: readonly Feature[]): { features: Feature[]; count: number } {
  let count = 0;
  const flat = (position: Position): Position => {
    if (position.length > 2) count++;
    return position.slice(0, 2);
  };
  const walk = (value: unknown): unknown =>
    Array.isArray(value) ? (typeof value[0] === 'number' ? flat(value as Position) : value.map(walk)) : value;
  const lower = (geometry: Geometry): Geometry =>
    geometry.type === 'GeometryCollection'
      ? { ...geometry, geometries: geometry.geometries.map(lower) }
      : ({ ...geometry, coordinates: walk(geometry.coordinates) } as Geometry);
  return {
    features: features.map(feature =>
      feature.geometry === null ? feature : { ...feature, geometry: lower(feature.geometry) },
    ),
    count,
  };
}

/** Does any position carry a height? */
export function hasHeights(features: readonly Feature[]): boolean {
  return withoutHeights(features).count > 0;
}
