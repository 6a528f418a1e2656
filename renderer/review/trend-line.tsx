import type { Trend } from '../../core/review/season-report.ts';
import { signed } from './cost-words.ts';

const WIDTH = 260;
const HEIGHT = 70;
const EDGE = 8;

/** One measure over the rounds: a dot a round, the mean with its 90 % interval as a band, the straight line where there are enough. */
export function TrendLine({ trend }: Readonly<{ trend: Trend }>) {
  const { points, mean, meanInterval, perRound, n } = trend;
  const known = points.flatMap(({ value }, i) => (value === null ? [] : [{ i, value }]));
  if (known.length === 0 || mean === null) return null;
  const values = [
    ...known.map(({ value }) => value),
    0,
    ...(meanInterval ? [meanInterval.low, meanInterval.high] : []),
  ];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const span = Math.max(0.05, high - low);
  const x = (i: number) => (points.length === 1 ? WIDTH / 2 : EDGE + ((WIDTH - 2 * EDGE) * i) / (points.length - 1));
  const y = (value: number) => HEIGHT - EDGE - ((HEIGHT - 2 * EDGE) * (value - low)) / span;
  const at = (order: number) => mean + (perRound ?? 0) * (order - (n - 1) / 2);
  return (
    <svg
      className="trend-line"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`${trend.words}: ${known.map(({ value }) => signed(value)).join(', ')}`}
    >
      {meanInterval !== null && (
        <rect
          className="trend-band"
          x={EDGE / 2}
          width={WIDTH - EDGE}
          y={y(meanInterval.high)}
          height={Math.max(1, y(meanInterval.low) - y(meanInterval.high))}
        />
      )}
      <line className="trend-zero" x1={0} x2={WIDTH} y1={y(0)} y2={y(0)} />
      {perRound !== null && (
        <line className="trend-fit" x1={x(known[0]!.i)} x2={x(known.at(-1)!.i)} y1={y(at(0))} y2={y(at(n - 1))} />
      )}
      {known.map(({ i, value }) => (
        <circle key={points[i]!.roundId} className="trend-dot" cx={x(i)} cy={y(value)} r={4} />
      ))}
    </svg>
  );
}
