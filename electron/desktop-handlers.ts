import { basename, dirname, join } from 'node:path';
import {
  type BrowserWindow,
  dialog,
  type FileFilter,
  nativeTheme,
  type OpenDialogOptions,
  type SaveDialogOptions,
} from 'electron';
import type { Result } from '../core/units/result.ts';
import type { CurrentWindow, DesktopHandlers } from './bridge.ts';
import { type OpenedFiles, readFiles } from './opened-files.ts';
import type { PagePrinter } from './page-printer.ts';
import { saveFile } from './save-file.ts';

const COURSE: FileFilter = { name: 'Courses (GeoJSON)', extensions: ['geojson', 'json'] };
const MAPS: FileFilter = {
  name: 'Maps (GeoJSON, OpenStreetMap, GPX, KML)',
  extensions: ['geojson', 'json', 'osm', 'xml', 'gpx', 'kml', 'kmz', 'html'],
};
const JSON_FILE: FileFilter = { name: 'Roundwright files (JSON)', extensions: ['json'] };
const PAGE: FileFilter = { name: 'Pages (HTML)', extensions: ['html'] };
const PDF: FileFilter = { name: 'PDF', extensions: ['pdf'] };
const ANY: FileFilter = { name: 'All files', extensions: ['*'] };

const GEOTIFF: FileFilter = { name: 'Elevation models (GeoTIFF)', extensions: ['tif', 'tiff'] };
const MBTILES: FileFilter = { name: 'Base maps (MBTiles)', extensions: ['mbtiles'] };
const CHOICES = {
  terrain: { title: 'Choose an elevation model', filter: GEOTIFF },
  surface: { title: 'Choose a surface model', filter: GEOTIFF },
  baseMap: { title: 'Choose a base map', filter: MBTILES },
} as const;
const TITLES = { course: 'Import a course', player: 'Import a player', library: 'Import a library' } as const;

export type DesktopParts = Readonly<{
  current: CurrentWindow;
  printer: PagePrinter;
  /** Where the first dialog opens. */
  folder: string;
  takeOpened: () => OpenedFiles;
}>;

/** Dialogs, files and printing for the window's page. Input was checked by the bridge. */
export function desktopHandlers({ current, printer, folder, takeOpened }: DesktopParts): DesktopHandlers {
  let lastFolder = folder;

  async function choosePlace(fileName: string, filters: FileFilter[]): Promise<string | null> {
    // Only a name may come from the page, never a place.
    const options: SaveDialogOptions = { defaultPath: join(lastFolder, safeName(fileName)), filters };
    const window = current();
    const { canceled, filePath } = await (window
      ? dialog.showSaveDialog(window, options)
      : dialog.showSaveDialog(options));
    if (canceled || filePath === '') return null;
    lastFolder = dirname(filePath);
    return filePath;
  }

  async function save(fileName: string, filters: FileFilter[], content: () => Promise<Result<string | Uint8Array>>) {
    const path = await choosePlace(fileName, filters);
    if (path === null) return NOT_SAVED;
    const made = await content();
    return made.ok ? saveFile(path, made.value) : made;
  }

  return {
    openFiles: async ({ kind }) => {
      const chosen = await showOpen(current(), {
        title: TITLES[kind],
        defaultPath: lastFolder,
        filters: [kind === 'course' ? MAPS : JSON_FILE, ANY],
        properties: kind === 'library' ? ['openFile'] : ['openFile', 'multiSelections'],
      });
      if (chosen[0] !== undefined) lastFolder = dirname(chosen[0]);
      return { ok: true, value: readFiles(chosen) };
    },
    chooseFile: async ({ kind }) => {
      const [path = null] = await showOpen(current(), {
        title: CHOICES[kind].title,
        defaultPath: lastFolder,
        filters: [CHOICES[kind].filter, ANY],
        properties: ['openFile'],
      });
      if (path !== null) lastFolder = dirname(path);
      return { ok: true, value: { path } };
    },
    takeOpenedFiles: async () => ({ ok: true, value: takeOpened() }),
    saveFile: ({ fileName, text }) =>
      save(fileName, [filterOf(fileName), ANY], async () => ({
        ok: true,
        value: text,
      })),
    printPage: ({ html }) => printer.print(html),
    savePdf: ({ fileName, html }) => save(fileName, [PDF], () => printer.pdf(html)),
    setTheme: async ({ theme }) => {
      nativeTheme.themeSource = theme;
      return { ok: true, value: {} };
    },
  };
}

const NOT_SAVED = { ok: true, value: { saved: false } } as const;

/** @returns nothing when the dialog was closed */
async function showOpen(window: BrowserWindow | undefined, options: OpenDialogOptions): Promise<string[]> {
  const answer = await (window ? dialog.showOpenDialog(window, options) : dialog.showOpenDialog(options));
  return answer.filePaths;
}

function filterOf(fileName: string): FileFilter {
  if (fileName.endsWith('.geojson')) return COURSE;
  return fileName.endsWith('.html') ? PAGE : JSON_FILE;
}

/** The last part of the name, without what some file system does not take. */
export function safeName(fileName: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must go
  const name = basename(fileName.replaceAll('\\', '/')).replaceAll(/[<>:"|?*\u0000-\u001f]/g, '-');
  return name === '' || name === '.' || name === '..' ? 'roundwright' : name;
}
