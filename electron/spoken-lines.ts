/** Lines the desktop app says to the start script on its standard output. */

/** There is a window. */
export const SHOWN = 'roundwright: the window is open';
/** Another one of this app runs and has come to the front. */
export const ALREADY_OPEN = 'roundwright: is open already';
/** The app cannot go on, and said why in a dialog; the reason follows. */
export const STOPPED = 'roundwright: stopped: ';
