import { z } from 'zod';
import type { Result } from '../../core/units/result.ts';
import type { Client, Subscribe } from './contract/api.ts';
import { PickedFileSchema } from './contract/course-file.ts';
import { FileName, LibraryText, ProblemSchema } from './contract/values.ts';

const Html = z.string().min(1).max(20_000_000);
const Saved = z.strictObject({ saved: z.boolean().describe('false: the player closed the dialog') });

/** What only the desktop shell can do; a window in a browser has none of it and uses the browser's own ways. */
export const desktop = {
  /** The system's open dialog. No files when the player closes it; `problems` names files that could not be read. */
  openFiles: {
    input: z.strictObject({ kind: z.enum(['course', 'player', 'library']) }),
    output: z.strictObject({ files: z.array(PickedFileSchema), problems: z.array(ProblemSchema) }),
  },
  /** The system's open dialog for a file too large to be handed over: its place only; null when the player closes it. */
  chooseFile: {
    input: z.strictObject({ kind: z.enum(['terrain', 'surface', 'baseMap']) }),
    output: z.strictObject({ path: z.string().nullable() }),
  },
  /** Files handed to the app from outside (double click, dropped on its icon, command line) since the last call. */
  takeOpenedFiles: {
    input: z.strictObject({}),
    output: z.strictObject({ files: z.array(PickedFileSchema), problems: z.array(ProblemSchema) }),
  },
  /** The system's save dialog; the file is either the old one or the new one, never half. */
  saveFile: { input: z.strictObject({ fileName: FileName, text: LibraryText }), output: Saved },
  /** The system's print dialog for a self-contained page; no script in it runs. */
  printPage: {
    input: z.strictObject({ title: z.string().max(300), html: Html }),
    output: z.strictObject({ printed: z.boolean().describe('false: the player closed the dialog') }),
  },
  /** The same page as a PDF, in the size its own @page rule names. */
  savePdf: { input: z.strictObject({ fileName: FileName, html: Html }), output: Saved },
  /** Lets the window's frame and menus follow the theme chosen in the app. */
  setTheme: { input: z.strictObject({ theme: z.enum(['system', 'light', 'dark']) }), output: z.strictObject({}) },
} satisfies Record<string, { input: z.ZodType; output: z.ZodType }>;

export type DesktopMethod = keyof typeof desktop;
export type DesktopInput<K extends DesktopMethod> = z.output<(typeof desktop)[K]['input']>;
export type DesktopOutput<K extends DesktopMethod> = z.output<(typeof desktop)[K]['output']>;
export type Desktop = {
  readonly [K in DesktopMethod]: (input: DesktopInput<K>) => Promise<Result<DesktopOutput<K>>>;
};

/** Menu entries that the window carries out. */
export type MenuCommand =
  | 'importCourse'
  | 'importPlayer'
  | 'importLibrary'
  | 'exportLibrary'
  | 'printSheet'
  | 'savePdf'
  | 'undo'
  | 'redo'
  | 'previousHole'
  | 'nextHole'
  | 'showSettings'
  | 'showShortcuts';

/** What the shell says unasked. `filesWaiting`: ask for them with `takeOpenedFiles`. */
export type DesktopEvent = { kind: 'command'; command: MenuCommand } | { kind: 'filesWaiting' };
type DesktopSubscribe = (listener: (event: DesktopEvent) => void) => () => void;

/** What the preload script puts on `window.roundwright`. */
export type DesktopBridge = Client &
  Readonly<{ subscribe: Subscribe; desktop: Desktop; subscribeDesktop: DesktopSubscribe }>;
