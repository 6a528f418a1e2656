import { z } from 'zod';
import { HoleReportSchema } from '../../../core/geometry/hole-report.ts';
import { CourseFileShape } from './course-file.ts';
import { HoleMapSchema } from './hole-map.ts';
import { ChangedSchema, Id, LonLatSchema, Name, ProblemSchema, Ref, TextFileSchema } from './values.ts';

const CourseLine = z.strictObject({
  courseId: Id,
  name: z.string(),
  holes: z.int(),
  par: z.int(),
  playLength_m: z.number(),
  centre: LonLatSchema,
  sample: z.boolean().describe('came with the app'),
  layouts: z.array(z.string()).describe('their names'),
});

const Counts = z.array(z.strictObject({ what: z.string(), count: z.int() }));

const HoleLine = z.strictObject({
  ref: z.string(),
  name: z.string().optional(),
  par: z.int(),
  parSource: z.enum(['tagged', 'derived']),
  length_m: z.number(),
  playLength_m: z.number(),
  bearing_deg: z.number(),
  rise_m: z.number().nullable(),
  isPlaced: z.boolean().describe('false: drawn nowhere in particular'),
});

/** Anything on the map with a GeoJSON geometry in degrees, lines of play and sites apart. */
const MapObject = z.strictObject({
  kind: z.enum([
    'tree',
    'cover',
    'ceiling',
    'gap',
    'outOfBounds',
    'hazard',
    'island',
    'lostGround',
    'dropZone',
    'mando',
    'fairway',
    'people',
  ]),
  what: z.string().describe('in words: "water", "hedge", "path"'),
  name: z.string().optional(),
  ref: z.string().optional(),
  geometry: z
    .looseObject({
      type: z.enum(['Point', 'MultiPoint', 'LineString', 'MultiLineString', 'Polygon', 'MultiPolygon']),
      coordinates: z.array(z.unknown()),
    })
    .describe('GeoJSON'),
  width_m: z.number().optional().describe('lines: full width; trees: crown diameter'),
  facts: z.array(z.string()).describe('for a tooltip: heights and what was assumed'),
});

const Preview = z.strictObject({
  name: z.string(),
  holes: z.array(HoleLine),
  counts: Counts.describe('what is mapped'),
  notMapped: z.array(z.string()).describe('kinds of thing the map says nothing about: not the same as none'),
  assumptions: z.array(ProblemSchema).describe('stated defaults and readings to confirm'),
  layouts: z
    .array(z.strictObject({ name: z.string(), holes: z.int() }))
    .describe('ways to play the course: which tees and baskets, in which order'),
});

/** Courses of the library. */
export const courses = {
  listCourses: { input: z.strictObject({}), output: z.array(CourseLine) },
  getCourse: {
    input: z.strictObject({ courseId: Id, layout: Name.optional().describe('its holes as this layout plays them') }),
    output: Preview.extend({ courseId: Id, sample: z.boolean(), fileName: z.string() }),
  },
  /** The whole course for the map. */
  getCourseMap: {
    input: z.strictObject({ courseId: Id }),
    output: z.strictObject({
      bounds: z.strictObject({ southWest: LonLatSchema, northEast: LonLatSchema }),
      holes: z.array(
        z.strictObject({
          ref: z.string(),
          line: z.array(LonLatSchema).describe('line of play, tee first'),
          tees: z.array(LonLatSchema),
          baskets: z.array(LonLatSchema),
        }),
      ),
      objects: z.array(MapObject),
    }),
  },
  /** One hole for drawing, in metres from its tee, and what is known of it. */
  getHole: {
    input: z.strictObject({ courseId: Id, ref: Ref, layout: Name.optional() }),
    output: z.strictObject({ map: HoleMapSchema, report: HoleReportSchema }),
  },
  /** What importing this text would give; nothing is stored. Problems say where the file is wrong. */
  previewCourse: { input: z.strictObject(CourseFileShape), output: Preview },
  importCourse: {
    input: z.strictObject(CourseFileShape),
    output: ChangedSchema.extend({ courseId: Id }),
  },
  renameCourse: { input: z.strictObject({ courseId: Id, name: Name }), output: ChangedSchema },
  /** Its pins and notes go too, and come back with `undo`; its plans are made anew. */
  removeCourse: { input: z.strictObject({ courseId: Id }), output: ChangedSchema },
  /** The GeoJSON file as it came in, everything unknown kept; only a new name is written into it. */
  exportCourse: { input: z.strictObject({ courseId: Id }), output: TextFileSchema },
};
