import { memo, useMemo } from 'react';
import type { PlainHoleMap } from '../../backend/api/contract/hole-map.ts';
import type { ShotDrawing } from '../../core/strategy/hole-drawing.ts';
import { holeAxes } from '../frame/hole-axes.ts';
import { keyed } from '../frame/keyed.ts';
import { useUnits } from '../words/use-units.ts';
import { niceSteps } from './nice-steps.ts';
import { type Section, type SidePoint, sectionOf } from './section.ts';
import { useSize } from './use-size.ts';

type SideViewProps = Readonly<{
  map: PlainHoleMap;
  drawing: ShotDrawing | null;
  other: ShotDrawing | null;
  /** The stretch along the hole that the map shows, so that both line up. */
  range: readonly [from_m: number, to_m: number];
  isStale: boolean;
}>;

type Scale = Readonly<{ x: (along_m: number) => number; y: (z_m: number) => number; width: number; height: number }>;

const FOOT = 20;
const HEAD = 8;

/** The hole from the side: ground, what hangs over it, the flight with the middle 80 % of its heights, the tightest place. */
export const SideView = memo(function SideView({ map, drawing, other, range, isStale }: SideViewProps) {
  const units = useUnits();
  const [box, { width, height }] = useSize<HTMLDivElement>();
  const axes = useMemo(() => holeAxes(map.basket), [map]);
  const section = useMemo(() => sectionOf(map, axes, drawing), [map, axes, drawing]);
  const otherFlight = useMemo(() => (other === null ? [] : sectionOf(map, axes, other).flight), [map, axes, other]);
  const [low, high] = heightsShown(section, otherFlight);
  const scale: Scale = {
    width,
    height,
    x: along => ((along - range[0]) / (range[1] - range[0])) * width,
    y: z => HEAD + (1 - (z - low) / (high - low)) * Math.max(1, height - HEAD - FOOT),
  };
  return (
    <div className="side-view" ref={box} data-stale={isStale || undefined}>
      {width > 0 && height > 0 && (
        <svg width={width} height={height} role="img" aria-label={inWords(section, units.length)}>
          <HeightLines scale={scale} low={low} high={high} text={units.length} unit_m={units.lengthUnit_m} />
          {keyed(section.trees).map(({ key, item: tree }) => (
            <TreeShape key={key} tree={tree} scale={scale} />
          ))}
          {keyed(section.blocks).map(({ key, item: block }) => (
            <path key={key} className={`side-${block.kind}`} d={blockPath(block.bottom, block.top, scale)} />
          ))}
          <path
            className="side-ground"
            d={`${line(section.ground, scale)}V${height - FOOT + 4}H${scale.x(section.ground[0]![0])}Z`}
          />
          {keyed(section.out).map(({ key, item: stretch }) => (
            <path key={key} className="side-out" d={line(stretch, scale)} />
          ))}
          {keyed(section.windows).map(({ key, item: opening }) => (
            <path key={key} className="side-window" d={windowPath(opening, scale)} />
          ))}
          <BasketMark at={section.basket} scale={scale} />
          {section.band.length > 1 && <path className="side-band" d={bandPath(section, scale)} />}
          {otherFlight.length > 1 && <path className="side-other" d={line(otherFlight, scale)} />}
          {section.flight.length > 1 && <path className="side-flight" d={line(section.flight, scale)} />}
          {section.tightest !== null && <TightMark tight={section.tightest} scale={scale} text={units.length} />}
          <Stations scale={scale} range={range} text={units.length} unit_m={units.lengthUnit_m} />
        </svg>
      )}
    </div>
  );
});

function heightsShown(
  { ground, band, flight, trees, windows, blocks }: Section,
  other: readonly SidePoint[],
): [number, number] {
  const grounds = ground.map(([, z]) => z);
  const low = Math.min(...grounds);
  const flown = Math.max(2.5, ...band.map(b => b.high_m), ...flight.map(([, z]) => z), ...other.map(([, z]) => z));
  const hanging = [
    ...blocks.filter(b => b.kind === 'ceiling').flatMap(b => b.bottom.map(([, z]) => z + 2)),
    ...windows.map(w => w.high_m ?? w.low_m),
    ...trees.filter(t => t.over).map(t => t.base_m + 2),
  ];
  const top = Math.max(Math.max(...grounds) + 3, flown + 1, Math.min(flown + 6, Math.max(0, ...hanging)));
  const room = Math.max(8, top - low);
  return [low - room * 0.06, low + room * 1.04];
}

const line = (points: readonly SidePoint[], { x, y }: Scale): string =>
  points.map(([along, z], i) => `${i === 0 ? 'M' : 'L'}${x(along).toFixed(1)} ${y(z).toFixed(1)}`).join('');

function blockPath(bottom: readonly SidePoint[], top: readonly SidePoint[] | null, scale: Scale): string {
  const { x, y } = scale;
  const upper = top ?? bottom.map(([along]) => [along, Number.NaN] as const);
  const back = [...upper]
    .reverse()
    .map(([along, z]) => `L${x(along).toFixed(1)} ${(Number.isNaN(z) ? -20 : y(z)).toFixed(1)}`)
    .join('');
  return `${line(bottom, scale)}${back}Z`;
}

function bandPath({ band }: Section, scale: Scale): string {
  const upper = band.map(b => [b.along_m, b.high_m] as const);
  const lower = band.map(b => [b.along_m, b.low_m] as const);
  return `${line(upper, scale)}${line([...lower].reverse(), scale).replace('M', 'L')}Z`;
}

function windowPath({ along_m, low_m, high_m }: Section['windows'][number], { x, y }: Scale): string {
  const [left, right] = [x(along_m) - 5, x(along_m) + 5];
  const bottom = y(low_m);
  if (high_m === null) return `M${left} ${bottom}H${right}M${x(along_m)} ${bottom}V0`;
  return `M${left} ${bottom}H${right}M${left} ${y(high_m)}H${right}M${x(along_m)} ${bottom}V${y(high_m)}`;
}

function TreeShape({ tree, scale }: Readonly<{ tree: Section['trees'][number]; scale: Scale }>) {
  const { x, y } = scale;
  const middle = x(tree.along_m);
  const half = Math.max(3, x(tree.along_m + tree.halfWidth_m) - middle);
  return (
    <g className={tree.over ? 'side-tree' : 'side-tree beside'}>
      <rect
        className="side-trunk"
        x={middle - 1.5}
        y={y(tree.base_m)}
        width={3}
        height={Math.max(0, y(tree.ground_m) - y(tree.base_m))}
      />
      <rect
        className="side-crown"
        x={middle - half}
        y={y(tree.top_m)}
        width={half * 2}
        height={Math.max(2, y(tree.base_m) - y(tree.top_m))}
        rx={Math.min(half, 14)}
      />
    </g>
  );
}

/** Pole, chains and tray, 1.5 m high but never too small to see. */
function BasketMark({ at, scale }: Readonly<{ at: SidePoint; scale: Scale }>) {
  const [x, foot] = [scale.x(at[0]), scale.y(at[1])];
  const tall = Math.max(18, foot - scale.y(at[1] + 1.5));
  return (
    <path
      className="side-basket"
      d={`M${x} ${foot}V${foot - tall}M${x - 6} ${foot - tall}H${x + 6}M${x - 6} ${foot - tall * 0.45}H${x + 6}M${x - 5} ${foot - tall}L${x - 2} ${foot - tall * 0.45}M${x + 5} ${foot - tall}L${x + 2} ${foot - tall * 0.45}`}
    />
  );
}

function TightMark({
  tight,
  scale,
  text,
}: Readonly<{ tight: NonNullable<Section['tightest']>; scale: Scale; text: (m: number, digits?: number) => string }>) {
  const x = scale.x(tight.along_m);
  const [flight, free] = [scale.y(tight.flight_m), scale.y(tight.free_m)];
  const label = tight.margin_m < 0 ? `${text(-tight.margin_m, 1)} into it` : `${text(tight.margin_m, 1)} to spare`;
  const onLeft = x > scale.width * 0.7;
  return (
    <g className={tight.margin_m < 0.5 ? 'side-tight bad' : 'side-tight'}>
      <path d={`M${x - 6} ${free}H${x + 6}M${x} ${free}V${flight}M${x - 6} ${flight}H${x + 6}`} />
      <text
        x={onLeft ? x - 10 : x + 10}
        y={Math.max(14, (flight + free) / 2 + 5)}
        textAnchor={onLeft ? 'end' : 'start'}
      >
        {label}
      </text>
    </g>
  );
}

type AxisProps = Readonly<{ scale: Scale; text: (m: number, digits?: number) => string; unit_m: number }>;

function HeightLines({ scale, low, high, text, unit_m }: AxisProps & Readonly<{ low: number; high: number }>) {
  return (
    <g className="side-heights">
      {niceSteps(Math.max(0, low), high, 4, unit_m).map(z => (
        <g key={z}>
          <line x1={0} x2={scale.width} y1={scale.y(z)} y2={scale.y(z)} />
          <text x={4} y={scale.y(z) - 3}>
            {text(z, 0)}
          </text>
        </g>
      ))}
    </g>
  );
}

function Stations({ scale, range, text, unit_m }: AxisProps & Readonly<{ range: SideViewProps['range'] }>) {
  return (
    <g className="side-stations">
      {niceSteps(Math.max(0, range[0]), range[1], 7, unit_m).map(along => (
        <g key={along}>
          <line x1={scale.x(along)} x2={scale.x(along)} y1={scale.height - FOOT + 4} y2={scale.height - FOOT + 9} />
          <text x={scale.x(along)} y={scale.height - 2} textAnchor="middle">
            {text(along, 0)}
          </text>
        </g>
      ))}
    </g>
  );
}

function inWords({ tightest, windows, flight }: Section, text: (m: number, digits?: number) => string): string {
  const top = Math.max(0, ...flight.map(([, z]) => z));
  return [
    'Side view of the hole.',
    flight.length > 0 ? `The flight rises to ${text(top, 1)} above the tee.` : 'No shot planned yet.',
    tightest === null
      ? 'Nothing hangs over its way.'
      : `Tightest place at ${text(tightest.along_m, 0)}: ${tightest.margin_m < 0 ? `${text(-tightest.margin_m, 1)} into it` : `${text(tightest.margin_m, 1)} to spare`}.`,
    windows.length > 0 ? `${windows.length === 1 ? 'One gap' : `${windows.length} gaps`} on the way.` : '',
  ].join(' ');
}
