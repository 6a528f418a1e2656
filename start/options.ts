import { parseArgs } from 'node:util';
import type { Result } from '../core/units/result.ts';

export type StartOptions = Readonly<{
  browser: boolean;
  port: number | undefined;
  opensBrowser: boolean;
  data: string | undefined;
  help: boolean;
}>;

export const USAGE = `npm start                     opens the desktop app, or the browser where that cannot start
npm start -- --browser        serves the app to a browser on this machine only
  --port N                    at this port instead of any free one
  --no-open                   prints the address without opening it
  --data FOLDER               keeps the library in this folder`;

/** @returns the options, or problems with the option's name as path */
export function startOptions(words: readonly string[]): Result<StartOptions> {
  try {
    const { values } = parseArgs({
      args: [...words],
      options: {
        browser: { type: 'boolean', default: false },
        port: { type: 'string' },
        'no-open': { type: 'boolean', default: false },
        data: { type: 'string' },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    const { browser, port, data, help } = values;
    if (port !== undefined && !(/^\d{1,5}$/.test(port) && Number(port) <= 65_535))
      return refused('--port', `must be a number from 0 (any free one) to 65535, is "${port}"`);
    if (data === '') return refused('--data', 'must name a folder');
    return {
      ok: true,
      value: {
        browser,
        port: port === undefined ? undefined : Number(port),
        opensBrowser: !values['no-open'],
        data,
        help,
      },
    };
  } catch (error) {
    return refused('options', error instanceof Error ? error.message : String(error));
  }
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
