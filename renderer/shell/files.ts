import type { Backend } from '../client/backend.ts';

export type TextFile = Readonly<{ fileName: string; text: string }>;
export type FileKind = 'course' | 'player' | 'library';

/** What a file looks like it is; the import then says exactly what is wrong with it. */
export function kindOf({ fileName, text }: TextFile): FileKind {
  if (/\.geojson$/i.test(fileName)) return 'course';
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value === 'object' && value !== null) {
      if ('type' in value && value.type === 'FeatureCollection') return 'course';
      if ('courses' in value && 'players' in value) return 'library';
      if ('discs' in value || 'sessions' in value) return 'player';
    }
  } catch {
    return 'course';
  }
  return 'course';
}

export const readFiles = (files: readonly File[]): Promise<TextFile[]> =>
  Promise.all(files.map(async file => ({ fileName: file.name, text: await file.text() })));

/** Offers a text for saving: the shell's dialog, or the browser's download. */
export async function offerFile(backend: Backend, file: TextFile): Promise<void> {
  if (backend.desktop !== null) {
    await backend.desktop.desktop.saveFile(file);
    return;
  }
  const address = URL.createObjectURL(new Blob([file.text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = file.fileName;
  link.click();
  URL.revokeObjectURL(address);
}
