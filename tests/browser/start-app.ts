import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Subscribe } from '../../backend/api/contract/api.ts';
import { openBackend } from '../../backend/api/open-backend.ts';
import { startHost } from '../../backend/host/start-host.ts';
import type { Result } from '../../core/units/result.ts';
import { buildStale } from '../../start/build-stale.ts';

const PROJECT = resolve(import.meta.dirname, '../..');

export type RunningApp = Readonly<{
  /** Opens the app once, with its token. */
  url: string;
  /** The app without token, for a browser that has opened it before. */
  home: string;
  /** Asks the backend past the window. */
  call: (method: string, input: unknown) => Promise<Result<unknown>>;
  subscribe: Subscribe;
  close: () => Promise<void>;
}>;

/** The real backend with an empty library of its own, served to a browser as `npm start -- --browser` does. */
export async function startApp(): Promise<RunningApp> {
  await buildStale(PROJECT, ['page'], { say: () => {} });
  const folder = mkdtempSync(join(tmpdir(), 'roundwright-browser-'));
  const backend = openBackend({ folder });
  if (!backend.ok) throw new Error(JSON.stringify(backend.problems));
  const host = await startHost({ backend: backend.value, root: join(PROJECT, 'dist/renderer') });
  if (!host.ok) throw new Error(JSON.stringify(host.problems));
  return {
    url: host.value.url,
    home: `http://127.0.0.1:${host.value.port}/`,
    call: backend.value.call,
    subscribe: backend.value.subscribe,
    close: async () => {
      await host.value.close();
      await backend.value.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
