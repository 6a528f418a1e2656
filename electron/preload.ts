import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron';
import type { Client } from '../backend/api/contract/api.ts';
import type { Desktop, DesktopBridge } from '../backend/api/desktop-bridge.ts';
import { CHANNELS } from './channels.ts';

// Runs sandboxed: nothing but this file, channels.ts and what Electron lends a preload script may be in its bundle.

const api = <K extends keyof Client>(method: K) =>
  ((input: unknown) => ipcRenderer.invoke(CHANNELS.api, method, input)) as Client[K];
const shell = <K extends keyof Desktop>(method: K) =>
  ((input: unknown) => ipcRenderer.invoke(CHANNELS.desktop, method, input)) as Desktop[K];

/** The page gets the value alone, never the IPC event, which carries the sender. */
function listen<T>(channel: string, listener: (value: T) => void): () => void {
  const heard = (_event: IpcRendererEvent, value: T) => listener(value);
  ipcRenderer.on(channel, heard);
  return () => {
    ipcRenderer.removeListener(channel, heard);
  };
}

// Written out one by one: a method that is forgotten here does not compile.
contextBridge.exposeInMainWorld('roundwright', {
  listCourses: api('listCourses'),
  getCourse: api('getCourse'),
  getCourseMap: api('getCourseMap'),
  getHole: api('getHole'),
  previewCourse: api('previewCourse'),
  importCourse: api('importCourse'),
  renameCourse: api('renameCourse'),
  removeCourse: api('removeCourse'),
  exportCourse: api('exportCourse'),
  listPlayers: api('listPlayers'),
  getPlayer: api('getPlayer'),
  getThrows: api('getThrows'),
  previewPlayer: api('previewPlayer'),
  importPlayer: api('importPlayer'),
  renamePlayer: api('renamePlayer'),
  removePlayer: api('removePlayer'),
  exportPlayer: api('exportPlayer'),
  addDisc: api('addDisc'),
  updateDisc: api('updateDisc'),
  removeDisc: api('removeDisc'),
  startPlan: api('startPlan'),
  cancelPlan: api('cancelPlan'),
  getPlan: api('getPlan'),
  latestPlan: api('latestPlan'),
  evaluateShot: api('evaluateShot'),
  listPins: api('listPins'),
  pinShot: api('pinShot'),
  unpinShot: api('unpinShot'),
  listNotes: api('listNotes'),
  setNote: api('setNote'),
  getSettings: api('getSettings'),
  setSettings: api('setSettings'),
  renderSheet: api('renderSheet'),
  exportLibrary: api('exportLibrary'),
  importLibrary: api('importLibrary'),
  undo: api('undo'),
  listChanges: api('listChanges'),
  getStartNotes: api('getStartNotes'),
  subscribe: listener => listen(CHANNELS.appEvent, listener),
  desktop: {
    openFiles: shell('openFiles'),
    takeOpenedFiles: shell('takeOpenedFiles'),
    saveFile: shell('saveFile'),
    printPage: shell('printPage'),
    savePdf: shell('savePdf'),
    setTheme: shell('setTheme'),
  },
  subscribeDesktop: listener => listen(CHANNELS.desktopEvent, listener),
} satisfies DesktopBridge);
