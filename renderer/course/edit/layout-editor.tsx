import type { FeatureCollection } from 'geojson';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { removeFeature } from '../../../core/course/edit/edit-features.ts';
import {
  addLayout,
  type LayoutEntry,
  layoutHolesOf,
  renameLayout,
  setLayoutHoles,
} from '../../../core/course/edit/edit-layouts.ts';
import { tagOf } from '../../../core/course/edit/edit-tags.ts';
import { refKey } from '../../../core/course/hole-ref.ts';
import { keyed } from '../../frame/keyed.ts';
import { TypedField } from '../../shell/typed-field.tsx';
import type { Drawn } from './drawn.ts';

type LayoutEditorProps = Readonly<{
  file: FeatureCollection;
  holes: Drawn['holes'];
  onEdit: (what: string, file: FeatureCollection) => void;
}>;

/** Ways to play the course: which holes, from which tee to which basket, in which order. */
export function LayoutEditor({ file, holes, onEdit }: LayoutEditorProps) {
  const layouts = file.features.flatMap((feature, index) => {
    const entries = layoutHolesOf(feature);
    return entries === undefined ? [] : [{ index, name: tagOf(feature, 'name') ?? '', entries }];
  });
  const [wanted, setWanted] = useState<number | null>(null);
  const shown = layouts.find(({ index }) => index === wanted) ?? layouts[0];
  const add = () => {
    const name = freeName(layouts.map(layout => layout.name));
    onEdit(
      `add the layout ${name}`,
      addLayout(
        file,
        name,
        holes.map(({ ref }) => ({ ref })),
      ),
    );
    setWanted(file.features.length);
  };
  return (
    <section className="layout-editor" aria-label="Layouts">
      <div className="row-buttons">
        {layouts.length > 0 && (
          <label className="inline-field">
            <span>Layout</span>
            <select value={shown?.index} onChange={event => setWanted(Number(event.target.value))}>
              {layouts.map(({ index, name }) => (
                <option key={index} value={index}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        )}
        <Button className="small-button" isDisabled={holes.length === 0} onPress={add}>
          New layout
        </Button>
      </div>
      {shown === undefined ? (
        <p className="soft">
          A layout says which tees and baskets are played, and in which order. Without one the first of each is played,
          in order of the holes’ numbers.
        </p>
      ) : (
        <LayoutForm key={shown.index} {...shown} file={file} holes={holes} onEdit={onEdit} />
      )}
    </section>
  );
}

type LayoutFormProps = LayoutEditorProps & Readonly<{ index: number; name: string; entries: readonly LayoutEntry[] }>;

function LayoutForm({ file, holes, onEdit, index, name, entries }: LayoutFormProps) {
  const set = (what: string, changed: readonly LayoutEntry[]) => onEdit(what, setLayoutHoles(file, index, changed));
  const left = holes.filter(hole => !entries.some(({ ref }) => refKey(String(ref)) === refKey(hole.ref)));
  return (
    <>
      <TypedField
        label="Name of the layout"
        text={name}
        read={text =>
          text.trim() === ''
            ? { ok: false, problems: [{ path: 'name', message: 'is empty: write a name' }] }
            : { ok: true, value: text.trim() }
        }
        onValue={text => onEdit(`rename the layout ${name}`, renameLayout(file, index, text))}
      />
      <div className="layout-head" aria-hidden="true">
        <span>Hole</span>
        <span>Tee</span>
        <span>Basket</span>
      </div>
      <ol className="layout-holes">
        {keyed(entries).map(({ key, item: entry }, i) => {
          const ref = String(entry.ref);
          const hole = holes.find(hole => refKey(hole.ref) === refKey(ref));
          const change = (what: string, changes: Partial<LayoutEntry>) => {
            const { tee, basket, ...rest } = { ...entry, ...changes };
            const changed = { ...rest, ...(tee && { tee }), ...(basket && { basket }) } as LayoutEntry;
            set(`${what} of hole ${ref} in ${name}`, entries.with(i, changed));
          };
          return (
            <li key={key}>
              <strong>{ref}</strong>
              <SiteChoice
                label={`Tee of hole ${ref}`}
                sites={hole?.tees ?? []}
                value={entry.tee}
                onPick={tee => change('the tee', { tee })}
              />
              <SiteChoice
                label={`Basket of hole ${ref}`}
                sites={hole?.baskets ?? []}
                value={entry.basket}
                onPick={basket => change('the basket', { basket })}
              />
              <span className="row-buttons">
                <Button
                  className="small-button"
                  aria-label={`Play hole ${ref} earlier`}
                  isDisabled={i === 0}
                  onPress={() => set(`play hole ${ref} earlier in ${name}`, swapped(entries, i, i - 1))}
                >
                  ↑
                </Button>
                <Button
                  className="small-button"
                  aria-label={`Play hole ${ref} later`}
                  isDisabled={i === entries.length - 1}
                  onPress={() => set(`play hole ${ref} later in ${name}`, swapped(entries, i, i + 1))}
                >
                  ↓
                </Button>
                <Button
                  className="small-button"
                  aria-label={`Leave hole ${ref} out`}
                  isDisabled={entries.length === 1}
                  onPress={() => set(`leave hole ${ref} out of ${name}`, entries.toSpliced(i, 1))}
                >
                  ×
                </Button>
              </span>
            </li>
          );
        })}
      </ol>
      <div className="row-buttons">
        {left.map(({ ref }) => (
          <Button
            key={ref}
            className="small-button"
            onPress={() => set(`play hole ${ref} in ${name}`, [...entries, { ref }])}
          >
            Add hole {ref}
          </Button>
        ))}
      </div>
      <Button
        className="small-button danger"
        onPress={() => onEdit(`delete the layout ${name}`, removeFeature(file, index))}
      >
        Delete layout
      </Button>
    </>
  );
}

type SiteChoiceProps = Readonly<{
  label: string;
  sites: Drawn['holes'][number]['tees'];
  value: string | undefined;
  onPick: (key: string | undefined) => void;
}>;

function SiteChoice({ label, sites, value, onPick }: SiteChoiceProps) {
  const first = sites[0]?.key;
  if (sites.length < 2 && value === undefined) return <span className="soft">the only one</span>;
  // a site may also be called by its place among the hole's, `#2`, whatever its name has become since
  const numbered = /^#(\d+)$/.exec(value ?? '');
  const chosen = (numbered === null ? undefined : sites[Number(numbered[1]) - 1]?.key) ?? value;
  const isKnown = chosen === undefined || sites.some(({ key }) => key === chosen);
  return (
    <select aria-label={label} value={chosen ?? ''} onChange={event => onPick(event.target.value || undefined)}>
      <option value="">{first === undefined || first.startsWith('#') ? 'first' : `first: ${first}`}</option>
      {sites.slice(chosen === first ? 0 : 1).map(({ key }) => (
        <option key={key} value={key}>
          {key}
        </option>
      ))}
      {!isKnown && <option value={value}>{value} (not there)</option>}
    </select>
  );
}

const swapped = (entries: readonly LayoutEntry[], i: number, j: number): LayoutEntry[] =>
  entries.with(i, entries[j]!).with(j, entries[i]!);

function freeName(names: readonly string[]): string {
  for (let n = 1; ; n++) {
    const name = `Layout ${n}`;
    if (!names.some(taken => taken.toLowerCase() === name.toLowerCase())) return name;
  }
}
