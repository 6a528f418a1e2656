import { Button, FileTrigger } from 'react-aria-components';
import { readTableFile } from '../fieldwork/read-table-file.ts';
import { usePlanner } from '../state/planner.tsx';
import { plural } from './cost-words.ts';

type ImportRoundProps = Readonly<{ courseId: string; playerId: string; onAdded: (roundId: string) => void }>;

/** Takes round files in, JSON or table; each is checked as a whole first. */
export function ImportRound({ courseId, playerId, onAdded }: ImportRoundProps) {
  const { backend, changeLibrary, tell, say } = usePlanner();
  const take = async (file: File) => {
    const failed = `"${file.name}" could not be taken in`;
    const read = await readTableFile(file);
    if (!read.ok) return tell({ what: failed, problems: read.problems });
    const input = { courseId, playerId, fileName: file.name, text: read.value };
    const added = await changeLibrary(failed, backend.call.importRound(input));
    if (added === null) return;
    const kept = await backend.call.getRound({ roundId: added.roundId });
    if (kept.ok) say(`Round of ${kept.value.round.date} added: ${plural(kept.value.round.holes.length, 'hole')}`);
    onAdded(added.roundId);
  };
  return (
    <FileTrigger
      acceptedFileTypes={['.json', '.csv', '.tsv', '.txt', 'application/json', 'text/csv']}
      onSelect={async files => {
        for (const file of files ?? []) await take(file);
      }}
    >
      <Button className="small-button wide-button">Import a round</Button>
    </FileTrigger>
  );
}
