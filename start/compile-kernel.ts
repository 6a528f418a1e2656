import { fileURLToPath } from 'node:url';
import { main } from 'assemblyscript/asc';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const LINE = 116;

/**
 * Compiles `kernel/` (AssemblyScript) to WebAssembly.
 * @returns the text of core/flight/flight-kernel.ts: the same for the same source
 * @throws {Error} with the compiler's messages when the source does not compile
 */
export async function kernelModule(): Promise<string> {
  let bytes: Uint8Array | null = null;
  const options = ['kernel/fly.ts', '--baseDir', ROOT, '--outFile', 'kernel.wasm', '-O3', '--enable', 'simd'];
  const { error, stderr } = await main([...options, '--runtime', 'stub', '--noAssert', '--disableWarning', '112'], {
    writeFile(_name, contents) {
      if (typeof contents !== 'string') bytes = contents;
    },
  });
  if (error || bytes === null) throw new Error(`kernel/ does not compile:\n${stderr.toString()}`, { cause: error });
  const text = Buffer.from(bytes as Uint8Array).toString('base64');
  const lines = text.match(new RegExp(`.{1,${LINE}}`, 'g'))!;
  return [
    '// Written by `npm run kernel` from kernel/: not to be edited by hand.',
    '',
    '/** The compiled flight kernel, base64. */',
    'export const FLIGHT_KERNEL =',
    `${lines.map(line => `  '${line}'`).join(' +\n')};`,
    '',
  ].join('\n');
}
