import { Button, FileTrigger } from 'react-aria-components';
import { usePlanner } from '../state/planner.tsx';
import { type FileKind, readFiles } from './files.ts';
import { useImport, useTakePicked } from './use-import.ts';

const JSON_FILES = ['.json', 'application/json'];
const MAPS = [
  '.geojson',
  '.json',
  '.osm',
  '.xml',
  '.gpx',
  '.kml',
  '.kmz',
  '.html',
  'application/geo+json',
  'application/json',
];

type ImportButtonProps = Readonly<{ kind: FileKind; words: string; className?: string }>;

/** Opens the file dialog of the shell or the browser and takes the files in. */
export function ImportButton({ kind, words, className = 'button' }: ImportButtonProps) {
  const { backend, tell } = usePlanner();
  const take = useImport();
  const takePicked = useTakePicked();
  const { desktop } = backend;
  if (desktop !== null)
    return (
      <Button
        className={className}
        onPress={async () => {
          const answer = await desktop.desktop.openFiles({ kind });
          if (!answer.ok) return tell({ what: 'The files could not be opened', problems: answer.problems });
          if (answer.value.problems.length > 0)
            tell({ what: 'Some files could not be read', problems: answer.value.problems });
          await take(answer.value.files);
        }}
      >
        {words}
      </Button>
    );
  return (
    <FileTrigger
      acceptedFileTypes={kind === 'course' ? MAPS : JSON_FILES}
      allowsMultiple
      onSelect={files => void readFiles([...(files ?? [])]).then(takePicked)}
    >
      <Button className={className}>{words}</Button>
    </FileTrigger>
  );
}
