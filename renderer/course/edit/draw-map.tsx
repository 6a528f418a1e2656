import type { FeatureCollection, Position } from 'geojson';
import L from 'leaflet';
import { type KeyboardEvent, useCallback, useEffect, useRef } from 'react';
import { MapContainer, Marker, Polygon, Polyline, useMap, useMapEvents } from 'react-leaflet';
import { shiftPosition } from '../../../core/course/edit/shift-position.ts';
import { verticesOf } from '../../../core/course/edit/vertices.ts';
import { BaseMapLayer } from '../../base-map/base-map-layer.tsx';
import { keyed } from '../../frame/keyed.ts';
import { FeatureShape, latLng } from './feature-shape.tsx';
import { Handles } from './handles.tsx';
import { mapKey } from './map-keys.ts';
import type { Drawing } from './use-drawing.ts';

export type DrawMapProps = Readonly<{
  file: FeatureCollection;
  drawing: Drawing;
  /** Words on where the cross is; read out while keys move it. */
  describedBy: string;
  /** Framed when its name changes. */
  frame: Readonly<{ name: string; positions: readonly Position[] }>;
}>;

const position = (at: L.LatLng): Position => [at.wrap().lng, at.lat];

/** The ground to draw on, north up, by pointer or by keyboard. No network is needed. */
export function DrawMap({ file, drawing, describedBy, frame }: DrawMapProps) {
  const { editing, preview } = drawing;
  const newest = useRef(drawing);
  newest.current = drawing;
  // One function for good, so that what stays the same is not drawn again.
  const choose = useCallback((index: number, event: L.LeafletMouseEvent) => {
    if (newest.current.editing.tool !== null) return;
    L.DomEvent.stopPropagation(event);
    newest.current.choose(index, position(event.latlng));
  }, []);
  const map = useRef<L.Map>(null);
  const keyDown = (event: KeyboardEvent) => {
    const key = mapKey(event);
    if (key === null) return;
    event.preventDefault();
    event.stopPropagation();
    if (key.does !== 'zoom') return drawing.press(key);
    const leaflet = map.current;
    if (leaflet !== null)
      leaflet.setZoomAround(latLng(editing.cross), leaflet.getZoom() + key.by / 2, { animate: false });
  };
  return (
    <div
      className="draw-map"
      role="application"
      aria-label="Drawing ground"
      aria-describedby={describedBy}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the map is worked by keys of its own, said in words beside it
      tabIndex={0}
      onKeyDown={keyDown}
    >
      <MapContainer
        ref={map}
        center={latLng(editing.cross)}
        zoom={18}
        zoomSnap={0}
        zoomDelta={0.5}
        maxZoom={24}
        keyboard={false}
        doubleClickZoom={false}
        attributionControl={false}
        className="hole-map"
      >
        <Frame {...frame} />
        <Pointer {...drawing} />
        <KeepInSight at={editing.cross} />
        <BaseMapLayer />
        {file.features.map((feature, index) => (
          <FeatureShape
            // biome-ignore lint/suspicious/noArrayIndexKey: a thing of a course file is known by its place in it
            key={index}
            feature={index === editing.chosen && preview !== null ? { ...feature, geometry: preview } : feature}
            index={index}
            isChosen={index === editing.chosen}
            onChoose={choose}
          />
        ))}
        <Sketch {...drawing} />
        {editing.tool === null && editing.chosen !== null && <Handles file={file} drawing={drawing} />}
        <Cross {...drawing} />
      </MapContainer>
    </div>
  );
}

/** Shows what is asked for, when it changes and when the map's place on the screen does. */
function Frame({ name, positions }: DrawMapProps['frame']) {
  const leaflet = useMap();
  const newest = useRef(positions);
  newest.current = positions;
  // biome-ignore lint/correctness/useExhaustiveDependencies: framed for another name, not for each edit
  useEffect(() => {
    leaflet.invalidateSize({ animate: false });
    if (newest.current.length === 0) return;
    const bounds = L.latLngBounds(newest.current.map(latLng));
    leaflet.fitBounds(bounds, { animate: false, padding: [40, 40], maxZoom: 20 });
  }, [leaflet, name]);
  useEffect(() => {
    const observer = new ResizeObserver(() => leaflet.invalidateSize({ animate: false }));
    observer.observe(leaflet.getContainer());
    return () => observer.disconnect();
  }, [leaflet]);
  return null;
}

function Pointer({ editing, moveCross, place, finish }: Drawing) {
  useMapEvents({
    mousemove: event => {
      if (editing.tool !== null) moveCross(position(event.latlng));
    },
    click: event => place(position(event.latlng)),
    dblclick: () => {
      if (editing.tool !== null) finish();
    },
  });
  return null;
}

/** The cross never leaves the window. */
function KeepInSight({ at }: Readonly<{ at: Position }>) {
  const leaflet = useMap();
  useEffect(() => {
    leaflet.panInside(latLng(at), { padding: [30, 30], animate: false });
  }, [leaflet, at]);
  return null;
}

/** The shape in the making, drawn on to the cross. */
function Sketch({ editing: { tool }, aim }: Drawing) {
  if (tool === null || tool.shape === 'Point') return null;
  const points = [...tool.points, aim.position].map(latLng);
  return (
    <>
      {tool.shape === 'Polygon' && points.length > 2 ? (
        <Polygon positions={points} className="sketch-area" interactive={false} />
      ) : (
        <Polyline positions={points} className="sketch-line" interactive={false} />
      )}
      {keyed(tool.points).map(({ key, item }) => (
        <Marker key={key} position={latLng(item)} icon={POINT} keyboard={false} interactive={false} />
      ))}
    </>
  );
}

function Cross({ editing, aim }: Drawing) {
  return (
    <>
      <Marker position={latLng(editing.cross)} icon={CROSS} keyboard={false} interactive={false} zIndexOffset={2000} />
      {aim.held !== null && (
        <Marker position={latLng(aim.position)} icon={HOLD} keyboard={false} interactive={false} zIndexOffset={1900} />
      )}
    </>
  );
}

const POINT = L.divIcon({ className: 'mark mark-vertex', iconSize: [14, 14] });
const CROSS = L.divIcon({ className: 'mark mark-cross', iconSize: [28, 28] });
const HOLD = L.divIcon({ className: 'mark mark-hold', iconSize: [26, 26] });

/** The ground a thing takes up, with room to see round it. */
export function around(file: FeatureCollection, indexes: readonly number[], margin_m: number): Position[] {
  return indexes.flatMap(index =>
    verticesOf(file.features[index]?.geometry ?? null).flatMap(({ position: at }) => [
      shiftPosition(at, -margin_m, -margin_m),
      shiftPosition(at, margin_m, margin_m),
    ]),
  );
}
