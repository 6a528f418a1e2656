import { rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { oneAtATime } from './one-at-a-time.ts';
import { isStale } from './stale.ts';

type Part = Readonly<{ sources: readonly string[]; outputs: readonly string[]; make: () => Promise<unknown> }>;
export type PartName = 'page' | 'shell';

/** Builds those of the parts that are stale, or all of them with `always`. The builder is loaded only when it is needed. */
export async function buildStale(
  root: string,
  names: readonly PartName[],
  { say, always = false }: Readonly<{ say: (line: string) => void; always?: boolean }>,
): Promise<void> {
  for (const name of names) {
    const { sources, outputs, make } = partsOf(root)[name];
    if (!always && !isStale(sources, outputs)) continue;
    await oneAtATime(join(root, 'dist', `${name}.lock`), async () => {
      // Another process may just have built it.
      if (!always && !isStale(sources, outputs)) return;
      say(`Building the ${name}…`);
      const begun_s = Date.now() / 1000;
      await make();
      // A source saved while the build ran counts as newer.
      for (const output of outputs) utimesSync(output, begun_s, begun_s);
    });
  }
}

function partsOf(root: string): Readonly<Record<PartName, Part>> {
  const at = (...names: string[]) => names.map(name => join(root, name));
  const dist = join(root, 'dist');
  return {
    page: {
      sources: at('renderer', 'core', 'backend/api', 'vite.config.ts', 'package-lock.json'),
      outputs: [join(dist, 'renderer', 'index.html')],
      make: async () => {
        const { build } = await import('vite');
        await build({ configFile: join(root, 'vite.config.ts'), root: join(root, 'renderer'), logLevel: 'warn' });
        const { collectLicences } = await import('./collect-licences.ts');
        writeFileSync(join(dist, 'renderer', 'licences.json'), JSON.stringify(collectLicences(root)));
      },
    },
    shell: {
      sources: at('electron', 'core', 'backend', 'start/bundle-shell.ts', 'package-lock.json'),
      outputs: [join(dist, 'electron', 'main.js'), join(dist, 'electron', 'preload.cjs')],
      make: async () => {
        const { bundleMain, bundlePreload } = await import('./bundle-shell.ts');
        const outDir = join(dist, 'electron');
        rmSync(outDir, { recursive: true, force: true });
        await Promise.all([bundleMain(root, outDir), bundlePreload(root, outDir)]);
      },
    },
  };
}
