import { Presets, SingleBar } from 'cli-progress';
import type { Terminal } from './terminal.ts';

/** Shorter work needs no bar. */
const WAIT_MS = 1000;

export type Progress = Readonly<{ set(done: number): void; stop(): void }>;

/** A bar on the terminal once the work has gone on for a second; nothing when nobody watches. */
export function startProgress(terminal: Terminal, what: string, total: number): Progress {
  const { progress } = terminal;
  if (progress === null) return { set() {}, stop() {} };
  const bar = new SingleBar(
    {
      stream: progress,
      format: `${what} {bar} {value}/{total}  {duration_formatted}`,
      barsize: 30,
      hideCursor: true,
      clearOnComplete: true,
    },
    Presets.shades_classic,
  );
  let done = 0;
  let shown = false;
  const timer = setTimeout(() => {
    bar.start(total, done);
    shown = true;
  }, WAIT_MS);
  return {
    set(value) {
      done = value;
      if (shown) bar.update(value);
    },
    stop() {
      clearTimeout(timer);
      if (shown) bar.stop();
      shown = false;
    },
  };
}

/** A line that stands while something short but noticeable goes on, then goes away. */
export function during<T>(terminal: Terminal, what: string, work: () => T): T {
  terminal.progress?.write(`${what} …`);
  try {
    return work();
  } finally {
    terminal.progress?.write('\r\u001b[K');
  }
}
