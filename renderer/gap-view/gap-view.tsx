import { memo, useMemo } from 'react';
import type { PlainHoleMap } from '../../backend/api/contract/hole-map.ts';
import type { HoleReport } from '../../core/geometry/hole-report.ts';
import type { ShotDrawing } from '../../core/strategy/hole-drawing.ts';
import { keyed } from '../frame/keyed.ts';
import { useSize } from '../side-view/use-size.ts';
import { useUnits } from '../words/use-units.ts';
import { type Sight, seenFromTee } from './seen-from-tee.ts';

type GapViewProps = Readonly<{ map: PlainHoleMap; report: HoleReport; drawing: ShotDrawing | null }>;

const LOWEST_deg = -6;
const HIGHEST_deg = 22;
/** No wider than this, so that gaps stay large enough to see. */
const WIDEST_deg = 76;

/** What the thrower sees from the tee, in degrees: the windows to hit, and the flight going through them. */
export const GapView = memo(function GapView({ map, report, drawing }: GapViewProps) {
  const units = useUnits();
  const [frame, { width, height }] = useSize<HTMLDivElement>();
  const seen = useMemo(() => seenFromTee(map, drawing), [map, drawing]);
  const perDegree = Math.max(height / (HIGHEST_deg - LOWEST_deg), width / WIDEST_deg);
  const half = width / 2 / Math.max(1, perDegree);
  const x = (right: number) => width / 2 + right * perDegree;
  const y = (up: number) => height - (up - LOWEST_deg) * perDegree;
  const path = (points: readonly Sight[]) =>
    points.map(([right, up], i) => `${i === 0 ? 'M' : 'L'}${x(right).toFixed(1)} ${y(up).toFixed(1)}`).join('');
  return (
    <figure className="gap-view">
      <div className="gap-frame" ref={frame}>
        {width > 0 && (
          <svg width={width} height={height} role="img" aria-label={inWords(report, units.length)}>
            <path className="gap-ground" d={`${path(seen.ground)}V${height}H${x(seen.ground[0]![0])}Z`} />
            {keyed(seen.things).map(({ key, item: thing }) => (
              <path key={key} className={`gap-${thing.kind}`} d={`${path(thing.outline)}Z`} />
            ))}
            <Degrees x={x} y={y} width={width} half={half} />
            <path
              className="gap-basket"
              d={`M${x(seen.basket[0])} ${y(seen.basket[1]) - 9}V${y(seen.basket[1]) + 9}M${x(seen.basket[0]) - 6} ${y(seen.basket[1]) - 8}H${x(seen.basket[0]) + 6}M${x(seen.basket[0]) - 6} ${y(seen.basket[1])}H${x(seen.basket[0]) + 6}`}
            />
            <path className="side-flight" d={path(seen.flight)} />
          </svg>
        )}
      </div>
      <figcaption>
        {gapLines(report, units.length).map(text => (
          <span key={text}>{text}</span>
        ))}
      </figcaption>
    </figure>
  );
});

function Degrees({
  x,
  y,
  width,
  half,
}: Readonly<{ x: (deg: number) => number; y: (deg: number) => number; width: number; half: number }>) {
  const across = Array.from({ length: 2 * Math.floor(half / 10) + 1 }, (_, i) => (i - Math.floor(half / 10)) * 10);
  return (
    <g className="gap-degrees">
      {[0, 5, 10, 15, 20].map(up => (
        <g key={`up${up}`}>
          <line x1={0} x2={width} y1={y(up)} y2={y(up)} />
          <text className="gap-degree" x={4} y={y(up) - 2}>{`${up}°`}</text>
        </g>
      ))}
      {across.map(right => (
        <text className="gap-degree" key={`right${right}`} x={x(right)} y={y(LOWEST_deg) - 4} textAnchor="middle">
          {right === 0 ? '0°' : `${Math.abs(right)}° ${right < 0 ? 'L' : 'R'}`}
        </text>
      ))}
    </g>
  );
}

type Text = (length_m: number, digits?: number) => string;

function gapLines({ gaps, ceilings }: HoleReport, text: Text): string[] {
  const windows = gaps.slice(0, 3).map(gap => {
    const high = gap.windowHeight_deg === null ? 'open above' : `${gap.windowHeight_deg.toFixed(0)}° high`;
    return `At ${text(gap.station_m, 0)}: ${text(gap.width_m, 1)} wide, ${gap.windowWidth_deg.toFixed(0)}° from the tee, ${high}`;
  });
  const roofs = ceilings
    .slice(0, 2)
    .map(c => `${text(c.from_m, 0)} to ${text(c.to_m, 0)}: ${text(c.clearance_m, 1)} free under the branches`);
  const all = [...windows, ...roofs];
  return all.length > 0 ? all : ['No gaps or low branches mapped on the line of play'];
}

const inWords = (report: HoleReport, text: Text): string => `View from the tee. ${gapLines(report, text).join('. ')}.`;
