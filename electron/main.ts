import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { app } from 'electron';
import { openBackend } from '../backend/api/open-backend.ts';
import { dataFolder } from '../backend/store/data-folder.ts';
import { runApp, stop } from './run-app.ts';

const DATA = '--data=';

process.on('uncaughtException', stop);
process.on('unhandledRejection', stop);

const { argv: words, platform, env } = process;
const ownFolder = words.find(word => word.startsWith(DATA))?.slice(DATA.length);
// Whoever asks for another library gets another app beside the first: its own lock and window place.
if (ownFolder !== undefined) app.setPath('userData', resolve(ownFolder, 'shell'));

runApp({
  dist: join(import.meta.dirname, '..'),
  openBackend: () => openBackend({ folder: resolve(ownFolder ?? dataFolder({ platform, env, home: homedir() })) }),
  words,
});
