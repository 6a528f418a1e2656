import { join } from 'node:path';
import { openBackend } from '../backend/api/open-backend.ts';
import { startHost } from '../backend/host/start-host.ts';
import type { Result } from '../core/units/result.ts';

export type ServeOptions = Readonly<{ root: string; folder: string; port: number | undefined }>;
export type Served = Readonly<{ address: string; close: () => Promise<void> }>;

/** Serves the built app to this machine's browsers. @returns the address to open, or what stands against it */
export async function serveBrowser({ root, folder, port }: ServeOptions): Promise<Result<Served>> {
  const opened = openBackend({ folder });
  if (!opened.ok) return opened;
  const backend = opened.value;
  const host = await startHost({
    backend,
    root: join(root, 'dist', 'renderer'),
    ...(port === undefined ? {} : { port }),
  });
  if (!host.ok) {
    await backend.close();
    return host;
  }
  const { url, close } = host.value;
  return {
    ok: true,
    value: {
      address: url,
      close: async () => {
        await close();
        await backend.close();
      },
    },
  };
}
