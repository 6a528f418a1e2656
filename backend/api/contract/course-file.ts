import { z } from 'zod';
import { ROLES } from '../../../core/course/import/role.ts';
import { FileName, FileText, Name, plainText } from './values.ts';

/** Longest file as base64: four characters for three bytes. */
const LONGEST_DATA = 27_000_000;

const RoleChoiceSchema = z.strictObject({
  index: z.int().min(0).describe('of the item in the report'),
  role: z.enum(ROLES),
  ref: plainText(20).optional().describe('the hole'),
  label: plainText(120).optional().describe('which of several tees or baskets'),
  par: z.int().min(2).max(9).optional(),
});

/** What the user says of a file that does not say it itself; the report of `readCourseFile` says what there is to say. */
const ImportChoicesSchema = z.strictObject({
  name: Name.optional(),
  course: plainText(80).optional().describe('which of several courses'),
  takeHeights: z.boolean().optional(),
  roles: z.array(RoleChoiceSchema).max(2000).optional().describe('of every item; one without is left out'),
});

/** A course file of any kind: `text`, or `data` for archives and text that is not UTF-8. One of the two. */
export const CourseFileShape = {
  fileName: FileName,
  text: FileText.optional(),
  data: z
    .string()
    .max(LONGEST_DATA, `is longer than ${LONGEST_DATA / 1e6} million characters: cut the map down to one course`)
    .refine(text => /^[A-Za-z0-9+/]*={0,2}$/.test(text), 'is not base64')
    .optional()
    .describe('the bytes as base64'),
  choices: ImportChoicesSchema.optional(),
} as const;

export type CourseFileInput = Readonly<z.output<z.ZodObject<typeof CourseFileShape>>>;

/** A file picked by the user: as text where it is UTF-8, else as bytes. */
export const PickedFileSchema = z.union([
  z.strictObject({ fileName: z.string(), text: z.string() }),
  z.strictObject({ fileName: z.string(), data: z.string().describe('the bytes as base64') }),
]);
export type PickedFile = Readonly<z.output<typeof PickedFileSchema>>;
