import { type PlayerFile, parsePlayer } from '../../core/player/player-file.ts';
import type { Result } from '../../core/units/result.ts';
import { type AppContext, sayChanged } from './app-context.ts';
import type { Undo } from './contract/values.ts';

/** A changed file and what the change is called, e.g. `Add a throw of Plain midrange`. */
export type PlayerChange = Readonly<{ file: PlayerFile; what: string }>;

/**
 * Writes a changed player file, checked as a whole, as one change that can be taken back.
 * @param pathOf - turns a path in the file into one of the call's input
 */
export function changePlayer(
  app: AppContext,
  playerId: string,
  change: (file: PlayerFile) => Result<PlayerChange>,
  pathOf: (path: string) => string = path => path,
): Result<{ undo: Undo }> {
  const { tables, changes } = app.store;
  const file = app.players.get(playerId);
  if (!file.ok) return file;
  const wanted = change(file.value);
  if (!wanted.ok) return wanted;
  const checked = parsePlayer(wanted.value.file);
  if (!checked.ok)
    return { ok: false, problems: checked.problems.map(({ path, message }) => ({ path: pathOf(path), message })) };
  const row = tables.players.get({ playerId })!;
  const undo = changes.change(wanted.value.what, editor =>
    editor.put('players', { ...row, file: JSON.stringify(checked.value) }),
  );
  sayChanged(app, ['players']);
  return { ok: true, value: { undo } };
}
