import L from 'leaflet';
import { useEffect, useRef, useState } from 'react';
import { Button, FieldError, Form, Input, Label, TextField } from 'react-aria-components';
import { MapContainer, Marker, Polyline, ScaleControl, useMap, useMapEvents } from 'react-leaflet';
import { bearing_deg as bearingBetween } from '../../core/geometry/bearing.ts';
import { localFrame, toLocal } from '../../core/geometry/local-frame.ts';
import { offsetFromLine, placeOnLine, type ThrowingLine } from '../../core/geometry/throwing-line.ts';
import { METERS_PER_FOOT } from '../../core/units/length.ts';
import { keyed } from '../frame/keyed.ts';
import type { Session } from '../state/fieldwork.ts';
import { useCourseMap } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { useUnits } from '../words/use-units.ts';
import { FieldGround } from './field-ground.tsx';
import { readPlace } from './read-place.ts';

type Place = readonly [lon: number, lat: number];
type Step = 'stand' | 'towards' | 'rest';
type TapMapProps = Readonly<{
  session: Session;
  onRest: (measured: Readonly<{ distance_m: number; side_m: number }>) => Promise<boolean>;
  onBearing: (bearing_deg: number) => Promise<unknown>;
}>;

const LINE_M = 150;
const latLng = ([lon, lat]: Place): L.LatLngTuple => [lat, lon];
const placeOf = ({ lat, lng }: L.LatLng): Place => [lng, lat];
const DOING: Readonly<Record<Step, string>> = {
  stand: 'I stand here',
  towards: 'I throw towards here',
  rest: 'A disc rests here',
};
const ASKS: Readonly<Record<Step, string>> = {
  stand: 'Tap where you stand',
  towards: 'Tap a far point on your line',
  rest: 'Tap where each disc came to rest, in the order thrown',
};

/** Marks a throwing line on the map, then each rest against it; by tap, by the cross in the middle and Enter, or by coordinates. */
export function TapMap({ session, onRest, onBearing }: TapMapProps) {
  const { settings } = usePlanner();
  const units = useUnits();
  const course = useCourseMap(settings.courseId);
  const [origin, setOrigin] = useState<Place | null>(null);
  const [isTurning, setTurning] = useState(false);
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const map = useRef<L.Map>(null);
  const line: ThrowingLine | null =
    origin === null || session.bearing_deg === undefined ? null : { origin, bearing_deg: session.bearing_deg };
  const step: Step = origin === null ? 'stand' : line === null || isTurning ? 'towards' : 'rest';

  const mark = async (place: Place) => {
    setWrong(null);
    if (step === 'stand' || origin === null) {
      setOrigin(place);
      return;
    }
    const local = toLocal(localFrame(origin[0], origin[1]), place);
    if (step === 'towards') {
      if (Math.hypot(local[0], local[1]) < 5) return setWrong('is too near: mark a point further down your line');
      await onBearing(Math.round(bearingBetween([0, 0], local) * 10) / 10);
      setTurning(false);
      return;
    }
    if (line === null) return;
    const { distance_m, side_m } = offsetFromLine(line, place);
    if (distance_m <= 0) return setWrong('lies behind where you stand: look at the line again');
    const tenth = (value: number) => Math.round(value * 10) / 10 + 0;
    await onRest({ distance_m: tenth(distance_m), side_m: tenth(side_m) });
  };
  const centre = () => {
    const at = map.current?.getCenter();
    if (at !== undefined) void mark(placeOf(at.wrap()));
  };
  const rests =
    line === null
      ? []
      : session.throws.flatMap(({ distance_m, side_m }, i) =>
          side_m === undefined ? [] : [{ number: i + 1, at: placeOnLine(line, { distance_m, side_m }) }],
        );

  return (
    <section className="tap-map" aria-label="Rests on a map">
      <p className="tap-ask" role="status">
        {ASKS[step]}
        {line !== null && `. Your line: ${Math.round(line.bearing_deg)}° from north`}
      </p>
      <div className="tap-frame">
        <MapContainer
          ref={map}
          className="hole-map"
          zoomSnap={0.25}
          attributionControl={false}
          center={[0, 0]}
          zoom={2}
          doubleClickZoom={false}
        >
          <FirstView bounds={course.data?.bounds ?? null} isMarked={origin !== null} />
          <Taps onPlace={place => void mark(place)} onEnter={centre} />
          {course.data !== undefined && <FieldGround map={course.data} />}
          {origin !== null && (
            <Marker
              position={latLng(origin)}
              icon={L.divIcon({ className: 'mark tap-stand', iconSize: [16, 16] })}
              keyboard={false}
              interactive={false}
            />
          )}
          {line !== null && <LineMarks line={line} unit_m={units.lengthUnit_m} />}
          {keyed(rests).map(({ key, item }) => (
            <Marker
              key={key}
              position={latLng(item.at)}
              icon={L.divIcon({ className: 'mark tap-rest', html: numbered(item.number), iconSize: [20, 20] })}
              keyboard={false}
              interactive={false}
            />
          ))}
          <ScaleControl metric={settings.length === 'm'} imperial={settings.length === 'ft'} />
        </MapContainer>
        <span className="tap-cross" aria-hidden="true" />
      </div>
      <div className="tap-tools">
        <Button className="button" onPress={centre}>
          {DOING[step]} (middle of the map)
        </Button>
        <Button className="small-button" isDisabled={origin === null} onPress={() => setOrigin(null)}>
          Stand elsewhere
        </Button>
        <Button className="small-button" isDisabled={line === null} onPress={() => setTurning(true)}>
          Turn the line
        </Button>
        <Form
          validationBehavior="aria"
          className="tap-typed"
          aria-label="By coordinates"
          onSubmit={event => {
            event.preventDefault();
            const read = readPlace(typed);
            if (!read.ok) return setWrong(read.problems[0]!.message);
            map.current?.setView(latLng(read.value), Math.max(17, map.current.getZoom()), { animate: false });
            void mark(read.value);
            setTyped('');
          }}
        >
          <TextField className="typed-field" value={typed} onChange={setTyped} isInvalid={wrong !== null}>
            <Label>Or latitude, longitude</Label>
            <Input placeholder="60.12345, 24.98765" autoComplete="off" />
            <FieldError>{wrong}</FieldError>
          </TextField>
        </Form>
      </div>
      <p className="soft">
        Arrow keys move the map under the cross, + and − zoom, Enter marks the middle. A phone’s position is good to
        some {units.length(5, 0)}: a tape is better.
      </p>
    </section>
  );
}

function Taps({ onPlace, onEnter }: Readonly<{ onPlace: (place: Place) => void; onEnter: () => void }>) {
  useMapEvents({
    click: event => onPlace(placeOf(event.latlng.wrap())),
    keydown: event => {
      if (event.originalEvent.key === 'Enter') onEnter();
    },
  });
  return null;
}

/** Begins over the course in view; keeps its place once something is marked. */
function FirstView({
  bounds,
  isMarked,
}: Readonly<{ bounds: Readonly<{ southWest: Place; northEast: Place }> | null; isMarked: boolean }>) {
  const map = useMap();
  useEffect(() => {
    const observer = new ResizeObserver(() => map.invalidateSize({ animate: false }));
    observer.observe(map.getContainer());
    return () => observer.disconnect();
  }, [map]);
  useEffect(() => {
    if (bounds === null || isMarked) return;
    map.invalidateSize({ animate: false });
    map.fitBounds(L.latLngBounds(latLng(bounds.southWest), latLng(bounds.northEast)), { animate: false });
  }, [map, bounds, isMarked]);
  return null;
}

/** The line with its round distances. */
function LineMarks({ line, unit_m }: Readonly<{ line: ThrowingLine; unit_m: number }>) {
  const isFeet = unit_m === METERS_PER_FOOT;
  const every_m = isFeet ? 100 * METERS_PER_FOOT : 25;
  const count = Math.floor(LINE_M / every_m);
  return (
    <>
      <Polyline
        positions={[line.origin as Place, placeOnLine(line, { distance_m: LINE_M, side_m: 0 })].map(latLng)}
        className="tap-line"
        interactive={false}
      />
      {Array.from({ length: count }, (_, i) => (i + 1) * every_m).map(distance_m => (
        <Marker
          key={distance_m}
          position={latLng(placeOnLine(line, { distance_m, side_m: 0 }))}
          icon={L.divIcon({
            className: 'tap-distance',
            html: numbered(Math.round(distance_m / unit_m)),
            iconSize: [34, 16],
          })}
          keyboard={false}
          interactive={false}
        />
      ))}
    </>
  );
}

function numbered(number: number): HTMLElement {
  const span = document.createElement('span');
  span.textContent = String(number);
  return span;
}
