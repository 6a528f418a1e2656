import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { build, type InlineConfig, type Plugin } from 'vite';

const SHARED: InlineConfig = { configFile: false, logLevel: 'warn', publicDir: false };

/** Bundles `main.js` with its worker threads beside it. Packages stay outside. */
export async function bundleMain(root: string, outDir: string): Promise<void> {
  await build({
    ...SHARED,
    root,
    plugins: [fileAddresses(outDir)],
    build: {
      ssr: true,
      target: 'node24',
      outDir,
      emptyOutDir: false,
      minify: false,
      rolldownOptions: {
        input: { main: join(root, 'electron', 'main.ts') },
        external: ['electron'],
        output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: '[name].js' },
      },
    },
  });
}

/** Bundles `preload.cjs` with everything inside: a sandboxed preload script may require nothing but "electron". */
export async function bundlePreload(root: string, outDir: string): Promise<void> {
  await build({
    ...SHARED,
    root,
    ssr: { noExternal: true },
    build: {
      ssr: true,
      target: 'chrome140',
      outDir,
      emptyOutDir: false,
      minify: false,
      rolldownOptions: {
        input: { preload: join(root, 'electron', 'preload.ts') },
        external: ['electron'],
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  });
}

const ADDRESS = /new URL\(\s*'(\.[^']*)',\s*import\.meta\.url\s*\)/g;

/**
 * Keeps `new URL('./file', import.meta.url)` true in a bundle, which lies elsewhere: a worker becomes an entry of its own,
 * any other file is named from where the bundle is.
 */
function fileAddresses(outDir: string): Plugin {
  return {
    name: 'file-addresses',
    enforce: 'pre', // before the types are stripped and the quotes rewritten
    transform(code, id) {
      if (!id.endsWith('.ts') || !code.includes('import.meta.url')) return null;
      return code.replaceAll(ADDRESS, (_all, address: string) => {
        const file = resolve(dirname(id), address);
        if (!file.endsWith('-worker.ts')) return newUrl(relative(outDir, file).split(sep).join('/'));
        const fileName = `${basename(file, '.ts')}.js`;
        this.emitFile({ type: 'chunk', id: file, fileName });
        return newUrl(`./${fileName}`);
      });
    },
  };
}

function newUrl(address: string): string {
  return `new URL('${address}', import.meta.url)`;
}
