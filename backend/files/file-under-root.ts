import { realpath } from 'node:fs/promises';
import { extname, isAbsolute, join, relative } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
};

/**
 * The file a path of an address names, `/` being `index.html`.
 * @param pathname - as it stands in the address, percent signs and all
 * @returns its real place and media type; null when there is none, it is of no known kind, or lies outside the root, links followed
 */
export async function fileUnderRoot(root: string, pathname: string): Promise<{ file: string; type: string } | null> {
  let path: string;
  try {
    path = decodeURIComponent(pathname);
  } catch {
    return null;
  }
  if (path.includes('\0') || path.includes('\\')) return null;
  try {
    const realRoot = await realpath(root);
    const file = await realpath(join(realRoot, path === '/' ? 'index.html' : path));
    const inside = relative(realRoot, file);
    const type = TYPES[extname(file)];
    if (type === undefined || inside === '' || inside.startsWith('..') || isAbsolute(inside)) return null;
    return { file, type };
  } catch {
    return null;
  }
}
