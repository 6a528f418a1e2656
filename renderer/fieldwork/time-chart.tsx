import { keyed } from '../frame/keyed.ts';
import { niceSteps } from '../side-view/nice-steps.ts';

/** One day's value with its standard deviation; `day` counts from the first. */
type DayValue = Readonly<{ date: string; day: number; value: number; sd: number }>;

const [WIDTH, HEIGHT, LEFT, RIGHT, BOTTOM, TOP] = [620, 170, 52, 20, 26, 10];
const NORMAL_90 = 1.645; // Φ⁻¹(0.95)
/** Pixels a date needs. */
const DATE_WIDTH = 82;
const INNER = WIDTH - LEFT - RIGHT - 60;

type TimeChartProps = Readonly<{
  days: readonly DayValue[];
  label: string;
  /** The axis spans at least this much around the values. */
  least: readonly [low: number, high: number];
  /** Size of one unit of the axis, for round steps. */
  unit: number;
  write: (value: number) => string;
}>;

/** Values from day to day with their 90 % intervals. */
export function TimeChart({ days, label, least, unit, write }: TimeChartProps) {
  const lowest = Math.min(...days.map(({ value, sd }) => value - NORMAL_90 * sd), least[0]);
  const highest = Math.max(...days.map(({ value, sd }) => value + NORMAL_90 * sd), least[1]);
  const air = (highest - lowest) * 0.06;
  const [low, high] = [lowest - air, highest + air];
  const lastDay = Math.max(1, days.at(-1)?.day ?? 1);
  const x = (day: number) => LEFT + 30 + (day / lastDay) * INNER;
  const y = (value: number) => TOP + ((high - value) / (high - low)) * (HEIGHT - TOP - BOTTOM);
  return (
    <svg className="time-chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
      <rect x={LEFT} y={TOP} width={WIDTH - LEFT - RIGHT} height={HEIGHT - TOP - BOTTOM} className="plot-ground" />
      {niceSteps(low, high, 4, unit).map(value => (
        <g key={value}>
          <path d={`M${LEFT} ${y(value)}H${WIDTH - RIGHT}`} className={value === 0 ? 'plot-line' : 'plot-grid'} />
          <text x={LEFT - 6} y={y(value) + 4} textAnchor="end">
            {write(value)}
          </text>
        </g>
      ))}
      {keyed(days).map(({ key, item: { date, day, value, sd } }, i) => (
        <g key={key}>
          <path d={`M${x(day)} ${y(value - NORMAL_90 * sd)}V${y(value + NORMAL_90 * sd)}`} className="drift-interval" />
          <circle cx={x(day)} cy={y(value)} r={4.5} className="rest-counts" />
          {isRoomFor(days, i, lastDay) && (
            <text x={x(day)} y={HEIGHT - 8} textAnchor="middle">
              {date.slice(0, 10)}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}

/** Dates that would run into the one before, or into the last, are left out. */
function isRoomFor(days: readonly DayValue[], i: number, lastDay: number): boolean {
  const apart = (a: number, b: number) => (Math.abs(days[a]!.day - days[b]!.day) / lastDay) * INNER > DATE_WIDTH;
  const last = days.length - 1;
  if (i === 0) return true;
  if (i === last) return apart(0, last);
  let shown = 0;
  for (let j = 1; j <= i; j++) if (apart(j, shown) && apart(j, last)) shown = j;
  return shown === i;
}
