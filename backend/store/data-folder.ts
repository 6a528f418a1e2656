import { join } from 'node:path';

export type DataFolderParts = Readonly<{
  platform: NodeJS.Platform;
  env: Readonly<Record<string, string | undefined>>;
  home: string;
}>;

/**
 * Where the library lives; the same for the desktop app and the browser host, so that either shows what the other saved.
 * @source XDG Base Directory Specification 0.8 (a path there that is not absolute is ignored); Apple's File System
 *   Programming Guide ("Application Support"); Windows' known folder RoamingAppData
 */
export function dataFolder({ platform, env, home }: DataFolderParts): string {
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Roundwright');
  if (platform === 'win32') return join(env.APPDATA || join(home, 'AppData', 'Roaming'), 'Roundwright');
  const data = env.XDG_DATA_HOME;
  return join(data?.startsWith('/') ? data : join(home, '.local', 'share'), 'roundwright');
}
