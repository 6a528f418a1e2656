import { makeElectron } from './make-electron.ts';

/** The stand-in as the module "electron" of a whole process; `STAND_IN_FOLDER` is where its paths lie. */
export const standIn = makeElectron({ folder: process.env.STAND_IN_FOLDER ?? '' });
export const { app, BrowserWindow, protocol, session, ipcMain, dialog, Menu, nativeTheme, screen } = standIn.electron;
