import { z } from 'zod';
import { FlightReportSchema } from '../../core/flight/flight-report.ts';
import { PlayerFileSchema } from '../../core/player/player-file.ts';
import { ThrowsReportSchema } from '../../core/player/throws-report.ts';
import { PlanReportSchema } from '../../core/strategy/plan-report.ts';
import { CheckReportSchema } from '../api/check-course.ts';
import { HolesReportSchema } from '../api/describe-course.ts';

const REPORTS = {
  check: CheckReportSchema,
  holes: HolesReportSchema,
  throws: ThrowsReportSchema,
  plan: PlanReportSchema,
  fly: FlightReportSchema,
} as const;

/** The published JSON Schemas: what each verb writes with `--json`, and what a player file may hold. */
export function schemaFiles(): { file: string; text: string }[] {
  const reports = Object.entries(REPORTS).map(([verb, schema]) => ({
    file: `${verb}.schema.json`,
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
  return [...reports, player].map(({ file, schema }) => ({ file, text: `${JSON.stringify(schema, null, 2)}\n` }));
}
