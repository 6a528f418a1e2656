import type { FeatureCollection } from 'geojson';
import { memo, useState } from 'react';
import { ListBox, ListBoxItem } from 'react-aria-components';
import { layoutHolesOf } from '../../../core/course/edit/edit-layouts.ts';
import { tagOf } from '../../../core/course/edit/edit-tags.ts';
import { refKey, refKeys } from '../../../core/course/hole-ref.ts';
import { thingWords } from './thing-words.ts';

/** More would only slow the hand; a word in the search field finds the rest. */
const MOST_SHOWN = 200;

type ThingListProps = Readonly<{
  file: FeatureCollection;
  chosen: number | null;
  /** The hole at work: its own things come first. */
  holeRef: string | null;
  /** Indexes of things that a problem names. */
  faulty: ReadonlySet<number>;
  onChoose: (index: number) => void;
}>;

/** Everything on the map by name, to choose from without a pointer. */
export const ThingList = memo(function ThingList({ file, chosen, holeRef, faulty, onChoose }: ThingListProps) {
  const [search, setSearch] = useState('');
  const things = file.features
    .map((feature, index) => ({ feature, index, words: thingWords(feature) }))
    .filter(({ feature }) => layoutHolesOf(feature) === undefined)
    .filter(({ words }) => words.toLowerCase().includes(search.trim().toLowerCase()));
  const isOfHole = ({ feature }: (typeof things)[number]) =>
    holeRef !== null && refKeys(tagOf(feature, 'ref')).includes(refKey(holeRef));
  const ordered = [...things.filter(isOfHole), ...things.filter(thing => !isOfHole(thing))];
  const shown = ordered.slice(0, MOST_SHOWN);
  const more = ordered.length - shown.length;
  return (
    <section className="thing-list" aria-label="Things on the map">
      <label className="plain-field">
        <span>Find</span>
        <input type="text" value={search} onChange={event => setSearch(event.target.value)} />
      </label>
      {file.features.length === 0 ? (
        <p className="soft">Nothing is drawn yet. Begin with a tee and a basket, then the line of play between them.</p>
      ) : (
        <ListBox
          aria-label="Things on the map"
          className="thing-box"
          selectionMode="single"
          selectedKeys={chosen === null ? [] : [chosen]}
          onSelectionChange={keys => {
            const [index] = keys as Set<number>;
            if (index !== undefined) onChoose(index);
          }}
        >
          {shown.map(({ index, words }) => (
            <ListBoxItem key={index} id={index} textValue={words} className="thing-item">
              {words}
              {faulty.has(index) && <span className="care-word"> to mend</span>}
            </ListBoxItem>
          ))}
        </ListBox>
      )}
      {more > 0 && <p className="soft">and {more} more: find them by a word.</p>}
    </section>
  );
});
