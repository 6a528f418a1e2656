import { useId } from 'react';
import type { ThrowRow, ThrowsReport } from '../../core/player/throws-report.ts';
import { niceSteps } from '../side-view/nice-steps.ts';
import { useSize } from '../side-view/use-size.ts';
import { useUnits } from '../words/use-units.ts';
import { labelPlaces } from './chart-places.ts';

const HEIGHT = 420;
const EDGE = { left: 46, right: 14, top: 16, bottom: 40 };
const MARGIN_M = 6;
const LEAST_HALF_WIDTH_M = 12;
const LABEL = { width: 10, height: 8 };

type BagChartProps = Readonly<{
  /** One hand's throwing discs, shortest first; the numbers on the chart are their order. */
  rows: readonly ThrowRow[];
  layout: ThrowsReport['layout'];
  hand: ThrowRow['hand'];
}>;

/** The bag seen from above: how far each disc goes on an average day and where it ends, with 90 % intervals. */
export function BagChart({ rows, layout, hand }: BagChartProps) {
  const units = useUnits();
  const [frame, { width }] = useSize<HTMLDivElement>();
  const clip = useId();
  const low = Math.min(...rows.map(r => r.averageDay_m)) - 1.5 * MARGIN_M;
  const high = Math.max(...rows.map(r => r.averageDay_m)) + 1.5 * MARGIN_M;
  // the dots decide how wide it is; a guess's long cross may run out of the picture
  const half = Math.max(LEAST_HALF_WIDTH_M, ...rows.map(r => Math.abs(r.finish_m) + MARGIN_M));
  const x = (side_m: number) =>
    EDGE.left + ((side_m + half) / (2 * half)) * Math.max(1, width - EDGE.left - EDGE.right);
  const y = (distance_m: number) =>
    HEIGHT - EDGE.bottom - ((distance_m - low) / (high - low)) * (HEIGHT - EDGE.top - EDGE.bottom);
  const dots = rows.map(r => ({ x: x(r.finish_m), y: y(r.averageDay_m) }));
  const places = labelPlaces(dots, LABEL);
  const at = (disc: string) => dots[rows.findIndex(r => r.disc === disc)];
  const gaps = layout.gaps.filter(gap => gap.hand === hand);
  const doubles = layout.doubles.filter(double => double.hand === hand);
  const bottom = HEIGHT - EDGE.bottom;
  return (
    <div className="bag-chart" ref={frame}>
      {width > 0 && (
        <svg
          width={width}
          height={HEIGHT}
          role="img"
          aria-label={`Average-day distance and finish of ${rows.length} discs, ${hand}; the table beside it says the same`}
        >
          <clipPath id={clip}>
            <rect
              x={EDGE.left}
              y={EDGE.top}
              width={Math.max(1, width - EDGE.left - EDGE.right)}
              height={bottom - EDGE.top}
            />
          </clipPath>
          {niceSteps(low, high, 6, units.lengthUnit_m).map(step => (
            <g key={`d${step}`}>
              <path className="chart-rule" d={`M${EDGE.left} ${y(step)}H${width - EDGE.right}`} />
              <text className="chart-word" x={EDGE.left - 5} y={y(step) + 4} textAnchor="end">
                {units.length(step, 0)}
              </text>
            </g>
          ))}
          {niceSteps(-half, half, 5, units.lengthUnit_m).map(step => (
            <g key={`s${step}`}>
              <path className={step === 0 ? 'chart-line' : 'chart-rule'} d={`M${x(step)} ${EDGE.top}V${bottom}`} />
              <text className="chart-word" x={x(step)} y={bottom + 15} textAnchor="middle">
                {Math.abs(step) < 1e-9 ? '0' : units.length(Math.abs(step), 0)}
              </text>
            </g>
          ))}
          <text className="chart-word" x={EDGE.left} y={HEIGHT - 6}>
            ends left
          </text>
          <text className="chart-word" x={width - EDGE.right} y={HEIGHT - 6} textAnchor="end">
            ends right
          </text>
          {gaps.map(gap => {
            const [from, to] = [y(gap.from_m), y(gap.to_m)];
            return (
              <g key={`${gap.shorter} ${gap.longer}`}>
                <path
                  className="chart-gap"
                  d={`M${EDGE.left + 4} ${from}V${to}M${width - EDGE.right - 4} ${from}V${to}`}
                />
                <text className="chart-gap-word" x={EDGE.left + 10} y={(from + to) / 2 + 4}>
                  gap of {units.length(gap.to_m - gap.from_m, 0)}
                </text>
              </g>
            );
          })}
          {doubles.map(({ discs }) => {
            const [a, b] = [at(discs[0]), at(discs[1])];
            return a === undefined || b === undefined ? null : (
              <path key={discs.join()} className="chart-double" d={`M${a.x} ${a.y}L${b.x} ${b.y}`} />
            );
          })}
          {rows.map((row, i) => {
            const { averageDay_m: d, finish_m: s } = row.interval90;
            const [dot, place] = [dots[i]!, places[i]!];
            return (
              <g key={row.discId} className="chart-disc" data-basis={row.basis}>
                <path
                  className="chart-interval"
                  clipPath={`url(#${clip})`}
                  d={`M${dot.x} ${y(d.low)}V${y(d.high)}M${x(s.low)} ${dot.y}H${x(s.high)}`}
                />
                <path className="chart-leader" d={`M${dot.x} ${dot.y}L${place.x} ${place.y}`} />
                <circle cx={dot.x} cy={dot.y} r={4.5} />
                <text x={place.x} y={place.y + 4.5} textAnchor="middle">
                  {i + 1}
                </text>
              </g>
            );
          })}
        </svg>
      )}
      <p className="soft">
        Dots: filled measured, ringed from your other discs, hollow a guess. Crosses hold the truth nine times in ten. A
        thick line joins a double.
      </p>
    </div>
  );
}
