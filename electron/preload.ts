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
  readCourseFile: api('readCourseFile'),
  updateCourse: api('updateCourse'),
  renameCourse: api('renameCourse'),
  removeCourse: api('removeCourse'),
  exportCourse: api('exportCourse'),
  listDrafts: api('listDrafts'),
  openDraft: api('openDraft'),
  keepDraft: api('keepDraft'),
  discardDraft: api('discardDraft'),
  saveCourse: api('saveCourse'),
  describeDraft: api('describeDraft'),
  buildWalkedHole: api('buildWalkedHole'),
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
  getFieldwork: api('getFieldwork'),
  addSession: api('addSession'),
  updateSession: api('updateSession'),
  removeSession: api('removeSession'),
  addThrows: api('addThrows'),
  updateThrow: api('updateThrow'),
  removeThrow: api('removeThrow'),
  previewThrowsCsv: api('previewThrowsCsv'),
  importThrowsCsv: api('importThrowsCsv'),
  exportThrowsCsv: api('exportThrowsCsv'),
  getDiscScatter: api('getDiscScatter'),
  getPutting: api('getPutting'),
  addPutts: api('addPutts'),
  updatePutts: api('updatePutts'),
  removePutts: api('removePutts'),
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
  startPractice: api('startPractice'),
  getPractice: api('getPractice'),
  cancelPractice: api('cancelPractice'),
  renderPracticeSheet: api('renderPracticeSheet'),
  listRounds: api('listRounds'),
  getRound: api('getRound'),
  previewRound: api('previewRound'),
  importRound: api('importRound'),
  saveRound: api('saveRound'),
  removeRound: api('removeRound'),
  exportRound: api('exportRound'),
  startReview: api('startReview'),
  cancelReview: api('cancelReview'),
  getReview: api('getReview'),
  offerRound: api('offerRound'),
  previewFit: api('previewFit'),
  acceptFit: api('acceptFit'),
  getSeason: api('getSeason'),
  getSettings: api('getSettings'),
  setSettings: api('setSettings'),
  renderSheet: api('renderSheet'),
  exportLibrary: api('exportLibrary'),
  importLibrary: api('importLibrary'),
  undo: api('undo'),
  listChanges: api('listChanges'),
  getTerrain: api('getTerrain'),
  addTerrain: api('addTerrain'),
  removeTerrain: api('removeTerrain'),
  describeBaseMap: api('describeBaseMap'),
  getTile: api('getTile'),
  shareCourse: api('shareCourse'),
  cancelMeasuring: api('cancelMeasuring'),
  getMeasuring: api('getMeasuring'),
  startMeasuring: api('startMeasuring'),
  getStartNotes: api('getStartNotes'),
  subscribe: listener => listen(CHANNELS.appEvent, listener),
  desktop: {
    openFiles: shell('openFiles'),
    chooseFile: shell('chooseFile'),
    takeOpenedFiles: shell('takeOpenedFiles'),
    saveFile: shell('saveFile'),
    printPage: shell('printPage'),
    savePdf: shell('savePdf'),
    setTheme: shell('setTheme'),
  },
  subscribeDesktop: listener => listen(CHANNELS.desktopEvent, listener),
} satisfies DesktopBridge);
