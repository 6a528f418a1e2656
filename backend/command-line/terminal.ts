/** Where a command writes: the process's own streams, or a test's strings. */
export type Terminal = Readonly<{
  out(text: string): void;
  err(text: string): void;
  /** Width to lay tables out for. */
  columns: number;
  colours: boolean;
  /** Where progress may be drawn; null when nobody watches. */
  progress: NodeJS.WritableStream | null;
}>;

const PIPED_COLUMNS = 100;
const LEAST_COLUMNS = 60;
const MOST_COLUMNS = 120;

export function processTerminal(): Terminal {
  const { stdout, stderr, env } = process;
  // A reader that stops early (`| head`) is no error of ours.
  stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(process.exitCode ?? 0);
  });
  const wanted = stdout.isTTY ? stdout.columns : Number(env.COLUMNS);
  return {
    out: text => void stdout.write(text),
    err: text => void stderr.write(text),
    columns: Math.min(MOST_COLUMNS, Math.max(LEAST_COLUMNS, wanted || PIPED_COLUMNS)),
    colours: stdout.isTTY === true && !env.NO_COLOR && env.TERM !== 'dumb',
    progress: stdout.isTTY && stderr.isTTY ? stderr : null,
  };
}

/** Text from a file or an option, safe to show: control characters would move the cursor or change colours. */
export function plain(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g, ' ');
}
