import { keyed } from '../frame/keyed.ts';
import { niceSteps } from '../side-view/nice-steps.ts';
import { useUnits } from '../words/use-units.ts';
import { RestMark, ScatterLegend } from './scatter-marks.tsx';
import type { Scatter } from './scatter-panel.tsx';

type View = Scatter['views'][number];
type Ellipse = View['measured'][number];
type Box = Readonly<{ along: readonly [number, number]; side: readonly [number, number] }>;

/** The whole flight from above, and close up where it comes to rest. Up is along the line. */
export function ScatterPlots({ view, words }: Readonly<{ view: View; words: string }>) {
  const near = landingBox(view);
  return (
    <div className="scatter-plots">
      <figure>
        <Plot
          view={view}
          box={flightBox(view, near)}
          size={[230, 430]}
          label={`The whole flight from above: ${words}`}
          steps={4}
        />
        <figcaption>The whole flight</figcaption>
      </figure>
      <figure>
        <Plot
          view={view}
          box={near}
          size={[460, 430]}
          label={`Where the throws came to rest, from above: ${words}`}
          steps={6}
        />
        <figcaption>Where it comes to rest</figcaption>
      </figure>
      <ScatterLegend />
    </div>
  );
}

const MARGIN_LEFT = 44;
const MARGIN_BOTTOM = 26;

type PlotProps = Readonly<{ view: View; box: Box; size: readonly [number, number]; label: string; steps: number }>;

function Plot({ view, box, size: [width, height], label, steps }: PlotProps) {
  const { lengthUnit_m } = useUnits();
  const inner = { width: width - MARGIN_LEFT - 6, height: height - MARGIN_BOTTOM - 6 };
  const fitted = fitBox(box, inner.width / inner.height);
  const scale = inner.height / (fitted.along[1] - fitted.along[0]);
  const x = (side_m: number) => MARGIN_LEFT + (side_m - fitted.side[0]) * scale;
  const y = (along_m: number) => 6 + (fitted.along[1] - along_m) * scale;
  const sideSteps = niceSteps(fitted.side[0], fitted.side[1], Math.max(2, Math.round(steps * 0.7)), lengthUnit_m);
  const alongSteps = niceSteps(fitted.along[0], fitted.along[1], steps, lengthUnit_m);
  const bare = (value_m: number) => String(Math.round(value_m / lengthUnit_m)).replace('-', '−');
  const clip = `clip-${width}`;
  return (
    <svg className="scatter-plot" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
      <clipPath id={clip}>
        <rect x={MARGIN_LEFT} y={6} width={inner.width} height={inner.height} />
      </clipPath>
      <rect x={MARGIN_LEFT} y={6} width={inner.width} height={inner.height} className="plot-ground" />
      {alongSteps.map(along_m => (
        <g key={along_m}>
          <path d={`M${MARGIN_LEFT} ${y(along_m)}h${inner.width}`} className="plot-grid" />
          <text x={MARGIN_LEFT - 5} y={y(along_m) + 4} textAnchor="end">
            {bare(along_m)}
          </text>
        </g>
      ))}
      {sideSteps.map(side_m => (
        <g key={side_m}>
          <path d={`M${x(side_m)} 6v${inner.height}`} className={side_m === 0 ? 'plot-line' : 'plot-grid'} />
          <text x={x(side_m)} y={height - 9} textAnchor="middle">
            {side_m === 0 ? '0' : `${bare(Math.abs(side_m))} ${side_m < 0 ? 'l' : 'r'}`}
          </text>
        </g>
      ))}
      <g clipPath={`url(#${clip})`}>
        {keyed(view.measured).map(({ key, item }) => (
          <EllipseMark key={key} ellipse={item} x={x} y={y} scale={scale} className="spread-measured" />
        ))}
        {keyed(view.fitted.spread).map(({ key, item }) => (
          <EllipseMark key={key} ellipse={item} x={x} y={y} scale={scale} className="spread-fitted" />
        ))}
        <path
          d={`M${[...view.fitted.path.map(([along, side]) => [along, side] as const), view.fitted.rest].map(([along, side]) => `${x(side).toFixed(1)} ${y(along).toFixed(1)}`).join('L')}`}
          className="scatter-flight"
        />
        <path
          d={`M${x(view.fitted.mean[1]) - 6} ${y(view.fitted.mean[0])}h12M${x(view.fitted.mean[1])} ${y(view.fitted.mean[0]) - 6}v12`}
          className="scatter-mean"
        />
        {view.points.map(point =>
          point.side_m === null ? null : (
            <RestMark
              key={`${point.session} ${point.place}`}
              x={x(point.side_m)}
              y={y(point.along_m)}
              standing={point.standing}
            />
          ),
        )}
      </g>
    </svg>
  );
}

type EllipseMarkProps = Readonly<{
  ellipse: Ellipse;
  x: (side_m: number) => number;
  y: (along_m: number) => number;
  scale: number;
  className: string;
}>;

/** Up is along the line and right is right, so the long axis turns clockwise on the screen as it does on the ground. */
function EllipseMark({ ellipse, x, y, scale, className }: EllipseMarkProps) {
  const [cx, cy] = [x(ellipse.side_m), y(ellipse.along_m)];
  return (
    <ellipse
      cx={cx}
      cy={cy}
      rx={ellipse.semiMinor_m * scale}
      ry={ellipse.semiMajor_m * scale}
      transform={`rotate(${ellipse.angle_deg} ${cx} ${cy})`}
      className={className}
    />
  );
}

/** All rests and the outer ellipses with some air around them. */
function landingBox({ points, measured, fitted }: View): Box {
  const reach = [...measured, ...fitted.spread].filter(({ share }) => share > 0.6);
  const along = [
    ...points.map(({ along_m }) => along_m),
    ...reach.flatMap(e => [e.along_m - e.semiMajor_m, e.along_m + e.semiMajor_m]),
    fitted.mean[0],
  ];
  const side = [
    ...points.flatMap(({ side_m }) => side_m ?? []),
    ...reach.flatMap(e => [e.side_m - e.semiMajor_m, e.side_m + e.semiMajor_m]),
    fitted.mean[1],
    0,
  ];
  return { along: padded(along), side: padded(side) };
}

function flightBox({ fitted }: View, near: Box): Box {
  const side = fitted.path.map(([, side_m]) => side_m);
  return {
    along: [0, near.along[1]],
    side: padded([...side, near.side[0], near.side[1]]),
  };
}

function padded(values: readonly number[]): [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const air = Math.max(1.5, (high - low) * 0.06);
  return [low - air, high + air];
}

/** Widened on one axis to the shape of its place, so that a metre is as long both ways. */
function fitBox({ along, side }: Box, aspect: number): Box {
  const [height, width] = [along[1] - along[0], side[1] - side[0]];
  if (width / height < aspect) {
    const more = (height * aspect - width) / 2;
    return { along, side: [side[0] - more, side[1] + more] };
  }
  const more = (width / aspect - height) / 2;
  // a flight begins at the line: room is made beyond it rather than behind the thrower
  if (along[0] === 0) return { along: [-more * 0.2, along[1] + more * 1.8], side };
  return { along: [along[0] - more, along[1] + more], side };
}
