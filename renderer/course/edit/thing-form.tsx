import type { Feature } from 'geojson';
import { Button } from 'react-aria-components';
import { tagOf } from '../../../core/course/edit/edit-tags.ts';
import { KINDS, kindOf } from '../../../core/course/edit/kinds.ts';
import { verticesOf } from '../../../core/course/edit/vertices.ts';
import { MoveForm } from './move-form.tsx';
import { TagField } from './tag-field.tsx';
import { thingWords } from './thing-words.ts';
import type { Drawing } from './use-drawing.ts';

type ThingFormProps = Readonly<{
  feature: Feature;
  vertex: number | null;
  canRemoveVertex: boolean;
  drawing: Drawing;
}>;

/** What is known of the chosen thing, and what can be done with it. */
export function ThingForm({ feature, vertex, canRemoveVertex, drawing }: ThingFormProps) {
  const kind = kindOf(feature);
  const vertices = verticesOf(feature.geometry);
  return (
    <section className="thing-form" aria-label="The chosen thing">
      <h2>{thingWords(feature)}</h2>
      {kind === undefined ? (
        <p className="soft">This comes with the file and is kept as it is; it can be moved, copied and deleted.</p>
      ) : (
        <div className="field-grid">
          {KINDS[kind].fields.map(field => (
            <TagField
              key={field.key}
              field={field}
              value={tagOf(feature, field.key)}
              onValue={value => drawing.tag(field.key, value)}
            />
          ))}
        </div>
      )}
      {vertices.length > 1 && (
        <div className="vertex-row">
          <label className="inline-field">
            <span>Point</span>
            <select
              value={vertex ?? ''}
              onChange={event => drawing.chooseVertex(event.target.value === '' ? null : Number(event.target.value))}
            >
              <option value="">all of it</option>
              {vertices.map(({ path }, i) => (
                <option key={path.join('.')} value={i}>
                  {i + 1} of {vertices.length}
                </option>
              ))}
            </select>
          </label>
          <Button className="small-button" isDisabled={vertex === null} onPress={() => drawing.insert()}>
            Add point after
          </Button>
          <Button className="small-button" isDisabled={!canRemoveVertex} onPress={drawing.remove}>
            Delete point
          </Button>
        </div>
      )}
      <MoveForm label={vertex === null ? 'Move it' : `Move point ${vertex + 1}`} verb="Move" onGo={drawing.moveBy} />
      <div className="form-buttons">
        <Button className="small-button" onPress={drawing.copy}>
          Copy
        </Button>
        <Button className="small-button danger" onPress={drawing.removeThing}>
          Delete
        </Button>
      </div>
    </section>
  );
}
