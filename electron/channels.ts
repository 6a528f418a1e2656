/** The only channels there are. The preload script and the main process agree on them here. */
export const CHANNELS = {
  /** invoke: method of the API, its input */
  api: 'roundwright:api',
  /** invoke: method of the shell, its input */
  desktop: 'roundwright:desktop',
  /** main to page: an `AppEvent` */
  appEvent: 'roundwright:app-event',
  /** main to page: a `DesktopEvent` */
  desktopEvent: 'roundwright:desktop-event',
} as const;
