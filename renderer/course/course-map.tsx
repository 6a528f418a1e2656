import type { Feature, Geometry } from 'geojson';
import L from 'leaflet';
import { type ReactNode, useEffect } from 'react';
import { Circle, GeoJSON, MapContainer, Marker, Polyline, Tooltip, useMap } from 'react-leaflet';
import type { Output } from '../../backend/api/contract/api.ts';
import { BaseMapLayer } from '../base-map/base-map-layer.tsx';
import { keyed } from '../frame/keyed.ts';

type MapData = Output<'getCourseMap'>;
type MapObject = MapData['objects'][number];

const HATCH: Partial<Record<MapObject['kind'], string>> = {
  outOfBounds: 'url(#hatch-out)',
  hazard: 'url(#hatch-hazard)',
  ceiling: 'url(#hatch-ceiling)',
  lostGround: 'url(#hatch-lost)',
};
const latLng = ([lon, lat]: readonly [number, number]): L.LatLngTuple => [lat, lon];

/** The whole course, north up, drawn from its file alone: no network. */
export function CourseMap({ map, children }: Readonly<{ map: MapData; children?: ReactNode }>) {
  return (
    <section className="course-map" aria-label="Map of the course">
      <MapContainer bounds={boundsOf(map)} zoomSnap={0} attributionControl={false} className="hole-map">
        <FitCourse map={map} />
        <BaseMapLayer />
        {keyed(map.objects).map(({ key, item: object }) => (
          <CourseObject key={key} object={object} />
        ))}
        {map.holes.map(hole => (
          <Polyline key={hole.ref} positions={hole.line.map(latLng)} className="map-line-of-play" interactive={false} />
        ))}
        {map.holes.map(hole => (
          <Marker
            key={hole.ref}
            position={latLng(hole.line[0]!)}
            icon={L.divIcon({ className: 'mark mark-number', html: numberOf(hole.ref), iconSize: [22, 22] })}
            keyboard={false}
            interactive={false}
          />
        ))}
        {map.holes.flatMap(hole =>
          hole.baskets.map(basket => (
            <Marker
              key={`${hole.ref} ${basket.join()}`}
              position={latLng(basket)}
              icon={L.divIcon({ className: 'mark mark-basket', iconSize: [18, 18] })}
              keyboard={false}
              interactive={false}
            />
          )),
        )}
        {children}
      </MapContainer>
    </section>
  );
}

/** As an element, so that a ref is never read as HTML. */
function numberOf(ref: string): HTMLElement {
  const span = document.createElement('span');
  span.textContent = ref;
  return span;
}

const boundsOf = ({ bounds }: MapData) => L.latLngBounds(latLng(bounds.southWest), latLng(bounds.northEast));

function FitCourse({ map }: Readonly<{ map: MapData }>) {
  const leaflet = useMap();
  useEffect(() => {
    const frame = () => {
      leaflet.invalidateSize({ animate: false });
      leaflet.fitBounds(boundsOf(map), { animate: false, padding: [24, 24] });
    };
    frame();
    const observer = new ResizeObserver(frame);
    observer.observe(leaflet.getContainer());
    return () => observer.disconnect();
  }, [leaflet, map]);
  return null;
}

function CourseObject({ object }: Readonly<{ object: MapObject }>) {
  const { kind, geometry, width_m, what, name, facts } = object;
  const words = <Tooltip sticky>{[name, what, ...facts].filter(Boolean).join(', ')}</Tooltip>;
  if (geometry.type === 'Point') {
    const at = latLng(geometry.coordinates as [number, number]);
    return (
      <Circle center={at} radius={Math.max(1, (width_m ?? 2) / 2)} className={`map-${kind}`}>
        {words}
      </Circle>
    );
  }
  const isWater = kind === 'outOfBounds' && /water|pond|lake|stream|river|reservoir/i.test(what);
  const feature: Feature = { type: 'Feature', properties: {}, geometry: geometry as unknown as Geometry };
  return (
    <GeoJSON
      data={feature}
      style={{
        className: `map-${isWater ? 'water' : kind === 'outOfBounds' ? 'out' : kind === 'lostGround' ? 'lost' : kind}${geometry.type.endsWith('LineString') ? ' map-strip' : ''}`,
        fillColor: isWater ? 'url(#hatch-water)' : HATCH[kind],
      }}
    >
      {words}
    </GeoJSON>
  );
}
