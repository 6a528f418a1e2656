import fc from 'fast-check';
import { unzipSync, zipSync } from 'fflate';
import { convertCourse, type ImportChoices } from '../../../backend/import/convert-course.ts';
import { ImportReportSchema } from '../../../backend/import/import-report.ts';
import { reportImport } from '../../../backend/import/report-import.ts';
import { importedCourse } from '../../../backend/library/imported-course.ts';
import { ROLES } from '../../../core/course/import/role.ts';
import { FIXTURES, type Fixture, fixture } from './fixture.ts';

const HANGS_AFTER_ms = 2000;

/** Pieces that break parsers: of markup, of numbers, of text, of archives. */
const PIECES = [
  ...[
    '<',
    '>',
    '</',
    '/>',
    '&',
    '&amp;',
    '&#0;',
    '&#x110000;',
    '&lol;',
    '<!DOCTYPE a [<!ENTITY b "c">]>',
    '<![CDATA[',
    ']]>',
    '<!--',
    '-->',
    '<?',
  ],
  ...['"', "'", '{', '}', '[', ']', ',', ':', '\\', '\\u0000', '\\ud800', '\u0000', '\uFEFF', '\u202E', '𝔘'],
  ...[
    'NaN',
    '1e999',
    '-1e999',
    '-0',
    '180.0000001',
    '90.0000001',
    '99999999999999999999',
    '0x10',
    '1,5',
    '',
    ' ',
    '\n',
  ],
  ...[
    'null',
    'true',
    '__proto__',
    'constructor',
    'disc_golf',
    'tee',
    'ref',
    'height',
    'features',
    'elements',
    'kml',
    'Folder',
    'nd',
    'way',
  ],
  ...['PK\x01\x02', 'PK\x03\x04', 'PK\x05\x06', '../', '/', 'doc.kml'],
];

type Change = (bytes: Uint8Array) => Uint8Array;
const splice =
  (at: number, drop: number, put: Uint8Array): Change =>
  bytes => {
    const from = bytes.length === 0 ? 0 : at % bytes.length;
    return Buffer.concat([bytes.subarray(0, from), put, bytes.subarray(from + drop)]);
  };
const text = (piece: string) => Buffer.from(piece, 'utf8');

const change: fc.Arbitrary<Change> = fc.oneof(
  fc.tuple(fc.nat(), fc.nat(8), fc.constantFrom(...PIECES)).map(([at, drop, piece]) => splice(at, drop, text(piece))),
  fc.tuple(fc.nat(), fc.integer({ min: 0, max: 255 })).map(([at, byte]) => splice(at, 1, Uint8Array.of(byte))),
  fc.tuple(fc.nat(), fc.nat(400)).map(([at, drop]) => splice(at, drop, new Uint8Array())),
  fc.nat().map(
    (at): Change =>
      bytes =>
        bytes.subarray(0, at % (bytes.length + 1)),
  ),
  fc.tuple(fc.nat(), fc.nat(), fc.nat(300)).map(
    ([from, to, length]): Change =>
      bytes =>
        splice(to, 0, bytes.subarray(from % (bytes.length + 1)).subarray(0, length))(bytes),
  ),
  // Every number of one kind made another: the structure stays, the sense goes.
  fc.tuple(fc.nat(9), fc.constantFrom('0', '9', '-', '.', 'e')).map(
    ([digit, other]): Change =>
      bytes =>
        text(Buffer.from(bytes).toString('latin1').replaceAll(String(digit), other)),
  ),
  fc.tuple(fc.nat(), fc.integer({ min: 0, max: 4 })).map(
    ([at, length]): Change =>
      bytes => {
        const source = Buffer.from(bytes).toString('latin1');
        const words = source.match(/[A-Za-z_]{2,}/g) ?? ['x'];
        return text(source.replaceAll(words[at % words.length]!, 'x'.repeat(length)));
      },
  ),
);

/** JSON stays JSON, with one value made another. */
const valueChange: fc.Arbitrary<Change> = fc
  .tuple(
    fc.nat(),
    fc.oneof(fc.jsonValue({ maxDepth: 2 }), fc.constantFrom<unknown>(-181, 91, 1e300, '', 'yes', '12 ft', [], {})),
  )
  .map(
    ([at, other]): Change =>
      bytes => {
        try {
          const value: unknown = JSON.parse(Buffer.from(bytes).toString('utf8'));
          const places = placesIn(value);
          const [parent, key] = places[at % places.length]!;
          parent[key] = other;
          return text(JSON.stringify(value));
        } catch {
          return bytes;
        }
      },
  );

/** Markup stays markup, with one attribute or text made another, or a line of it gone or there twice. */
const markupChange: fc.Arbitrary<Change> = fc
  .tuple(
    fc.nat(),
    fc.oneof(
      fc.constantFrom('-181', '91', '1e9', '', 'yes', '3', '12 ft', 'Tee 9', 'outer', '24.9,60.2', '1002'),
      fc.string({ maxLength: 8 }),
    ),
    fc.constantFrom('attribute', 'text', 'drop', 'double'),
  )
  .map(
    ([at, other, how]): Change =>
      bytes => {
        const source = Buffer.from(bytes).toString('utf8');
        const plain = other.replace(/[<>&"]/g, '');
        if (how === 'drop' || how === 'double') {
          const lines = source.split('\n');
          return text(
            lines
              .toSpliced(
                at % lines.length,
                how === 'drop' ? 1 : 0,
                ...(how === 'drop' ? [] : [lines[at % lines.length]!]),
              )
              .join('\n'),
          );
        }
        const matches = [...source.matchAll(how === 'attribute' ? /="[^"]*"/g : />[^<>\s][^<>]*</g)];
        const match = matches[at % Math.max(1, matches.length)];
        if (match === undefined) return bytes;
        const put = how === 'attribute' ? `="${plain}"` : `>${plain}<`;
        return text(source.slice(0, match.index) + put + source.slice(match.index + match[0].length));
      },
  );

/** The map in an archive changed, and packed again. */
const packedChange: fc.Arbitrary<Change> = markupChange.map(
  (inside): Change =>
    bytes => {
      try {
        const files = unzipSync(bytes);
        return zipSync({ ...files, 'doc.kml': new Uint8Array(inside(files['doc.kml']!)) });
      } catch {
        return bytes;
      }
    },
);

function placesIn(value: unknown): [Record<string, unknown>, string][] {
  if (typeof value !== 'object' || value === null) return [];
  const holder = value as Record<string, unknown>;
  return Object.keys(holder).flatMap(key => [
    [holder, key] as [Record<string, unknown>, string],
    ...placesIn(holder[key]),
  ]);
}

const choices: fc.Arbitrary<ImportChoices> = fc.record(
  {
    name: fc.string({ minLength: 1, maxLength: 20 }),
    course: fc.constantFrom('relation/900', 'way/540', 'nothing'),
    takeHeights: fc.boolean(),
    roles: fc.array(
      fc.record(
        {
          index: fc.nat(14),
          role: fc.constantFrom(...ROLES),
          ref: fc.oneof(fc.constantFrom('1', '2', '3', '', '1;2'), fc.string({ maxLength: 6 })),
          label: fc.string({ maxLength: 10 }),
          par: fc.integer({ min: 2, max: 9 }),
        },
        { requiredKeys: ['index', 'role'] },
      ),
      { maxLength: 14 },
    ),
  },
  { requiredKeys: [] },
);

/** Two of three changes keep the form, so that what lies behind the parsers is reached. */
const changeOf = (sample: Fixture) =>
  fc.oneof(
    { weight: 1, arbitrary: change },
    {
      weight: 2,
      arbitrary: sample.endsWith('.kmz') ? packedChange : sample.endsWith('json') ? valueChange : markupChange,
    },
  );

const input = fc.constantFrom(...FIXTURES).chain(sample =>
  fc.record({
    sample: fc.constant(sample),
    changes: fc.array(changeOf(sample), { minLength: 1, maxLength: 3 }),
    choices: fc.oneof({ weight: 3, arbitrary: fc.constant({}) }, { weight: 1, arbitrary: choices }),
  }),
);

export type FuzzResult = Readonly<{ wrong: string[]; taken: number; kinds: ReadonlyMap<string, number> }>;

/**
 * Imports good files with pieces changed, again and again.
 * @returns `wrong`, in words: an import that threw, hung, gave no message or a report that breaks its schema; `taken`: how many
 * were good all the same
 */
export function fuzzImport(runs: number, seed: number): FuzzResult {
  const samples = new Map(FIXTURES.map(name => [name, fixture(name)]));
  const wrong: string[] = [];
  const kinds = new Map<string, number>();
  let taken = 0;
  fc.assert(
    fc.property(input, ({ sample, changes, choices }) => {
      const bytes = changes.reduce((file, apply) => apply(file), samples.get(sample)!);
      const complaint = complaintAbout(bytes, choices, (kind, isGood) => {
        kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
        if (isGood) taken++;
      });
      if (complaint !== null)
        wrong.push(
          `${sample}: ${complaint} for ${JSON.stringify(choices)} and ${Buffer.from(bytes).toString('latin1').slice(0, 3000)}`,
        );
      return complaint === null || wrong.length < 5;
    }),
    { numRuns: runs, seed, endOnFailure: true },
  );
  return { wrong, taken, kinds };
}

function complaintAbout(
  bytes: Uint8Array,
  choices: ImportChoices,
  note: (kind: string, isGood: boolean) => void,
): string | null {
  // Processor time: the machine may be busy with other things.
  const before = process.cpuUsage();
  try {
    const converted = convertCourse(bytes, 'fuzzed', choices);
    const report = reportImport('fuzzed', converted, choices);
    const shape = ImportReportSchema.safeParse(report);
    if (!shape.success)
      return `a report that breaks its schema: ${shape.error.issues[0]!.path.join('.')} ${shape.error.issues[0]!.message}`;
    const problems = report.problems;
    if (!report.ok && problems.length === 0) return 'refused without a word';
    if (problems.some(({ path, message }) => path === '' || message === '')) return 'a problem without path or message';
    const confirmed = choices.roles ?? report.items.map(({ index, chosen }) => ({ index, ...chosen }));
    const kept = importedCourse(bytes, 'fuzzed', { ...choices, roles: confirmed });
    if (kept.ok && !report.ok) return 'taken in although the report says no';
    // What is kept must read the same again, or it could not be opened any more.
    if (kept.ok) {
      const again = importedCourse(Buffer.from(`\uFEFF${kept.value.text}`), 'again', { roles: [] });
      if (!again.ok) return `kept but not readable: ${again.problems[0]!.path} ${again.problems[0]!.message}`;
      if (JSON.stringify(again.value.course.holes) !== JSON.stringify(kept.value.course.holes))
        return 'other holes when read again';
    }
    note(report.kind ?? 'not known', kept.ok);
  } catch (error) {
    return `it threw ${String(error instanceof Error ? error.stack : error).slice(0, 600)}`;
  }
  const { user, system } = process.cpuUsage(before);
  const time_ms = (user + system) / 1000;
  return time_ms > HANGS_AFTER_ms ? `it took ${time_ms.toFixed(0)} ms` : null;
}
