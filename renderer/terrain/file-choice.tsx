import { Button, FileTrigger } from 'react-aria-components';
import { usePlanner } from '../state/planner.tsx';

/** A file that is too large to be sent through a call: its place on this machine, or the file itself in a browser. */
export type ChosenFile = Readonly<{ name: string; path: string }> | Readonly<{ name: string; file: File }>;

type FileChoiceProps = Readonly<{
  kind: 'terrain' | 'surface' | 'baseMap';
  words: string;
  isDisabled?: boolean;
  onChoose: (file: ChosenFile) => void;
}>;

/** Opens the shell's or the browser's file dialog. */
export function FileChoice({ kind, words, isDisabled = false, onChoose }: FileChoiceProps) {
  const { backend, tell } = usePlanner();
  const { desktop } = backend;
  if (desktop === null)
    return (
      <FileTrigger
        acceptedFileTypes={kind === 'baseMap' ? ['.mbtiles'] : ['.tif', '.tiff', 'image/tiff']}
        onSelect={files => {
          const file = files?.[0];
          if (file !== undefined) onChoose({ name: file.name, file });
        }}
      >
        <Button className="small-button" isDisabled={isDisabled}>
          {words}
        </Button>
      </FileTrigger>
    );
  return (
    <Button
      className="small-button"
      isDisabled={isDisabled}
      onPress={async () => {
        const answer = await desktop.desktop.chooseFile({ kind });
        if (!answer.ok) return tell({ what: 'The file could not be chosen', problems: answer.problems });
        const { path } = answer.value;
        if (path !== null) onChoose({ name: path.split(/[/\\]/).at(-1) ?? path, path });
      }}
    >
      {words}
    </Button>
  );
}
