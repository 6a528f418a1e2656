import type { App, Session, WebContents, WebFrameMain, WebPreferences } from 'electron';

/*
 * Electron's published security checklist (electronjs.org/docs/latest/tutorial/security), item by item:
 *
 *  1 Only load secure content: everything comes from this app over roundwright:; `lockSession` cancels every other request.
 *  2 No Node.js integration for remote content: no Node in any page, worker or frame (`WINDOW_PREFERENCES`).
 *  3 Context isolation: on; the preload script shares nothing but what contextBridge copies.
 *  4 Process sandboxing: `sandbox: true` on each window and `app.enableSandbox()` for whatever else may come.
 *  5 Permission requests: all refused, asked or checked, devices too (`lockSession`).
 *  6 webSecurity: never off.
 *  7 Content Security Policy: a header of every answer of the protocol, the same as the browser host's (backend/host/policy.ts).
 *  8 allowRunningInsecureContent: off.
 *  9 Experimental features: off.
 * 10 enableBlinkFeatures: not used.
 * 11 allowpopups on <webview>: no webview can exist, see 12.
 * 12 Verify webview options: `webviewTag: false`, and `lockContents` refuses any attachment.
 * 13 Limit navigation: every navigation and redirect that leaves the page is refused (`lockContents`); a dropped file too.
 * 14 Limit new windows: every window.open is denied.
 * 15 shell.openExternal with untrusted content: `shell` is not imported anywhere.
 * 16 Current version of Electron: pinned exactly in package.json, so that a new one is a reviewed change.
 * 17 Validate the sender of all IPC messages: `isOwnFrame`, before anything is read from a message (bridge.ts).
 * 18 Avoid file://: pages come over the custom protocol roundwright:; the fuse for file: privileges is off.
 * 19 Fuses: electron-builder.json turns off run-as-node, NODE_OPTIONS, inspect arguments and file: privileges, and
 *    turns on cookie encryption, asar integrity and loading from the asar only.
 * 20 Do not expose Electron APIs to untrusted content: preload.ts exposes one function a method, no channel, no event object.
 */

export const SCHEME = 'roundwright';
/** The app's own page and files. */
export const APP_ORIGIN = `${SCHEME}://app`;
const SHEET_ADDRESS = `${APP_ORIGIN}/sheet?`;
/** Pages handed over for printing; a session of their own. */
export const PAGE_ORIGIN = `${SCHEME}://page`;

/** Items 2, 3, 4, 6, 8, 9, 10, 12; defaults are written out so that a changed default changes nothing here. */
const LOCKED = {
  sandbox: true,
  contextIsolation: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  webviewTag: false,
  plugins: false,
  navigateOnDragDrop: false,
  safeDialogs: true,
  spellcheck: false, // Chromium fetches its dictionaries from the network
} as const satisfies WebPreferences;

/** @param devTools - only in a build that is not packaged */
export function windowPreferences(preload: string, devTools: boolean): WebPreferences {
  return { ...LOCKED, preload, devTools };
}

/** For a page to be printed: no script, no preload. */
export function pagePreferences(session: Session): WebPreferences {
  return { ...LOCKED, session, javascript: false, devTools: false };
}

/** Items 1 and 5: nothing from the network, no permission, no device. Called for each session there is. */
export function lockSession(session: Session, origin: string): void {
  session.setPermissionRequestHandler((_contents, _permission, callback) => callback(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest((request, callback) => callback({ cancel: !isLocal(request.url, origin) }));
  session.on('will-download', event => event.preventDefault());
}

/** Items 4, 12, 13 and 14, for every page the app will ever have. Call before the app is ready. */
export function lockContents(app: App): void {
  app.enableSandbox();
  app.on('web-contents-created', (_event, contents) => lockOne(contents));
}

function lockOne(contents: WebContents): void {
  // A page loaded by the shell itself (loadURL, reload) raises none of these.
  contents.on('will-navigate', event => event.preventDefault());
  contents.on('will-frame-navigate', event => {
    // The one frame there is: the sheet's preview, which no script runs in.
    if (event.isMainFrame || !event.url.startsWith(SHEET_ADDRESS)) event.preventDefault();
  });
  contents.on('will-redirect', event => event.preventDefault());
  contents.on('will-attach-webview', event => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** Item 17: the top frame of the app's own window, showing the app's own page. */
export function isOwnFrame(frame: WebFrameMain | null, contents: WebContents | undefined): boolean {
  if (frame === null || contents === undefined || contents.isDestroyed()) return false;
  return frame === contents.mainFrame && hasOrigin(frame.url, APP_ORIGIN);
}

function isLocal(url: string, origin: string): boolean {
  // data: and blob: are bytes the page has already; devtools: is refused to packaged builds by the window itself.
  return hasOrigin(url, origin) || /^(data|blob|devtools):/.test(url);
}

/** `URL.origin` says "null" for schemes Node does not know, so scheme and host are compared. */
function hasOrigin(url: string, origin: string): boolean {
  const [is, wanted] = [URL.parse(url), new URL(origin)];
  return is !== null && is.protocol === wanted.protocol && is.host === wanted.host && is.username === '';
}
