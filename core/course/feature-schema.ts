import { z } from 'zod';

/** GeoJSON as RFC 7946 has it, with messages that say how to mend. Members it does not name pass through. */

const degrees = z.number({
  error: issue => `${shown(issue.input)} is not a finite number: write degrees as a plain number, such as 24.9017`,
});

const position = z
  .array(degrees, { error: issue => `${shown(issue.input)} is not a position: write [longitude, latitude]` })
  .superRefine((numbers, context) => {
    const fault = positionFault(numbers);
    if (fault !== undefined) context.addIssue({ code: 'custom', message: fault });
  });

function positionFault(numbers: readonly number[]): string | undefined {
  const [lon, lat] = numbers;
  if (lon === undefined || lat === undefined) return 'a position needs two numbers: [longitude, latitude]';
  if (Math.abs(lat) > 90 && Math.abs(lon) <= 90) {
    return `latitude ${lat} lies beyond a pole: longitude and latitude look swapped; GeoJSON writes [longitude, latitude], so [${lat}, ${lon}]`;
  }
  if (Math.abs(lat) > 90) return `latitude ${lat} lies outside −90…90: positions are degrees, [longitude, latitude]`;
  if (Math.abs(lon) > 180) {
    const wrapped = Number((lon - 360 * Math.round(lon / 360)).toFixed(9));
    const advice = Math.abs(lon) <= 540 ? `write ${wrapped}` : 'positions are degrees on WGS 84, not projected metres';
    return `longitude ${lon} lies outside −180…180: ${advice}`;
  }
  return undefined;
}

function list<T extends z.ZodType>(of: T, what: string) {
  return z.array(of, { error: () => `coordinates must be a list of ${what}` });
}

const line = list(position, 'positions').min(2, { error: 'a line needs at least two positions' });
const ring = list(position, 'positions').superRefine((positions, context) => {
  const fault = ringFault(positions);
  if (fault !== undefined) context.addIssue({ code: 'custom', message: fault });
});
const rings = list(ring, 'rings').min(1, { error: 'a polygon needs at least one ring' });

function ringFault(positions: readonly (readonly number[])[]): string | undefined {
  const [first, last] = [positions[0], positions.at(-1)];
  if (first === undefined || last === undefined)
    return 'a ring needs at least four positions, the last equal to the first';
  if (first[0] !== last[0] || first[1] !== last[1]) {
    return `the ring is not closed: repeat its first position [${first.join(', ')}] at its end`;
  }
  if (positions.length < 4) return 'a ring needs at least four positions, the last equal to the first';
  return undefined;
}

const simpleGeometry = [
  z.looseObject({ type: z.literal('Point'), coordinates: position }),
  z.looseObject({ type: z.literal('MultiPoint'), coordinates: list(position, 'positions') }),
  z.looseObject({ type: z.literal('LineString'), coordinates: line }),
  z.looseObject({ type: z.literal('MultiLineString'), coordinates: list(line, 'lines') }),
  z.looseObject({ type: z.literal('Polygon'), coordinates: rings }),
  z.looseObject({ type: z.literal('MultiPolygon'), coordinates: list(rings, 'polygons') }),
] as const;
const geometryTypes = 'Point, MultiPoint, LineString, MultiLineString, Polygon, MultiPolygon or GeometryCollection';
const unknownGeometry = { error: () => `a geometry is an object whose "type" is ${geometryTypes}` };
const geometry = z.discriminatedUnion(
  'type',
  [
    ...simpleGeometry,
    z.looseObject({
      type: z.literal('GeometryCollection'),
      // One level: RFC 7946 §3.1.8 asks writers not to nest collections.
      geometries: z.array(z.discriminatedUnion('type', simpleGeometry, unknownGeometry), {
        error: () => 'a GeometryCollection needs "geometries": a list of geometries',
      }),
    }),
  ],
  unknownGeometry,
);

const feature = z.looseObject(
  {
    type: z.literal('Feature', { error: () => 'every entry of "features" must have "type": "Feature"' }),
    geometry: geometry.nullable(),
    properties: z
      .record(z.string(), z.unknown(), {
        error: () => 'properties must be an object of tags, such as {"disc_golf": "tee"}',
      })
      .nullish(),
    id: z.union([z.string(), z.number()], { error: () => 'id must be text or a number' }).optional(),
  },
  { error: issue => `${shown(issue.input)} is not a feature: write an object with "type": "Feature"` },
);

/** The whole file; `features` only, foreign members pass. */
export const featureCollectionSchema = z.looseObject({
  type: z.literal('FeatureCollection'),
  features: z.array(feature, { error: () => 'a FeatureCollection needs "features": a list of features' }),
});

function shown(input: unknown): string {
  if (input === undefined) return 'nothing';
  if (typeof input === 'number') return String(input);
  const text = JSON.stringify(input) ?? typeof input;
  return text.length > 40 ? `${text.slice(0, 37)}...` : text;
}
