import type { Client, Subscribe } from '../../backend/api/contract/api.ts';
import type { DesktopBridge } from '../../backend/api/desktop-bridge.ts';
import type { Result } from '../../core/units/result.ts';

/** The backend as the page sees it, over whichever line. */
export type Backend = Readonly<{
  call: Client;
  subscribe: Subscribe;
  /** Told when the line to the backend stands again after a break: events may have been missed. */
  onReconnect: (listener: () => void) => () => void;
  /** Hands a large file over to the host that served the page; null in the shell, which has the file's place. */
  upload: ((file: File, signal: AbortSignal) => Promise<Result<{ path: string }>>) | null;
  /** What only the desktop shell can do; null in a browser. */
  desktop: Pick<DesktopBridge, 'desktop' | 'subscribeDesktop'> | null;
}>;
