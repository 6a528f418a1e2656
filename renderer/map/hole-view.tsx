import L from 'leaflet';
import { memo, useEffect, useMemo, useRef } from 'react';
import { Circle, MapContainer, Marker, Polygon, Polyline, Tooltip, useMap, useMapEvents } from 'react-leaflet';
import type { PlainHoleMap } from '../../backend/api/contract/hole-map.ts';
import type { LocalPoint, LocalPolygon } from '../../core/geometry/hole-map.ts';
import type { ShotDrawing } from '../../core/strategy/hole-drawing.ts';
import { HoleBaseMap } from '../base-map/hole-base-map.tsx';
import { type HoleAxes, holeAxes } from '../frame/hole-axes.ts';
import { keyed } from '../frame/keyed.ts';
import { percent } from '../words/percent.ts';
import { ellipseRing } from './ellipse-ring.ts';
import { NorthMark, WindMark } from './map-marks.tsx';

type HoleViewProps = Readonly<{
  map: PlainHoleMap;
  drawing: ShotDrawing | null;
  other: ShotDrawing | null;
  aimBearing_deg: number | null;
  /** The map now shows this stretch along the hole. */
  onRange: (range: readonly [from_m: number, to_m: number]) => void;
  /** The aim has been dragged to this true bearing; null while nothing is planned. */
  onAim: ((bearing_deg: number) => void) | null;
  onAimSettled: () => void;
  wind: Readonly<{ speed_mps: number; from_deg: number }>;
  /** "4.0 m/s". */
  windText: string;
  isStale: boolean;
}>;

/** The hole laid on its side, tee left, basket right, on the same scale as the side view under it. No network is needed. */
export const HoleView = memo(function HoleView(props: HoleViewProps) {
  const { map, drawing, other, aimBearing_deg, onRange, onAim, onAimSettled, wind, windText, isStale } = props;
  const axes = useMemo(() => holeAxes(map.basket), [map]);
  const place = useMemo(() => placer(axes), [axes]);
  return (
    <div className="hole-view" data-stale={isStale || undefined}>
      <MapContainer
        crs={L.CRS.Simple}
        center={[0, 0]}
        zoom={1}
        zoomSnap={0}
        zoomDelta={0.5}
        minZoom={-2}
        maxZoom={6}
        attributionControl={false}
        zoomControl={false}
        preferCanvas={false}
        className="hole-map"
      >
        <FitHole map={map} axes={axes} drawing={drawing} />
        <ReportRange onRange={onRange} />
        <HoleBaseMap map={map} axes={axes} />
        <Ground map={map} place={place} />
        <Obstacles map={map} place={place} />
        <Line className="map-line-of-play" points={map.line} place={place} />
        {other !== null && <ShotMarks drawing={other} place={place} kind="other" />}
        {drawing !== null && <ShotMarks drawing={drawing} place={place} kind="chosen" />}
        {aimBearing_deg !== null && onAim !== null && (
          <Aim
            bearing_deg={aimBearing_deg}
            reach_m={aimReach_m(Math.hypot(...map.basket), aimBearing_deg - axes.bearing_deg)}
            axes={axes}
            place={place}
            onAim={onAim}
            onAimSettled={onAimSettled}
          />
        )}
        <Marker position={place([0, 0])} icon={icon('tee')} keyboard={false} interactive={false} />
        {map.otherTees.map(tee => (
          <Marker
            key={tee.join()}
            position={place(tee)}
            icon={icon('tee other')}
            keyboard={false}
            interactive={false}
          />
        ))}
        <Marker position={place(map.basket)} icon={icon('basket')} keyboard={false} interactive={false} />
      </MapContainer>
      <NorthMark bearing_deg={axes.bearing_deg} />
      {wind.speed_mps > 0 && <WindMark from_deg={wind.from_deg} bearing_deg={axes.bearing_deg} text={windText} />}
    </div>
  );
});

export type Place = (point: LocalPoint) => L.LatLngTuple;
/** Leaflet's plane: latitude is metres to the thrower's left, longitude metres along the hole. */
export const placer =
  (axes: HoleAxes): Place =>
  point => {
    const [along, left] = axes.toHole(point);
    return [left, along];
  };
const rings = (polygons: readonly LocalPolygon[], place: Place) =>
  polygons.map(polygon => polygon.map(ring => ring.map(place)));
const icons = new Map<string, L.DivIcon>();
/** Each kind of mark once: another icon object would make Leaflet rebuild the mark, in the middle of a drag too. */
export function icon(name: string): L.DivIcon {
  const className = `mark ${name
    .split(' ')
    .map(part => `mark-${part}`)
    .join(' ')}`;
  const made = icons.get(name) ?? L.divIcon({ className, iconSize: [22, 22] });
  icons.set(name, made);
  return made;
}

/** Frames the hole and where the disc may come to rest; again for another hole, but not while a throw changes. */
function FitHole({ map, axes, drawing }: Readonly<{ map: PlainHoleMap; axes: HoleAxes; drawing: ShotDrawing | null }>) {
  const leaflet = useMap();
  const newest = useRef(drawing);
  newest.current = drawing;
  const isDrawn = drawing !== null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: framed anew when the first drawing of a hole comes, not for each later one
  useEffect(() => {
    const frame = () => {
      leaflet.invalidateSize({ animate: false });
      const across = map.line.map(point => axes.toHole(point));
      const bounds = L.latLngBounds(across.map(([along, left]) => [left, along]));
      const length = Math.hypot(...map.basket);
      bounds.extend([-length * 0.1, -length * 0.04]).extend([length * 0.1, length * 1.1]);
      for (const ellipse of newest.current?.spread ?? [])
        for (const point of ellipseRing(ellipse)) {
          const [along, left] = axes.toHole(point);
          bounds.extend([left, along]);
        }
      leaflet.fitBounds(bounds, { animate: false, padding: [4, 4] });
    };
    frame();
    const observer = new ResizeObserver(frame);
    observer.observe(leaflet.getContainer());
    return () => observer.disconnect();
  }, [leaflet, map, axes, isDrawn]);
  return null;
}

function ReportRange({ onRange }: Pick<HoleViewProps, 'onRange'>) {
  const leaflet = useMap();
  const report = () => {
    const { x } = leaflet.getSize();
    onRange([leaflet.containerPointToLatLng([0, 0]).lng, leaflet.containerPointToLatLng([x, 0]).lng]);
  };
  // The hole may be framed before this listens; framed again to no change, Leaflet says `moveend` alone.
  useMapEvents({ move: report, zoom: report, resize: report, moveend: report });
  return null;
}

export const Ground = memo(function Ground({ map, place }: Readonly<{ map: PlainHoleMap; place: Place }>) {
  return (
    <>
      {keyed(map.fairways).map(({ key, item: area }) => (
        <Polygon key={key} positions={rings(area.polygons, place)} className="map-fairway" interactive={false} />
      ))}
      {keyed(map.islands).map(({ key, item: area }) => (
        <Polygon key={key} positions={rings(area.polygons, place)} className="map-island" interactive={false} />
      ))}
      {keyed(map.hazards).map(({ key, item: area }) => (
        <Polygon
          key={key}
          positions={rings(area.polygons, place)}
          className="map-hazard"
          fillColor="url(#hatch-hazard)"
        >
          <Tooltip sticky>{area.name ?? 'hazard'}</Tooltip>
        </Polygon>
      ))}
      {keyed(map.outOfBounds).map(({ key, item: area }) => {
        const isWater = area.what === 'water';
        return (
          <Polygon
            key={key}
            positions={rings(area.polygons, place)}
            className={isWater ? 'map-water' : 'map-out'}
            fillColor={isWater ? 'url(#hatch-water)' : 'url(#hatch-out)'}
          >
            <Tooltip sticky>{[area.name, area.what ?? 'out-of-bounds'].filter(Boolean).join(', ')}</Tooltip>
          </Polygon>
        );
      })}
      {keyed(map.people.flatMap(({ what, lines }) => lines.map(points => ({ what, points })))).map(
        ({ key, item: { what, points } }) => (
          <Polyline key={key} positions={points.map(place)} className="map-people">
            <Tooltip sticky>{`People: ${what}`}</Tooltip>
          </Polyline>
        ),
      )}
    </>
  );
});

export const Obstacles = memo(function Obstacles({ map, place }: Readonly<{ map: PlainHoleMap; place: Place }>) {
  return (
    <>
      {keyed(map.covers).map(({ key, item: cover }) => (
        <Polygon
          key={key}
          positions={rings(cover.polygons, place)}
          className={`map-cover map-${cover.form}`}
          interactive={false}
        />
      ))}
      {keyed(map.lostGrounds).map(({ key, item: area }) => (
        <Polygon key={key} positions={rings(area.polygons, place)} className="map-lost" fillColor="url(#hatch-lost)">
          <Tooltip sticky>
            {`${area.name ?? 'Rough'}: ${percent(area.share)} of the discs that come to rest here are not found`}
          </Tooltip>
        </Polygon>
      ))}
      {keyed(map.trees).map(({ key, item: tree }) => (
        <Circle
          key={key}
          center={place(tree.at)}
          radius={tree.crownRadius_m}
          className="map-tree"
          interactive={false}
        />
      ))}
      {keyed(map.ceilings).map(({ key, item: ceiling }) => (
        <Polygon
          key={key}
          positions={rings(ceiling.polygons, place)}
          className="map-ceiling"
          fillColor="url(#hatch-ceiling)"
          interactive={false}
        />
      ))}
      {keyed(map.gaps).map(({ key, item: gap }) => (
        <Polyline key={key} positions={gap.posts.map(place)} className="map-gap" interactive={false} />
      ))}
      {keyed(map.mandos).map(({ key, item: mando }) => (
        <Polyline key={key} positions={mando.line.map(place)} className="map-mando">
          <Tooltip sticky>{`Mando: pass ${mando.side}`}</Tooltip>
        </Polyline>
      ))}
      {keyed(map.dropZones).map(({ key, item: zone }) => (
        <Marker key={key} position={place(zone.at)} icon={icon('drop')} keyboard={false} interactive={false} />
      ))}
    </>
  );
});

function Line({
  points,
  place,
  className,
}: Readonly<{ points: readonly LocalPoint[]; place: Place; className: string }>) {
  return <Polyline positions={points.map(place)} className={className} interactive={false} />;
}

function ShotMarks({
  drawing,
  place,
  kind,
}: Readonly<{ drawing: ShotDrawing; place: Place; kind: 'chosen' | 'other' }>) {
  return (
    <>
      {[...drawing.spread]
        .sort((a, b) => b.share - a.share)
        .map(ellipse => (
          <Polygon
            key={ellipse.share}
            positions={ellipseRing(ellipse).map(place)}
            className={`map-spread-${ellipse.share > 0.7 ? 'wide' : 'half'} map-${kind}`}
            smoothFactor={0}
            interactive={false}
          />
        ))}
      <Polyline
        smoothFactor={0}
        positions={drawing.path.map(([e, n]) => place([e, n]))}
        className={`map-flight map-${kind}`}
        interactive={false}
      />
    </>
  );
}

type AimProps = Readonly<{
  bearing_deg: number;
  reach_m: number;
  axes: HoleAxes;
  place: Place;
  onAim: (bearing_deg: number) => void;
  onAimSettled: () => void;
}>;

/** How far out the handle sits: near the basket, but not so far aside that it leaves the map. */
function aimReach_m(length_m: number, off_deg: number): number {
  const aside = Math.abs(Math.sin((off_deg * Math.PI) / 180));
  return length_m * Math.max(0.25, Math.min(0.88, aside === 0 ? 1 : 0.12 / aside));
}

/** A handle on the aim; the keyboard turns the aim with the buttons under the map. */
function Aim({ bearing_deg, reach_m, axes, place, onAim, onAimSettled }: AimProps) {
  const handle = useRef<L.Marker>(null);
  const angle = (bearing_deg * Math.PI) / 180;
  const end: LocalPoint = [reach_m * Math.sin(angle), reach_m * Math.cos(angle)];
  return (
    <>
      <Polyline positions={[place([0, 0]), place(end)]} className="map-aim" interactive={false} />
      <Marker
        ref={handle}
        position={place(end)}
        icon={icon('aim')}
        draggable
        keyboard={false}
        alt=""
        eventHandlers={{
          drag: () => {
            const at = handle.current!.getLatLng();
            const [east, north] = axes.toLocal([at.lng, at.lat]);
            onAim(((Math.atan2(east, north) * 180) / Math.PI + 360) % 360);
          },
          dragend: onAimSettled,
        }}
      >
        <Tooltip direction="top">Drag to aim elsewhere</Tooltip>
      </Marker>
    </>
  );
}
