import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Whether something must be built again: an output is missing, or a source is newer than the oldest output. Folders count
 * with their own time, so a deleted file is noticed too.
 * @param sources - files and folders; one that does not exist is passed over
 */
export function isStale(sources: readonly string[], outputs: readonly string[]): boolean {
  if (!outputs.every(output => existsSync(output))) return true;
  const oldest_ms = Math.min(...outputs.map(output => statSync(output).mtimeMs));
  return sources.some(source => existsSync(source) && newest_ms(source) > oldest_ms);
}

function newest_ms(path: string): number {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map(name => newest_ms(join(path, name))));
}
