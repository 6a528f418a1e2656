import type { Fieldwork } from '../state/fieldwork.ts';
import type { CsvOptions, CsvPreview } from './csv-import.tsx';
import { HANDS, Pick, SHAPES } from './pick.tsx';

type CsvSettingsProps = Readonly<{
  preview: CsvPreview;
  options: CsvOptions;
  discs: Fieldwork['discs'];
  onChange: (part: CsvOptions) => void;
}>;

const NONE = '';

/** How the text is read, and what counts where the table says nothing. */
export function CsvSettings({ preview, options, discs, onChange }: CsvSettingsProps) {
  const { defaults = {} } = options;
  const has = (field: string) => preview.columns.some(({ meaning }) => meaning === field);
  /** A default that is not chosen is left out, not written as nothing. */
  const setDefault = (key: keyof typeof defaults, value: string) => {
    const { [key]: _, ...others } = defaults;
    onChange({ defaults: value === NONE ? others : { ...others, [key]: value } });
  };
  return (
    <fieldset className="csv-settings">
      <legend>How to read it</legend>
      <Pick
        label="Cells are parted by"
        value={preview.delimiter}
        options={{ ',': 'commas', ';': 'semicolons', '\t': 'tabs' }}
        // other columns come of it: what was said about the old ones no longer counts
        onPick={delimiter => onChange({ delimiter, columns: undefined })}
      />
      <Pick
        label="First row"
        value={preview.hasHeader ? 'names' : 'throw'}
        options={{ names: 'names the columns', throw: 'is a throw already' }}
        onPick={first => onChange({ hasHeader: first === 'names', columns: undefined })}
      />
      <Pick
        label="Decimals"
        value={preview.decimal}
        options={
          {
            point: 'have a point',
            comma: 'have a comma',
            ...(preview.decimal === 'any' ? { any: 'not clear: choose' } : {}),
          } as Record<CsvPreview['decimal'], string>
        }
        onPick={decimal => decimal !== 'any' && onChange({ decimal })}
      />
      {has('date') && (
        <Pick
          label="Dates are"
          value={preview.dates}
          options={
            {
              ymd: 'year, month, day',
              dmy: 'day, month, year',
              mdy: 'month, day, year',
              ...(preview.dates === 'any' ? { any: 'as they show' } : {}),
            } as Record<CsvPreview['dates'], string>
          }
          onPick={dates => dates !== 'any' && onChange({ dates })}
        />
      )}
      <Pick
        label={has('disc') ? 'Disc where empty' : 'All rows are of'}
        value={defaults.discId ?? NONE}
        options={{ [NONE]: 'not said', ...Object.fromEntries(discs.map(({ id, name }) => [id, name])) }}
        onPick={discId => setDefault('discId', discId)}
      />
      <Pick
        label={has('hand') ? 'Hand where empty' : 'Hand of all rows'}
        value={defaults.hand ?? 'backhand'}
        options={HANDS}
        onPick={hand => setDefault('hand', hand)}
      />
      <Pick
        label={has('shape') ? 'Shape where empty' : 'Shape of all rows'}
        value={defaults.shape ?? 'flat'}
        options={SHAPES}
        onPick={shape => setDefault('shape', shape)}
      />
    </fieldset>
  );
}
