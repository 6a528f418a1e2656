import type { Feature, Geometry } from 'geojson';
import type L from 'leaflet';
import { Circle, GeoJSON, Polyline } from 'react-leaflet';
import type { Output } from '../../backend/api/contract/api.ts';
import { keyed } from '../frame/keyed.ts';

type MapData = Output<'getCourseMap'>;
const latLng = ([lon, lat]: readonly [number, number]): L.LatLngTuple => [lat, lon];

/** What the course map shows around a practice field, to find one's place by; nothing in it can be tapped. */
export function FieldGround({ map }: Readonly<{ map: MapData }>) {
  return (
    <>
      {keyed(map.objects).map(({ key, item: { kind, what, geometry, width_m } }) =>
        geometry.type === 'Point' ? (
          <Circle
            key={key}
            center={latLng(geometry.coordinates as [number, number])}
            radius={Math.max(1, (width_m ?? 2) / 2)}
            className={`map-${kind}`}
            interactive={false}
          />
        ) : (
          <GeoJSON
            key={key}
            data={asFeature(geometry)}
            interactive={false}
            style={{
              className: `map-${kind === 'outOfBounds' ? (what === 'water' ? 'water' : 'out') : kind}${geometry.type.endsWith('LineString') ? ' map-strip' : ''}`,
            }}
          />
        ),
      )}
      {map.holes.map(hole => (
        <Polyline key={hole.ref} positions={hole.line.map(latLng)} className="map-line-of-play" interactive={false} />
      ))}
    </>
  );
}

const asFeature = (geometry: MapData['objects'][number]['geometry']): Feature => ({
  type: 'Feature',
  properties: {},
  geometry: geometry as unknown as Geometry,
});
