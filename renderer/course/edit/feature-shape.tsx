import type { Feature, Geometry, Position } from 'geojson';
import L from 'leaflet';
import { memo } from 'react';
import { Circle, GeoJSON, Marker, Tooltip } from 'react-leaflet';
import { treeDefaults } from '../../../core/course/defaults.ts';
import { tagOf } from '../../../core/course/edit/edit-tags.ts';
import { type FeatureKind, kindOf } from '../../../core/course/edit/kinds.ts';
import { parseOsmLength } from '../../../core/course/osm-length.ts';
import { thingWords } from './thing-words.ts';

export const latLng = (position: Position): L.LatLngTuple => [position[1]!, position[0]!];

const CLASS: Partial<Record<FeatureKind, string>> = {
  line: 'map-line-of-play edit-line',
  fairway: 'map-fairway',
  outOfBounds: 'map-out',
  water: 'map-water',
  hazard: 'map-hazard',
  island: 'map-island',
  rough: 'map-lost',
  mando: 'map-mando',
  tree: 'map-tree',
  wood: 'map-cover',
  treeRow: 'map-cover map-strip edit-row',
  hedge: 'map-cover edit-row',
  ceiling: 'map-ceiling',
  gap: 'map-gap',
  path: 'map-people',
  dropZone: 'map-dropZone',
};
const HATCH: Partial<Record<FeatureKind, string>> = {
  outOfBounds: 'url(#hatch-out)',
  water: 'url(#hatch-water)',
  hazard: 'url(#hatch-hazard)',
  ceiling: 'url(#hatch-ceiling)',
  rough: 'url(#hatch-lost)',
};

/** Points that are marks, whatever the map's scale. */
const MARKED: ReadonlyMap<FeatureKind, string> = new Map([
  ['tee', 'mark-tee'],
  ['basket', 'mark-basket'],
  ['dropZone', 'mark-drop'],
  ['mando', 'edit-mando'],
]);
const ARROWS: Readonly<Record<string, string>> = { left: '←', right: '→', above: '↑', below: '↓' };

type FeatureShapeProps = Readonly<{
  feature: Feature;
  index: number;
  isChosen: boolean;
  onChoose: (index: number, event: L.LeafletMouseEvent) => void;
}>;

/** One thing of the map as it is drawn; not drawn again while it stays the same. */
export const FeatureShape = memo(function FeatureShape({ feature, index, isChosen, onChoose }: FeatureShapeProps) {
  const geometry = feature.geometry as Geometry | null;
  if (geometry === null) return null;
  const kind = kindOf(feature);
  const events = { click: (event: L.LeafletMouseEvent) => onChoose(index, event) };
  const words = <Tooltip sticky>{thingWords(feature)}</Tooltip>;
  if (geometry.type === 'Point' && kind !== undefined && MARKED.has(kind))
    return (
      <Marker
        position={latLng(geometry.coordinates)}
        icon={markOf(kind, feature, isChosen)}
        keyboard={false}
        eventHandlers={events}
      >
        {words}
      </Marker>
    );
  const className = `${(kind && CLASS[kind]) ?? otherClass(feature)}${isChosen ? ' is-chosen' : ''}`;
  if (geometry.type === 'Point')
    return (
      <Circle
        key={className}
        center={latLng(geometry.coordinates)}
        radius={radius_m(feature, kind)}
        className={className}
        eventHandlers={events}
      >
        {words}
      </Circle>
    );
  return (
    <GeoJSON
      // Leaflet draws a GeoJSON layer once: another shape is another layer.
      key={`${className} ${JSON.stringify(geometry)}`}
      data={feature}
      style={{ className, ...(kind && HATCH[kind] && { fillColor: HATCH[kind] }) }}
      pointToLayer={(_, at) => L.circle(at, { radius: 1 })}
      eventHandlers={events}
    >
      {words}
    </GeoJSON>
  );
});

/** Things that come with a file and are not drawn here look as they do on the other maps. */
function otherClass(feature: Feature): string {
  const has = (key: string) => tagOf(feature, key) !== undefined;
  if (has('building')) return 'map-cover map-building';
  if (has('barrier')) return 'map-cover map-wall edit-row';
  if (tagOf(feature, 'natural') === 'scrub' || tagOf(feature, 'landuse') === 'forest') return 'map-cover';
  if (has('highway')) return 'map-people';
  if (has('waterway')) return 'map-water map-strip';
  return 'map-other';
}

const icons = new Map<string, L.DivIcon>();

/** Each look once: another icon object would make Leaflet rebuild the mark. */
function markOf(kind: FeatureKind, feature: Feature, isChosen: boolean): L.DivIcon {
  const text = kind === 'mando' ? (ARROWS[tagOf(feature, 'mando') ?? ''] ?? '?') : (tagOf(feature, 'ref') ?? '');
  const key = JSON.stringify([kind, text, isChosen]);
  const known = icons.get(key);
  if (known !== undefined) return known;
  const label = document.createElement('span');
  if (kind !== 'mando') label.className = 'site-ref';
  label.textContent = text;
  const made = L.divIcon({
    className: `mark ${MARKED.get(kind)} edit-site${isChosen ? ' is-chosen' : ''}`,
    html: label,
    iconSize: [22, 22],
  });
  icons.set(key, made);
  return made;
}

/** As wide as the crown, or as the reader assumes one. */
function radius_m(feature: Feature, kind: FeatureKind | undefined): number {
  if (kind !== 'tree') return 1;
  const crown = lengthOf(feature, 'diameter_crown');
  const height = lengthOf(feature, 'height');
  return Math.max(0.3, (crown ?? (height ?? treeDefaults.height_m) * treeDefaults.crownPerHeight) / 2);
}

function lengthOf(feature: Feature, key: string): number | undefined {
  const text = tagOf(feature, key);
  const read = text === undefined ? undefined : parseOsmLength(text);
  return read?.ok ? read.length_m : undefined;
}
