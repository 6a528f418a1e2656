import type { Context } from 'hono';
import { streamSSE } from 'hono/streaming';
import type { Subscribe } from '../api/contract/api.ts';

/** So often something is sent, that neither side takes a quiet line for a dead one. */
const BEAT_ms = 15_000;
/** A reader this far behind is cut off; its browser connects again and asks for the state. */
const MOST_WAITING = 2000;

/** What the backend says unasked, one event a message, until the browser leaves. */
export function eventStream(c: Context, subscribe: Subscribe): Response {
  c.header('X-Accel-Buffering', 'no');
  return streamSSE(c, async stream => {
    let waiting = 0;
    let sent: Promise<unknown> = stream.writeSSE({ event: 'ready', data: '' });
    const send = (write: () => Promise<unknown>) => {
      if (++waiting > MOST_WAITING) stream.abort();
      sent = sent.then(write).finally(() => {
        waiting--;
      });
    };
    const stop = subscribe(event => send(() => stream.writeSSE({ data: JSON.stringify(event) })));
    const beat = setInterval(() => send(() => stream.write(': \n\n')), BEAT_ms);
    await new Promise<void>(resolve => stream.onAbort(resolve));
    clearInterval(beat);
    stop();
  });
}
