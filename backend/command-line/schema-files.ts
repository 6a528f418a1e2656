import { z } from 'zod';
import { FlightReportSchema } from '../../core/flight/flight-report.ts';
import { PlayerFileSchema } from '../../core/player/player-file.ts';
import { PuttingReportSchema } from '../../core/player/putting-report.ts';
import { ThrowsReportSchema } from '../../core/player/throws-report.ts';
import { PracticeReportSchema } from '../../core/practice/practice-report.ts';
import { ReviewReportSchema } from '../../core/review/review-report.ts';
import { RoundFileSchema } from '../../core/review/round-file.ts';
import { MeasureNextSchema } from '../../core/strategy/measure-next.ts';
import { PlanReportSchema } from '../../core/strategy/plan-report.ts';
import { CheckReportSchema } from '../api/check-course.ts';
import { HolesReportSchema } from '../api/describe-course.ts';
import { ThrowsImportSchema } from '../fieldwork/import-report.ts';
import { ImportReportSchema } from '../import/import-report.ts';

const REPORTS = {
  check: CheckReportSchema,
  convert: ImportReportSchema,
  holes: HolesReportSchema,
  throws: ThrowsReportSchema.extend({ measureNext: MeasureNextSchema.optional().describe('with --course') }),
  'throws --csv': ThrowsImportSchema,
  putting: PuttingReportSchema,
  plan: PlanReportSchema,
  practice: PracticeReportSchema,
  fly: FlightReportSchema,
  review: ReviewReportSchema,
} as const;

/** The published JSON Schemas: what each verb writes with `--json`, and what a player file may hold. */
export function schemaFiles(): { file: string; text: string }[] {
  const reports = Object.entries(REPORTS).map(([verb, schema]) => ({
    file: `${verb.replace(' --', '-')}.schema.json`,
    schema: { title: `roundwright ${verb} --json`, ...z.toJSONSchema(schema, { io: 'output' }) },
  }));
  const player = {
    file: 'player.schema.json',
    // Only the outline can be said in JSON Schema; the ranges and the rules between properties are checked on reading.
    schema: {
      title: 'roundwright player file',
      ...z.toJSONSchema(PlayerFileSchema, { io: 'input', unrepresentable: 'any' }),
    },
  };
  const round = {
    file: 'round.schema.json',
    schema: {
      title: 'roundwright round file',
      ...z.toJSONSchema(RoundFileSchema, { io: 'input', unrepresentable: 'any' }),
    },
  };
  return [...reports, player, round].map(({ file, schema }) => ({
    file,
    text: `${JSON.stringify(schema, null, 2)}\n`,
  }));
}
