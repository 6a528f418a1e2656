import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { compassPoint } from '../words/wind-words.ts';

const SIZE = 200;
const CENTRE = SIZE / 2;
const RIM = 78;
const HUB = 12;
/** Wind speed at the rim; stronger winds are typed. */
const DIAL_FULL_mps = 14;

export type DialWind = Readonly<{ speed_mps: number; from_deg: number }>;

type WindDialProps = Readonly<{
  wind: DialWind;
  gust_mps: number | null;
  holeBearing_deg: number | null;
  /** "4.0 m/s", for the reading aloud. */
  speedText: string;
  ringText: (speed_mps: number) => string;
  onChange: (wind: DialWind) => void;
  /** The drag or key press is over: `before` is what it began from. */
  onSettle: (before: DialWind) => void;
}>;

const at = (bearing_deg: number, radius: number): readonly [number, number] => {
  const angle = (bearing_deg * Math.PI) / 180;
  return [CENTRE + radius * Math.sin(angle), CENTRE - radius * Math.cos(angle)];
};
const radiusOf = (speed_mps: number) => HUB + (RIM - HUB) * Math.min(1, speed_mps / DIAL_FULL_mps);
const STEP_deg = { plain: 5, fine: 1 };
const STEP_mps = { plain: 0.5, fine: 0.1 };

/**
 * Compass with the wind blowing in from the rim: drag the knob round for the direction and in or out for the strength.
 * Arrow keys left and right turn it, up and down change the strength, Shift makes steps fine.
 */
export function WindDial(props: WindDialProps) {
  const { wind, gust_mps, holeBearing_deg, speedText, ringText, onChange, onSettle } = props;
  const svg = useRef<SVGSVGElement>(null);
  const before = useRef<DialWind | null>(null);
  // Beside the hole's arrow, on the side the wind does not come from.
  const across = (holeBearing_deg ?? 0) + 90;
  const ringTextAt = Math.cos(((wind.from_deg - across) * Math.PI) / 180) > 0 ? across + 180 : across;
  const [knobX, knobY] = at(wind.from_deg, radiusOf(wind.speed_mps));

  const windAt = (event: PointerEvent): DialWind => {
    const box = svg.current!.getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * SIZE - CENTRE;
    const y = ((event.clientY - box.top) / box.height) * SIZE - CENTRE;
    const radius = Math.hypot(x, y);
    const share = Math.min(1, Math.max(0, (radius - HUB) / (RIM - HUB)));
    return {
      speed_mps: Math.round(share * DIAL_FULL_mps * 10) / 10,
      from_deg: radius < 2 ? wind.from_deg : (Math.round((Math.atan2(x, -y) * 180) / Math.PI) + 360) % 360,
    };
  };

  const keyDown = (event: KeyboardEvent) => {
    const turn_deg = event.shiftKey ? STEP_deg.fine : STEP_deg.plain;
    const change_mps = event.shiftKey ? STEP_mps.fine : STEP_mps.plain;
    const next = {
      ArrowRight: { from_deg: (wind.from_deg + turn_deg) % 360 },
      ArrowLeft: { from_deg: (wind.from_deg - turn_deg + 360) % 360 },
      ArrowUp: { speed_mps: Math.min(DIAL_FULL_mps, wind.speed_mps + change_mps) },
      ArrowDown: { speed_mps: Math.max(0, wind.speed_mps - change_mps) },
      Home: { speed_mps: 0 },
    }[event.key];
    if (next === undefined) return;
    event.preventDefault();
    before.current ??= wind;
    onChange({ ...wind, ...next });
  };
  const settle = () => {
    if (before.current === null) return;
    const from = before.current;
    before.current = null;
    onSettle(from);
  };

  return (
    <svg
      ref={svg}
      className="wind-dial"
      viewBox={`0 0 ${SIZE} ${SIZE}`}
      onPointerDown={event => {
        event.currentTarget.setPointerCapture(event.pointerId);
        before.current ??= wind;
        onChange(windAt(event));
      }}
      onPointerMove={event => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) onChange(windAt(event));
      }}
      onLostPointerCapture={settle}
    >
      <title>Wind dial</title>
      <circle className="dial-face" cx={CENTRE} cy={CENTRE} r={RIM + 4} />
      {[4, 8, 12].map(ring => (
        <g key={ring}>
          <circle className="dial-ring" cx={CENTRE} cy={CENTRE} r={radiusOf(ring)} />
          <text className="dial-ring-text" x={at(ringTextAt, radiusOf(ring))[0]} y={at(ringTextAt, radiusOf(ring))[1]}>
            {ringText(ring)}
          </text>
        </g>
      ))}
      {Array.from({ length: 36 }, (_, i) => i * 10).map(bearing => {
        const [x1, y1] = at(bearing, RIM + 4);
        const [x2, y2] = at(bearing, RIM + (bearing % 90 === 0 ? -2 : 1));
        return <line key={bearing} className="dial-tick" x1={x1} y1={y1} x2={x2} y2={y2} />;
      })}
      {(['N', 'E', 'S', 'W'] as const).map((letter, i) => {
        const [x, y] = at(i * 90, RIM + 13);
        return (
          <text key={letter} className="dial-letter" x={x} y={y}>
            {letter}
          </text>
        );
      })}
      {holeBearing_deg !== null && <HoleArrow bearing_deg={holeBearing_deg} />}
      {gust_mps !== null && gust_mps > wind.speed_mps && (
        <path className="dial-gust" d={beam(wind.from_deg, radiusOf(gust_mps))} />
      )}
      <path className="dial-wind" d={beam(wind.from_deg, radiusOf(wind.speed_mps))} />
      <circle
        className="dial-knob"
        cx={knobX}
        cy={knobY}
        r={7.5}
        tabIndex={0}
        role="slider"
        aria-label="Wind: left and right turn it, up and down change its strength"
        aria-valuemin={0}
        aria-valuemax={359}
        aria-valuenow={Math.round(wind.from_deg)}
        aria-valuetext={`${speedText} from ${Math.round(wind.from_deg)}°, ${compassPoint(wind.from_deg)}`}
        onKeyDown={keyDown}
        onKeyUp={settle}
        onBlur={settle}
      />
    </svg>
  );
}

/** A wedge that narrows towards the thrower at the hub. */
function beam(from_deg: number, radius: number): string {
  const [lx, ly] = at(from_deg - 1600 / (radius + 40), radius);
  const [rx, ry] = at(from_deg + 1600 / (radius + 40), radius);
  const [tx, ty] = at(from_deg + 180, HUB);
  return `M${lx} ${ly}L${rx} ${ry}L${tx} ${ty}Z`;
}

function HoleArrow({ bearing_deg }: Readonly<{ bearing_deg: number }>) {
  const [x1, y1] = at(bearing_deg + 180, RIM - 6);
  const [x2, y2] = at(bearing_deg, RIM - 8);
  const [lx, ly] = at(bearing_deg - 7, RIM - 22);
  const [rx, ry] = at(bearing_deg + 7, RIM - 22);
  return (
    <g className="dial-hole">
      <line x1={x1} y1={y1} x2={x2} y2={y2} />
      <path d={`M${lx} ${ly}L${x2} ${y2}L${rx} ${ry}`} />
    </g>
  );
}
