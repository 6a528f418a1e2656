import { existsSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { createAdaptorServer } from '@hono/node-server';
import type { Result } from '../../core/units/result.ts';
import type { Backend } from '../api/open-backend.ts';
import { hostApp } from './host-app.ts';
import { makeKeys } from './keys.ts';
import { uploads } from './upload-route.ts';

const LOOPBACK = '127.0.0.1';

export type Host = Readonly<{
  /** Opens the app once in a browser, with the token in it: to be shown to the player only. */
  url: string;
  port: number;
  close(): Promise<void>;
}>;

export type HostOptions = Readonly<{
  backend: Pick<Backend, 'call' | 'subscribe'>;
  /** Folder of the built renderer, with its `index.html`. */
  root: string;
  /** Any free one when left out. */
  port?: number;
}>;

/**
 * Serves the app to browsers on this machine, and to nobody without the token of its address.
 * @returns the host, or one problem: nothing built at `root`, the port taken
 */
export async function startHost({ backend, root, port = 0 }: HostOptions): Promise<Result<Host>> {
  if (!existsSync(join(root, 'index.html')))
    return refused('root', `${root} holds no index.html: the app is not built`);
  const keys = makeKeys();
  // The app must know its own address, which is known only once the server listens: nothing is served before.
  let app: ReturnType<typeof hostApp> | undefined;
  const server = createAdaptorServer({
    fetch: (request, env) => app?.fetch(request, env) ?? new Response(null, { status: 503 }),
  }) as Server;
  try {
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      server.listen(port, LOOPBACK, resolve);
    });
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EADDRINUSE') return refused('port', `${port} is taken: name another, or none for any free one`);
    if (code === 'EACCES') return refused('port', `${port} may not be used: name one above 1023`);
    return refused('port', `${port} cannot be listened on (${code ?? String(error)})`);
  }
  const address = server.address() as AddressInfo;
  const host = `${LOOPBACK}:${address.port}`;
  const files = uploads();
  app = hostApp({ backend, root, host, keys, files });
  return {
    ok: true,
    value: {
      url: `http://${host}/?token=${keys.token}`,
      port: address.port,
      close: async () => {
        await new Promise<void>(resolve => {
          server.close(() => resolve());
          server.closeAllConnections();
        });
        await files.close();
      },
    },
  };
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
