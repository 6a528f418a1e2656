import { type FormEvent, useState } from 'react';
import { Button, Checkbox, Input, Label, TextField } from 'react-aria-components';
import type { BaseMap } from '../../backend/api/contract/base-map.ts';
import { usePlanner } from '../state/planner.tsx';
import { FileChoice } from '../terrain/file-choice.tsx';
import { useBaseMap } from './use-base-map.ts';

/** Which pictures lie under the maps: none, a file, or those of a server the player names and allows. */
export function BaseMapPanel() {
  const { settings, change, backend, tell, say } = usePlanner();
  const { baseMap } = settings;
  const shown = useBaseMap();
  const choose = async (wanted: BaseMap) => {
    const answer = await backend.call.describeBaseMap({ baseMap: wanted });
    if (!answer.ok) return tell({ what: 'This base map cannot be shown', problems: answer.problems });
    tell(null);
    change({ baseMap: wanted }, 'change the base map');
    say(`Base map: ${answer.value.name}`);
  };
  return (
    <details className="side-panel">
      <summary>Base map</summary>
      <div className="side-panel-body">
        <p className="soft">
          {baseMap === null
            ? 'The course is drawn from its own file, without network. Pictures can lie under it: from a raster .mbtiles file on this machine, or from a tile server you name.'
            : `Under the maps: ${shown?.name ?? (baseMap.kind === 'file' ? baseMap.path : baseMap.address)}${shown === null ? ' (not shown)' : ''}.`}
        </p>
        {baseMap !== null && (
          <Button
            className="small-button"
            onPress={() => {
              change({ baseMap: null }, 'remove the base map');
              say('Base map removed');
            }}
          >
            No base map
          </Button>
        )}
        <FileForm key={`file ${baseMap?.kind === 'file' ? baseMap.path : ''}`} baseMap={baseMap} onChoose={choose} />
        <WebForm
          key={`web ${baseMap?.kind === 'web' ? JSON.stringify(baseMap) : ''}`}
          baseMap={baseMap}
          onChoose={choose}
        />
      </div>
    </details>
  );
}

type FormProps = Readonly<{ baseMap: BaseMap | null; onChoose: (wanted: BaseMap) => Promise<void> }>;

function FileForm({ baseMap, onChoose }: FormProps) {
  const { backend } = usePlanner();
  const [path, setPath] = useState(baseMap?.kind === 'file' ? baseMap.path : '');
  if (backend.desktop !== null)
    return (
      <FileChoice
        kind="baseMap"
        words="Choose .mbtiles file"
        onChoose={file => {
          if ('path' in file) void onChoose({ kind: 'file', path: file.path });
        }}
      />
    );
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void onChoose({ kind: 'file', path: path.trim() });
  };
  return (
    <form className="panel-form" onSubmit={submit}>
      <TextField className="typed-field wide" value={path} onChange={setPath} maxLength={4096}>
        <Label>Place of an .mbtiles file on this machine</Label>
        <Input placeholder="/home/me/maps/town.mbtiles" />
      </TextField>
      <Button className="button" type="submit" isDisabled={path.trim() === ''}>
        Use file
      </Button>
    </form>
  );
}

function WebForm({ baseMap, onChoose }: FormProps) {
  const now = baseMap?.kind === 'web' ? baseMap : null;
  const [address, setAddress] = useState(now?.address ?? '');
  const [attribution, setAttribution] = useState(now?.attribution ?? '');
  const [isAllowed, setAllowed] = useState(now?.isAllowed ?? false);
  const server = URL.parse(address.replace(/[{}]/g, ''))?.host;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void onChoose({ kind: 'web', address: address.trim(), attribution: attribution.trim(), isAllowed });
  };
  const isFilled = address.trim() !== '' && attribution.trim() !== '';
  return (
    <form className="panel-form" onSubmit={submit}>
      <TextField className="typed-field wide" value={address} onChange={setAddress} maxLength={500}>
        <Label>
          Tile address, with {'{z}'}, {'{x}'} and {'{y}'}
        </Label>
        <Input placeholder="https://tiles.example.org/{z}/{x}/{y}.png" />
      </TextField>
      <TextField className="typed-field wide" value={attribution} onChange={setAttribution} maxLength={300}>
        <Label>Whose map it is, as they ask to be named</Label>
        <Input placeholder="© the surveyors" />
      </TextField>
      <Checkbox className="check-box" isSelected={isAllowed} onChange={setAllowed}>
        <span className="check-mark" aria-hidden="true" />
        Let the app fetch pictures from {server ?? 'this server'}
      </Checkbox>
      <p className="soft">
        Off, nothing leaves this machine. On, the server learns which places you look at. Only pictures in view are
        fetched, and none is kept on the disk. Look whether its terms allow this use.
      </p>
      <Button className="button" type="submit" isDisabled={!isFilled}>
        Use address
      </Button>
    </form>
  );
}
