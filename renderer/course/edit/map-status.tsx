import type { FeatureCollection, Position } from 'geojson';
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { KINDS } from '../../../core/course/edit/kinds.ts';
import { bearingAndDistance, positionAt } from '../../../core/course/edit/shift-position.ts';
import type { Snap } from '../../../core/course/edit/snap.ts';
import { TypedField } from '../../shell/typed-field.tsx';
import { usePlanner } from '../../state/planner.tsx';
import { bareLength, readLength } from '../../words/read-quantity.ts';
import { useUnits } from '../../words/use-units.ts';
import type { Editing } from './editing.ts';
import { KEY_HELP } from './map-keys.ts';
import { MoveForm } from './move-form.tsx';
import { thingWords } from './thing-words.ts';
import { readPlace } from './walk-numbers.ts';

/** Screen readers hear where the cross ends up, not every step on the way. */
const HEARD_AFTER_ms = 350;

type MapStatusProps = Readonly<{
  id: string;
  file: FeatureCollection;
  editing: Editing;
  aim: Readonly<{ position: Position; held: Snap | null }>;
  teeAt: Position | null;
  /** Null: nothing is held on to. */
  reach_m: number | null;
  onReach: (reach_m: number | null) => void;
  onCross: (cross: Position) => void;
  onPlace: () => void;
}>;

/** Where the cross is, what it holds on to, and how the map is worked without a pointer. */
export function MapStatus({ id, file, editing, aim, teeAt, reach_m, onReach, onCross, onPlace }: MapStatusProps) {
  const { settings } = usePlanner();
  const units = useUnits();
  const { tool, held, chosen, cross } = editing;
  const from = (at: Position, what: string) => {
    const { bearing_deg, distance_m } = bearingAndDistance(at, aim.position);
    if (distance_m < 0.05) return `at ${what}`;
    return `${units.length(distance_m, 1)} from ${what}, towards ${Math.round(bearing_deg) % 360}°`;
  };
  const last = tool?.points.at(-1);
  const words = [
    tool !== null ? `Drawing: ${KINDS[tool.kind].word}` : held !== null ? 'In hand' : null,
    chosen !== null && tool === null ? thingWords(file.features[chosen]!) : null,
    last !== undefined ? from(last, 'the last point') : teeAt !== null ? from(teeAt, 'the tee') : null,
    aim.held === null
      ? null
      : `holds on to ${aim.held.to === 'edge' ? 'the edge of ' : ''}${thingWords(file.features[aim.held.featureIndex]!)}`,
  ].filter(Boolean);
  const text = words.join('; ') || 'The cross is where the map begins';
  const [heard, setHeard] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => setHeard(text), HEARD_AFTER_ms);
    return () => clearTimeout(timer);
  }, [text]);
  const anchor = last ?? teeAt ?? cross;
  const anchorWords = last !== undefined ? 'From the last point' : teeAt !== null ? 'From the tee' : 'From the cross';
  return (
    <section className="map-status" aria-label="Where the cross is">
      <div className="status-head">
        <p id={id}>{text}</p>
        <Button className="small-button" onPress={onPlace}>
          {tool !== null ? 'Place a point' : held !== null ? 'Put it down' : 'Choose what is there'}
        </Button>
      </div>
      <p className="unseen" role="status">
        {heard}
      </p>
      <div className="status-tools">
        <label className="check-field">
          <input
            type="checkbox"
            checked={reach_m !== null}
            onChange={event => onReach(event.target.checked ? 2 : null)}
          />
          Hold on to points and edges
        </label>
        {reach_m !== null && (
          <TypedField
            className="reach-field"
            label="within"
            text={`${bareLength(reach_m, settings)} ${settings.length}`}
            read={typed => {
              const read = readLength(typed, settings);
              if (read.ok && !(read.value > 0 && read.value <= 50))
                return { ok: false, problems: [{ path: 'reach', message: 'up to 50 m' }] };
              return read;
            }}
            onValue={onReach}
          />
        )}
      </div>
      <details className="key-help">
        <summary>By numbers and by keys</summary>
        <MoveForm
          label={anchorWords}
          verb="Put the cross there"
          onGo={(bearing_deg, distance_m) => onCross(positionAt([anchor[0]!, anchor[1]!], bearing_deg, distance_m))}
        />
        <TypedField
          className="place-field"
          label="Put the cross at latitude, longitude"
          text=""
          read={readPlace}
          onValue={onCross}
        />
        <dl>
          {KEY_HELP.map(([keys, does]) => (
            <div key={keys}>
              <dt>{keys}</dt>
              <dd>{does}</dd>
            </div>
          ))}
        </dl>
      </details>
    </section>
  );
}
