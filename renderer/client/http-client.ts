import type { Client, Subscribe } from '../../backend/api/contract/api.ts';
import type { AppEvent } from '../../backend/api/contract/events.ts';
import type { Result } from '../../core/units/result.ts';
import type { Backend } from './backend.ts';

const unreachable: Result<never> = {
  ok: false,
  problems: [
    {
      path: 'connection',
      message:
        'the program behind this page does not answer: look whether it still runs in its terminal, start it again with "npm start", and open the address it prints',
    },
  ],
};
const signedOut: Result<never> = {
  ok: false,
  problems: [
    {
      path: 'connection',
      message: 'this page has lost its permission, as after a restart: open the address "npm start" prints',
    },
  ],
};

async function post(method: string, input: unknown): Promise<Result<unknown>> {
  try {
    const answer = await fetch(`api/${method}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(input),
    });
    if (answer.status === 401 || answer.status === 403) return signedOut;
    return (await answer.json()) as Result<unknown>;
  } catch {
    return unreachable;
  }
}

async function upload(file: File, signal: AbortSignal): Promise<Result<{ path: string }>> {
  try {
    const answer = await fetch(`upload?name=${encodeURIComponent(file.name)}`, {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: file,
      signal,
    });
    if (answer.status === 401 || answer.status === 403) return signedOut;
    return (await answer.json()) as Result<{ path: string }>;
  } catch {
    return unreachable;
  }
}

/** Client of the loopback host that served this page. */
export function httpClient(): Omit<Backend, 'desktop'> {
  const call = new Proxy({} as Client, {
    get: (_, method) => (typeof method === 'string' ? (input: unknown) => post(method, input) : undefined),
  });
  const reconnected = new Set<() => void>();
  const subscribe: Subscribe = listener => {
    const source = new EventSource('events');
    let isFirst = true;
    source.onopen = () => {
      if (!isFirst) for (const told of reconnected) told();
      isFirst = false;
    };
    source.onmessage = message => listener(JSON.parse(message.data as string) as AppEvent);
    return () => source.close();
  };
  const onReconnect = (listener: () => void) => {
    reconnected.add(listener);
    return () => void reconnected.delete(listener);
  };
  return { call, subscribe, onReconnect, upload };
}
