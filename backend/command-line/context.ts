import type { Terminal } from './terminal.ts';

/** What every verb gets: where to write, and how to say what the process ends with. */
export type Context = Readonly<{ terminal: Terminal; exit(code: number): void }>;
