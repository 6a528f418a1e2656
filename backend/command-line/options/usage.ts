import type { Command } from 'commander';
import type { Problem } from '../../../core/units/result.ts';
import { EXIT } from '../problems.ts';
import { plain } from '../terminal.ts';

/**
 * Ends the command with a usage error that names the options to blame.
 * @param optionOf - which option stands behind each path of a problem
 */
export function usageError(
  command: Command,
  problems: readonly Problem[],
  optionOf: Readonly<Record<string, string>>,
): never {
  const lines = problems.map(({ path, message }) => {
    const option = optionOf[path] ?? optionOf[path.split(/[.[]/)[0]!];
    return `error: ${option === undefined ? plain(path) : `option '${option}'`}: ${plain(message)}`;
  });
  return command.error(lines.join('\n'), { exitCode: EXIT.usage });
}
