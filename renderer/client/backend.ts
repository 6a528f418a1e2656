import type { Client, Subscribe } from '../../backend/api/contract/api.ts';
import type { DesktopBridge } from '../../backend/api/desktop-bridge.ts';

/** The backend as the page sees it, over whichever line. */
export type Backend = Readonly<{
  call: Client;
  subscribe: Subscribe;
  /** Told when the line to the backend stands again after a break: events may have been missed. */
  onReconnect: (listener: () => void) => () => void;
  /** What only the desktop shell can do; null in a browser. */
  desktop: Pick<DesktopBridge, 'desktop' | 'subscribeDesktop'> | null;
}>;
