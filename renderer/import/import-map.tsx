import L from 'leaflet';
import { useEffect, useMemo } from 'react';
import { CircleMarker, MapContainer, Tooltip, useMap } from 'react-leaflet';
import { ROLE_WORDS } from '../../core/course/import/role.ts';
import { CourseMap } from '../course/course-map.tsx';
import type { Reading, Report } from './use-course-file.ts';

/** The course it would make; until it makes one, the places of the file. */
export function ImportMap({ reading }: Readonly<{ reading: Reading }>) {
  const { map, report } = reading;
  if (map !== null)
    return (
      <div className="import-map">
        <CourseMap map={map} />
      </div>
    );
  if (report.items.length === 0)
    return <p className="import-map empty-state">The map shows as soon as the file makes a course.</p>;
  return <PlacesMap items={report.items} />;
}

function PlacesMap({ items }: Readonly<{ items: Report['items'] }>) {
  const places = useMemo(() => items.map(({ place: [lon, lat] }): L.LatLngTuple => [lat, lon]), [items]);
  return (
    <div className="import-map">
      <section className="course-map" aria-label="Places of the file">
        <MapContainer bounds={L.latLngBounds(places)} zoomSnap={0} attributionControl={false} className="hole-map">
          <FitPlaces places={places} />
          {items.map(({ index, name, chosen }, i) => (
            <CircleMarker key={index} center={places[i]!} radius={6} className="map-place">
              <Tooltip>
                {name === '' ? `place ${index + 1}` : name}: {ROLE_WORDS[chosen.role]}
                {chosen.ref === undefined ? '' : ` ${chosen.ref}`}
              </Tooltip>
            </CircleMarker>
          ))}
        </MapContainer>
      </section>
      <p className="soft">These are the places of the file. The course shows once tees and baskets fit together.</p>
    </div>
  );
}

function FitPlaces({ places }: Readonly<{ places: readonly L.LatLngTuple[] }>) {
  const leaflet = useMap();
  useEffect(() => {
    const frame = () => {
      leaflet.invalidateSize({ animate: false });
      leaflet.fitBounds(L.latLngBounds([...places]), { animate: false, padding: [24, 24], maxZoom: 19 });
    };
    frame();
    const observer = new ResizeObserver(frame);
    observer.observe(leaflet.getContainer());
    return () => observer.disconnect();
  }, [leaflet, places]);
  return null;
}
