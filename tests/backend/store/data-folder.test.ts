import { describe, expect, it } from 'vitest';
import { dataFolder } from '../../../backend/store/data-folder.ts';

// XDG Base Directory Specification 0.8; Apple, "File System Programming Guide"; Windows known folder RoamingAppData.
describe('where the library lies', () => {
  it.each([
    { platform: 'linux', env: {}, home: '/home/kim', want: '/home/kim/.local/share/roundwright' },
    { platform: 'linux', env: { XDG_DATA_HOME: '/data' }, home: '/home/kim', want: '/data/roundwright' },
    {
      platform: 'linux',
      env: { XDG_DATA_HOME: 'data' },
      home: '/home/kim',
      want: '/home/kim/.local/share/roundwright',
    },
    { platform: 'darwin', env: {}, home: '/Users/kim', want: '/Users/kim/Library/Application Support/Roundwright' },
    { platform: 'win32', env: { APPDATA: '/roaming' }, home: '/kim', want: '/roaming/Roundwright' },
    { platform: 'win32', env: {}, home: '/kim', want: '/kim/AppData/Roaming/Roundwright' },
  ] as const)('$platform with $env: $want', ({ want, ...parts }) => expect(dataFolder(parts)).toBe(want));
});
