import L from 'leaflet';
import { TileLayer } from 'react-leaflet';
import { MapCredit } from './map-credit.tsx';
import { useBaseMap } from './use-base-map.ts';

/** Pictures under a map in degrees, and whose they are. */
export function BaseMapLayer() {
  const map = useBaseMap();
  if (map === null) return null;
  const { address, minZoom, maxZoom, bounds, attribution } = map;
  return (
    <>
      <TileLayer
        key={address}
        url={address}
        minNativeZoom={minZoom}
        maxNativeZoom={maxZoom}
        maxZoom={24}
        className="base-map"
        {...(bounds && {
          bounds: L.latLngBounds([bounds[1], bounds[0]], [bounds[3], bounds[2]]),
        })}
      />
      <MapCredit text={attribution} />
    </>
  );
}
