import { z } from 'zod';
import { HoleReportSchema } from '../../../core/geometry/hole-report.ts';
import { WalkedHoleSchema } from '../../../core/geometry/walked-hole/walked-hole-input.ts';
import { HoleMapSchema } from './hole-map.ts';
import { ChangedSchema, FileText, Id, LonLatSchema, Name, ProblemSchema, Ref } from './values.ts';

const DraftText = FileText.describe('GeoJSON FeatureCollection');
const Site = z.strictObject({
  key: z.string().describe('what a layout calls it: its name, or #2'),
  featureIndex: z.int().describe('-1: only the end of a line'),
});

/** Maps being drawn: kept as they are, and made a course when they can be read as one. */
export const courseDrafts = {
  /** Newest first. `isCourse`: changes to a course of the library, else a course still to be. */
  listDrafts: {
    input: z.strictObject({}),
    output: z.array(
      z.strictObject({ courseId: Id, name: z.string(), isCourse: z.boolean(), changedAt_ms: z.number() }),
    ),
  },
  /** The map as it was left, else the course as it stands. */
  openDraft: {
    input: z.strictObject({ courseId: Id }),
    output: z.strictObject({ name: z.string(), text: z.string(), isKept: z.boolean(), isCourse: z.boolean() }),
  },
  /** Keeps the map as drawn so far, right or wrong; its own editor takes edits back. */
  keepDraft: {
    input: z.strictObject({
      courseId: Id.describe('made by the caller for a new course'),
      name: Name,
      text: DraftText,
    }),
    output: z.strictObject({ kept: z.literal(true) }),
  },
  discardDraft: { input: z.strictObject({ courseId: Id }), output: ChangedSchema },
  /** Makes the map the course, whole or not at all; its draft goes. */
  saveCourse: {
    input: z.strictObject({ courseId: Id, name: Name, text: DraftText }),
    output: ChangedSchema,
  },
  /** What the map says as drawn so far; things with problems are left out of the rest. Nothing is stored. */
  describeDraft: {
    input: z.strictObject({
      text: DraftText,
      courseId: Id.optional().describe(
        'the course it will be: its terrain model counts, its surface model does not yet',
      ),
      ref: Ref.optional().describe('the hole to describe; none when left out'),
      layout: Name.optional().describe('describe the hole as this layout plays it'),
    }),
    output: z.strictObject({
      problems: z.array(ProblemSchema).describe('what keeps it from being a course; empty: it can be saved'),
      assumptions: z.array(ProblemSchema),
      holes: z.array(
        z.strictObject({
          ref: z.string(),
          name: z.string().optional(),
          par: z.int().nullable().describe('as tagged'),
          playLength_m: z.number(),
          tees: z.array(Site).min(1),
          baskets: z.array(Site).min(1),
        }),
      ),
      layouts: z.array(z.strictObject({ name: z.string(), featureIndex: z.int() })),
      hole: z.strictObject({ report: HoleReportSchema }).nullable().describe('null: no such hole, or not whole yet'),
    }),
  },
  /** A hole from paced or taped numbers, as features to add to a map. Nothing is stored. */
  buildWalkedHole: {
    input: z.strictObject({
      hole: WalkedHoleSchema,
      start: LonLatSchema.nullable().describe('of the tee; null: nowhere yet, marked so'),
      text: DraftText.optional().describe('the map it joins'),
    }),
    output: z.strictObject({
      features: z.array(
        z.looseObject({
          type: z.literal('Feature'),
          properties: z.record(z.string(), z.unknown()),
          geometry: z.looseObject({ type: z.string(), coordinates: z.array(z.unknown()) }),
        }),
      ),
      notes: z.array(z.string()).describe('what was assumed in drawing it'),
      map: HoleMapSchema,
      report: HoleReportSchema,
    }),
  },
};
