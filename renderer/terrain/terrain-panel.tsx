import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Output } from '../../backend/api/contract/api.ts';
import { inUnits } from '../../core/sheet/words/lengths.ts';
import { usePlanner } from '../state/planner.tsx';
import { useUnits } from '../words/use-units.ts';
import { type ChosenFile, FileChoice } from './file-choice.tsx';
import { useTerrain, useTerrainWork } from './use-terrain.ts';

type Ground = NonNullable<Output<'getTerrain'>>;

/** The elevation models beside a course: what they are, what they cover; adding and removing them. */
export function TerrainPanel({ courseId }: Readonly<{ courseId: string }>) {
  const ground = useTerrain(courseId);
  const { work, add, remove } = useTerrainWork(courseId);
  const [terrain, setTerrain] = useState<ChosenFile | null>(null);
  const [surface, setSurface] = useState<ChosenFile | null>(null);
  const isBusy = work !== null;
  const start = async () => {
    if (terrain === null || !(await add(terrain, surface))) return;
    setTerrain(null);
    setSurface(null);
  };
  return (
    <details className="side-panel" open={ground.data !== null && ground.data !== undefined ? true : undefined}>
      <summary>Terrain</summary>
      <div className="side-panel-body">
        {ground.data ? (
          <GroundFacts ground={ground.data} />
        ) : (
          <p className="soft">
            Slopes come from heights in the course file. An elevation model (GeoTIFF, best 1 m from an airborne laser
            survey) gives the ground of every hole; with a surface model beside it, trees without a height get theirs.
          </p>
        )}
        <div className="file-choices">
          <FileChoice kind="terrain" words="Choose elevation model" isDisabled={isBusy} onChoose={setTerrain} />
          <span>{terrain?.name ?? <span className="soft">no file chosen</span>}</span>
          <FileChoice kind="surface" words="Choose surface model" isDisabled={isBusy} onChoose={setSurface} />
          <span>{surface?.name ?? <span className="soft">none, optional</span>}</span>
        </div>
        <div className="form-buttons">
          <Button className="button" isDisabled={terrain === null || isBusy} onPress={() => void start()}>
            {ground.data ? 'Replace terrain' : 'Add terrain'}
          </Button>
          {ground.data && (
            <Button className="small-button danger" isDisabled={isBusy} onPress={() => void remove()}>
              Remove terrain
            </Button>
          )}
          {work !== null && (
            <span role="status" className="busy">
              {work.words}…
            </span>
          )}
          {work?.stop != null && (
            <Button className="small-button" onPress={work.stop}>
              Cancel
            </Button>
          )}
        </div>
      </div>
    </details>
  );
}

function GroundFacts({ ground }: Readonly<{ ground: Ground }>) {
  const units = useUnits();
  const { settings } = usePlanner();
  const { terrain, surface, covered, missing, lowest_m, highest_m, treeHeights, assumptions } = ground;
  return (
    <>
      <dl className="facts">
        <dt>Ground</dt>
        <dd>
          {terrain.source}, a height every {units.length(terrain.resolution_m)}
        </dd>
        <dt>Counted</dt>
        <dd>
          {terrain.datum.replace(/^heights: /, '')}; {units.length(lowest_m, 0)} to {units.length(highest_m, 0)} here
        </dd>
        <dt>System</dt>
        <dd>{terrain.crs}</dd>
        <dt>Covers</dt>
        <dd>
          {missing.length === 0
            ? `all ${covered.length} holes`
            : `${covered.length} of ${covered.length + missing.length} holes; not ${missing.join(', ')}`}
        </dd>
        {surface !== undefined && (
          <>
            <dt>Tree tops</dt>
            <dd>
              {surface.source}; {treeHeights === 0 ? 'no heights were missing' : `${treeHeights} heights read from it`}
            </dd>
          </>
        )}
      </dl>
      {assumptions.map(note => (
        <p key={note} className="soft">
          {inUnits(note, settings)}
        </p>
      ))}
    </>
  );
}
