import L from 'leaflet';
import { useEffect, useMemo } from 'react';
import { CircleMarker, MapContainer, Marker, Polyline, Tooltip, useMap, useMapEvents } from 'react-leaflet';
import type { PlainHoleMap } from '../../backend/api/contract/hole-map.ts';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import { type HoleAxes, holeAxes } from '../frame/hole-axes.ts';
import { keyed } from '../frame/keyed.ts';
import { Ground, icon, Obstacles, type Place, placer } from '../map/hole-view.tsx';
import { NorthMark } from '../map/map-marks.tsx';

/** One throw to draw: where it was made from, where it ended (null: in the basket), where play went on from. */
type DrawnThrow = Readonly<{
  number: number;
  from: LocalPoint;
  rest: LocalPoint | null;
  next: LocalPoint | null;
  holed: boolean;
  words: string;
}>;

type ReviewMapProps = Readonly<{
  map: PlainHoleMap;
  throws: readonly DrawnThrow[];
  /** A place chosen for the throw being entered. */
  marked?: LocalPoint | null;
  onTap?: (at: LocalPoint) => void;
}>;

/** The hole on its side, tee left, with the throws of a round; a tap says where a disc came to rest. */
export function ReviewMap({ map, throws, marked = null, onTap }: ReviewMapProps) {
  const axes = useMemo(() => holeAxes(map.basket), [map]);
  const place = useMemo(() => placer(axes), [axes]);
  return (
    <div className="hole-view review-map" data-tap={onTap === undefined ? undefined : true}>
      <MapContainer
        crs={L.CRS.Simple}
        center={[0, 0]}
        zoom={1}
        zoomSnap={0}
        minZoom={-2}
        maxZoom={6}
        attributionControl={false}
        zoomControl={false}
        className="hole-map"
      >
        <FitRound map={map} axes={axes} />
        {onTap !== undefined && <Taps axes={axes} onTap={onTap} />}
        <Ground map={map} place={place} />
        <Obstacles map={map} place={place} />
        <Polyline positions={map.line.map(place)} className="map-line-of-play" interactive={false} />
        {keyed(throws).map(({ key, item }) => (
          <ThrowMark key={key} drawn={item} basket={map.basket} place={place} />
        ))}
        <Marker position={place([0, 0])} icon={icon('tee')} keyboard={false} interactive={false} />
        <Marker position={place(map.basket)} icon={icon('basket')} keyboard={false} interactive={false} />
        {marked !== null && (
          <CircleMarker center={place(marked)} radius={8} className="map-marked-rest" interactive={false} />
        )}
      </MapContainer>
      <NorthMark bearing_deg={axes.bearing_deg} />
    </div>
  );
}

function ThrowMark({ drawn, basket, place }: Readonly<{ drawn: DrawnThrow; basket: LocalPoint; place: Place }>) {
  const { number, from, rest, next, holed, words } = drawn;
  const end = holed ? basket : (rest ?? next);
  if (end === null) return null;
  const isMoved = next !== null && rest !== null && Math.hypot(next[0] - rest[0], next[1] - rest[1]) > 0.5;
  return (
    <>
      <Polyline positions={[place(from), place(end)]} className="map-thrown" interactive={false} />
      {isMoved && <Polyline positions={[place(end), place(next)]} className="map-moved" interactive={false} />}
      {!holed && (
        <Marker position={place(end)} icon={numberIcon(number)} keyboard={false} title={`Throw ${number}`}>
          <Tooltip>{words}</Tooltip>
        </Marker>
      )}
    </>
  );
}

const numbers = new Map<number, L.DivIcon>();
function numberIcon(number: number): L.DivIcon {
  const made =
    numbers.get(number) ?? L.divIcon({ className: 'mark mark-number', html: String(number), iconSize: [20, 20] });
  numbers.set(number, made);
  return made;
}

function Taps({ axes, onTap }: Readonly<{ axes: HoleAxes; onTap: (at: LocalPoint) => void }>) {
  useMapEvents({ click: ({ latlng }) => onTap(axes.toLocal([latlng.lng, latlng.lat])) });
  return null;
}

function FitRound({ map, axes }: Readonly<{ map: PlainHoleMap; axes: HoleAxes }>) {
  const leaflet = useMap();
  useEffect(() => {
    const frame = () => {
      leaflet.invalidateSize({ animate: false });
      const across = map.line.map(point => axes.toHole(point));
      const bounds = L.latLngBounds(across.map(([along, left]) => [left, along]));
      const length = Math.hypot(...map.basket);
      bounds.extend([-length * 0.16, -length * 0.06]).extend([length * 0.16, length * 1.16]);
      leaflet.fitBounds(bounds, { animate: false, padding: [4, 4] });
    };
    frame();
    const observer = new ResizeObserver(frame);
    observer.observe(leaflet.getContainer());
    return () => observer.disconnect();
  }, [leaflet, map, axes]);
  return null;
}
