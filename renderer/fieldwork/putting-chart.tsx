import type { Output } from '../../backend/api/contract/api.ts';
import { niceSteps } from '../side-view/nice-steps.ts';
import { percent } from '../words/percent.ts';
import { useUnits } from '../words/use-units.ts';

type Report = Output<'getPutting'>;

const [WIDTH, HEIGHT, LEFT, RIGHT, TOP, BOTTOM] = [640, 330, 46, 14, 24, 34];

/** Make chance by distance: the fitted curve with its interval, what was measured, and where the circles end. */
export function PuttingChart({ report }: Readonly<{ report: Report }>) {
  const units = useUnits();
  const { line, byDistance, circles, curve } = report;
  const last_m = line.at(-1)!.distance_m;
  const x = (distance_m: number) => LEFT + (distance_m / last_m) * (WIDTH - LEFT - RIGHT);
  const y = (chance: number) => TOP + (1 - chance) * (HEIGHT - TOP - BOTTOM);
  const through = (points: readonly (readonly [number, number])[]) =>
    points.map(([px, py]) => `${px.toFixed(1)} ${py.toFixed(1)}`).join('L');
  const high = line.map(at => [x(at.distance_m), y(at.high)] as const);
  const low = line.map(at => [x(at.distance_m), y(at.low)] as const).reverse();
  const at10 = line.find(({ distance_m }) => distance_m === 10);
  const words =
    at10 === undefined
      ? ''
      : `From ${units.length(10, 0)} ${percent(at10.chance)}, ${percent(at10.low)} to ${percent(at10.high)}.`;
  return (
    <figure className="putting-chart">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`Make chance by distance. ${words}`}>
        <rect x={LEFT} y={TOP} width={WIDTH - LEFT - RIGHT} height={HEIGHT - TOP - BOTTOM} className="plot-ground" />
        {[0, 0.25, 0.5, 0.75, 1].map(chance => (
          <g key={chance}>
            <path d={`M${LEFT} ${y(chance)}H${WIDTH - RIGHT}`} className="plot-grid" />
            <text x={LEFT - 6} y={y(chance) + 4} textAnchor="end">
              {percent(chance)}
            </text>
          </g>
        ))}
        {niceSteps(0, last_m, 8, units.lengthUnit_m).map(distance_m => (
          <text key={distance_m} x={x(distance_m)} y={HEIGHT - 14} textAnchor="middle">
            {Math.round(distance_m / units.lengthUnit_m)}
          </text>
        ))}
        {circles.map(
          ({ name, to_m }) =>
            to_m !== null && (
              <g key={name}>
                <path d={`M${x(to_m)} ${TOP}V${HEIGHT - BOTTOM}`} className="circle-edge" />
                <text x={x(to_m) - 4} y={TOP - 8} textAnchor="end" className="circle-name">
                  {name}
                </text>
              </g>
            ),
        )}
        <path d={`M${through([...high, ...low])}Z`} className="putting-band" />
        <path
          d={`M${through(line.map(at => [x(at.distance_m), y(at.chance)] as const))}`}
          className={curve.basis === 'predicted' ? 'putting-line putting-guess' : 'putting-line'}
        />
        {byDistance.map(({ distance_m, attempts, measured }) => (
          <g key={distance_m}>
            <path d={`M${x(distance_m)} ${y(measured.low)}V${y(measured.high)}`} className="drift-interval" />
            <circle
              cx={x(distance_m)}
              cy={y(measured.rate)}
              r={Math.min(8, 2.5 + Math.sqrt(attempts) / 3)}
              className="rest-counts"
            />
          </g>
        ))}
      </svg>
      <figcaption>
        {curve.basis === 'predicted' ? 'Dashed line: an assumed curve' : 'Line: fitted curve'}, shaded: its 95 %
        interval. Dots: what went in, larger for more tries, bars their 95 % intervals. Distances in{' '}
        {units.lengthUnit_m === 1 ? 'metres' : 'feet'}.
      </figcaption>
    </figure>
  );
}
