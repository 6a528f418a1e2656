import { useCallback, useEffect, useRef, useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import type { Input, Output } from '../../backend/api/contract/api.ts';
import type { Problem } from '../../core/units/result.ts';
import type { Fieldwork } from '../state/fieldwork.ts';
import { usePlanner } from '../state/planner.tsx';
import { counted } from '../words/counted.ts';
import { CsvColumns } from './csv-columns.tsx';
import { CsvRows } from './csv-rows.tsx';
import { CsvSettings } from './csv-settings.tsx';
import { readTableFile } from './read-table-file.ts';
import type { TableFile } from './waiting-table.ts';

export type CsvOptions = NonNullable<Input<'previewThrowsCsv'>['options']>;
export type CsvPreview = Output<'previewThrowsCsv'>;

type CsvImportProps = Readonly<{
  playerId: string;
  work: Fieldwork;
  /** A table that was dropped on the window. */
  dropped: TableFile | null;
  onAdded: () => void;
  onClose: () => void;
}>;

/** A table of throws: what its columns mean, what is wrong in which row, what would be added; then all of it or nothing. */
export function CsvImport({ playerId, work, dropped, onAdded, onClose }: CsvImportProps) {
  const { backend, changeLibrary, say } = usePlanner();
  const dialog = useRef<HTMLDialogElement>(null);
  const [file, setFile] = useState<TableFile | null>(null);
  const [pasted, setPasted] = useState('');
  const [options, setOptions] = useState<CsvOptions>({});
  const [preview, setPreview] = useState<CsvPreview | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [agreed, setAgreed] = useState(false);

  useEffect(() => {
    dialog.current?.showModal();
    dialog.current?.querySelector<HTMLElement>('.csv-source button')?.focus();
  }, []);
  useEffect(() => {
    if (file === null) return;
    let isCurrent = true;
    void backend.call.previewThrowsCsv({ playerId, text: file.text, options }).then(answer => {
      if (!isCurrent) return;
      setAgreed(false);
      setPreview(answer.ok ? answer.value : null);
      setProblems(answer.ok ? answer.value.problems : answer.problems);
    });
    return () => {
      isCurrent = false;
    };
  }, [backend, playerId, file, options]);

  const take = useCallback((name: string, text: string) => {
    setOptions({});
    setPreview(null);
    setProblems([]);
    setFile({ name, text });
  }, []);
  useEffect(() => {
    if (dropped !== null) take(dropped.name, dropped.text);
  }, [dropped, take]);
  const change = (part: CsvOptions) => setOptions(now => ({ ...now, ...part }));
  const isReady = preview !== null && problems.length === 0 && preview.throws > 0 && (preview.bad === 0 || agreed);
  const bring = async () => {
    if (file === null || preview === null) return;
    const done = await changeLibrary(
      'The table could not be taken in',
      backend.call.importThrowsCsv({ playerId, text: file.text, options, dropBad: preview.bad }),
    );
    if (done === null) return onClose();
    onAdded();
    say(`${counted(done.throws, 'throw')} added`);
    onClose();
  };

  return (
    <dialog ref={dialog} className="csv-dialog" aria-labelledby="csv-title" onClose={onClose}>
      <div className="csv-head">
        <h2 id="csv-title">Import throws from a table (CSV)</h2>
        <Button className="small-button" onPress={onClose}>
          Close
        </Button>
      </div>
      <div className="csv-body">
        <div className="csv-source">
          <FileTrigger
            acceptedFileTypes={['.csv', '.tsv', '.txt', 'text/csv', 'text/tab-separated-values']}
            onSelect={async files => {
              const chosen = files?.[0];
              if (chosen === undefined) return;
              const read = await readTableFile(chosen);
              if (read.ok) return take(chosen.name, read.value);
              setFile(null);
              setPreview(null);
              setProblems(read.problems);
            }}
          >
            <Button className="button">Choose a file</Button>
          </FileTrigger>
          <span>{file === null ? 'or paste the table:' : file.name}</span>
        </div>
        {file === null && (
          <>
            <label className="plain-field">
              <span>Table</span>
              <textarea
                rows={5}
                value={pasted}
                onChange={event => setPasted(event.target.value)}
                placeholder={'disc,distance_m,side_m\nStraight midrange,84.5,-2'}
              />
            </label>
            <Button
              className="button"
              isDisabled={pasted.trim() === ''}
              onPress={() => take('pasted table', pasted.toWellFormed())}
            >
              Read the table
            </Button>
            <p className="soft">
              The first row names the columns, with their units: disc, distance_ft or distance_m, side_ft or side_m
              (right positive), hand, shape, power, date, wind_mph, windFrom_deg, bearing_deg. Commas, semicolons or
              tabs; decimal points or commas. What is named otherwise can be told here.
            </p>
          </>
        )}
        {problems.length > 0 && (
          <div className="csv-problems" role="alert">
            <h3>Nothing can be read yet: say it below, or mend the file</h3>
            <ul>
              {problems.slice(0, 12).map(({ path, message }) => (
                <li key={`${path} ${message}`}>
                  <code>{path}</code> {message}
                </li>
              ))}
            </ul>
          </div>
        )}
        {preview !== null && (
          <>
            <CsvSettings preview={preview} options={options} discs={work.discs} onChange={change} />
            <CsvColumns preview={preview} onColumns={columns => change({ columns })} />
            <CsvRows preview={preview} />
          </>
        )}
      </div>
      {preview !== null && problems.length === 0 && (
        <div className="csv-foot">
          <p role="status">{summary(preview)}</p>
          {preview.bad > 0 && preview.throws > 0 && (
            <label className="check-field">
              <input type="checkbox" checked={agreed} onChange={event => setAgreed(event.target.checked)} />
              Leave the {counted(preview.bad, 'bad row')} out
            </label>
          )}
          <Button className="button" isDisabled={!isReady} onPress={() => void bring()}>
            Add {counted(preview.throws, 'throw')}
          </Button>
        </div>
      )}
    </dialog>
  );
}

function summary({ throws, sessions, bad, known }: CsvPreview): string {
  const parts = [`${counted(throws, 'throw')} in ${counted(sessions, 'session')} would be added.`];
  if (bad > 0)
    parts.push(
      `${counted(bad, 'row')} ${bad === 1 ? 'is' : 'are'} bad: mend the file, or leave ${bad === 1 ? 'it' : 'them'} out.`,
    );
  if (known > 0)
    parts.push(`${counted(known, 'throw')} of sessions you have already ${known === 1 ? 'is' : 'are'} left out.`);
  return parts.join(' ');
}
