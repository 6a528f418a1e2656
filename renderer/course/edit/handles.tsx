import L from 'leaflet';
import { Marker } from 'react-leaflet';
import { isArea, isPlain, verticesOf } from '../../../core/course/edit/vertices.ts';
import type { DrawMapProps } from './draw-map.tsx';
import { latLng } from './feature-shape.tsx';

const VERTEX = L.divIcon({ className: 'mark mark-vertex', iconSize: [16, 16] });
const CHOSEN = L.divIcon({ className: 'mark mark-vertex is-chosen', iconSize: [20, 20] });
const BETWEEN = L.divIcon({ className: 'mark mark-between', iconSize: [12, 12] });
const WHOLE = L.divIcon({ className: 'mark mark-whole', iconSize: [22, 22] });

const position = (at: L.LatLng) => [at.wrap().lng, at.lat];

/** Points to drag of the chosen thing, points between them that become new ones, and a handle for the whole. */
export function Handles({ file, drawing }: Pick<DrawMapProps, 'file' | 'drawing'>) {
  const { editing, preview } = drawing;
  const geometry = preview ?? file.features[editing.chosen!]?.geometry ?? null;
  if (!isPlain(geometry)) return null;
  const vertices = verticesOf(geometry);
  const isLine = geometry.type !== 'Point' && geometry.type !== 'MultiPoint';
  const between = isLine
    ? vertices.flatMap(({ path, position: at }, i) => {
        const run = path.slice(0, -1).join();
        const next =
          vertices[i + 1]?.path.slice(0, -1).join() === run
            ? vertices[i + 1]
            : isArea(geometry)
              ? vertices[i - path.at(-1)!]
              : undefined;
        if (next === undefined) return [];
        return [{ after: i, at: [(at[0]! + next.position[0]!) / 2, (at[1]! + next.position[1]!) / 2] }];
      })
    : [];
  const middle = vertices.reduce(
    ([lon, lat], { position: at }) => [lon! + at[0]! / vertices.length, lat! + at[1]! / vertices.length],
    [0, 0],
  );
  return (
    <>
      {vertices.map(({ path, position: at }, i) => (
        <Marker
          key={path.join('.')}
          position={latLng(at)}
          icon={i === editing.vertex ? CHOSEN : VERTEX}
          draggable
          keyboard={false}
          zIndexOffset={1000}
          eventHandlers={{
            click: () => drawing.chooseVertex(i),
            drag: event => drawing.pickUp(i, position((event.target as L.Marker).getLatLng())),
            dragend: event => drawing.putDown(position((event.target as L.Marker).getLatLng())),
          }}
        />
      ))}
      {preview === null &&
        between.map(({ after, at }) => (
          <Marker
            key={after}
            position={latLng(at)}
            icon={BETWEEN}
            keyboard={false}
            zIndexOffset={900}
            eventHandlers={{ click: () => drawing.insert(after, at) }}
          />
        ))}
      {isLine && (
        <Marker
          position={latLng(middle)}
          icon={WHOLE}
          draggable
          keyboard={false}
          zIndexOffset={800}
          eventHandlers={{
            drag: event => drawing.pickUp(null, position((event.target as L.Marker).getLatLng()), middle),
            dragend: event => drawing.putDown(position((event.target as L.Marker).getLatLng())),
          }}
        />
      )}
    </>
  );
}
