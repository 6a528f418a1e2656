import { EventEmitter } from 'node:events';

type OnBeforeRequest = (request: { url: string }, callback: (answer: { cancel?: boolean }) => void) => void;

export class StandInSession extends EventEmitter {
  permissionRequest: ((contents: unknown, permission: string, callback: (ok: boolean) => void) => void) | undefined;
  permissionCheck: ((...args: unknown[]) => boolean) | undefined;
  devicePermission: ((...args: unknown[]) => boolean) | undefined;
  onBeforeRequest: OnBeforeRequest | undefined;
  readonly schemes = new Map<string, (request: Request) => Response | Promise<Response>>();
  readonly protocol = {
    handle: (scheme: string, handler: (request: Request) => Response | Promise<Response>) => {
      if (this.schemes.has(scheme)) throw new Error(`${scheme} is handled already`);
      this.schemes.set(scheme, handler);
    },
  };
  readonly webRequest = {
    onBeforeRequest: (listener: OnBeforeRequest) => {
      this.onBeforeRequest = listener;
    },
  };
  setPermissionRequestHandler(handler: StandInSession['permissionRequest']) {
    this.permissionRequest = handler;
  }
  setPermissionCheckHandler(handler: StandInSession['permissionCheck']) {
    this.permissionCheck = handler;
  }
  setDevicePermissionHandler(handler: StandInSession['devicePermission']) {
    this.devicePermission = handler;
  }

  /** A request of a page, through the app's filter and protocol. */
  async fetch(url: string): Promise<Response> {
    const isCancelled = await new Promise<boolean>(resolve => {
      if (this.onBeforeRequest === undefined) resolve(false);
      else this.onBeforeRequest({ url }, ({ cancel }) => resolve(cancel === true));
    });
    if (isCancelled) throw new Error(`ERR_BLOCKED_BY_CLIENT ${url}`);
    const handler = this.schemes.get(new URL(url).protocol.slice(0, -1));
    if (handler === undefined) throw new Error(`ERR_UNKNOWN_URL_SCHEME ${url}`);
    return handler(new Request(url));
  }
}
