import type { HolePlan } from '../../core/strategy/plan-report.ts';
import { useUnits } from '../words/use-units.ts';
import { compassPoint } from '../words/wind-words.ts';

const SIZE = 220;
const CENTRE = SIZE / 2;
const RIM = 92;
const LETTERS = 'ABCDEFGHIJKLMNOP';
const GROUNDS = 6;

type Flip = HolePlan['flips'][number];
const nameOf = ({ choice }: Pick<Flip, 'choice'>) => `${choice.disc}${choice.hand === 'forehand' ? ', forehand' : ''}`;

type FlipRoseProps = Readonly<{
  plan: HolePlan;
  today: Readonly<{ speed_mps: number; from_deg: number }>;
  isPlanning: boolean;
}>;

/** What the choice becomes in other winds: one cell for each direction and strength, each with its disc's letter. */
export function FlipRose({ plan, today, isPlanning }: FlipRoseProps) {
  const units = useUnits();
  const { flips, nearestFlip } = plan;
  if (flips.length === 0)
    return (
      <p className="soft">
        {isPlanning
          ? 'Other winds are being looked at; they come after the holes.'
          : 'Other winds are looked at when the whole round is planned.'}
      </p>
    );
  const discs = [...new Set(flips.map(nameOf))].sort((a, b) => countOf(flips, b) - countOf(flips, a));
  const speeds = [...new Set(flips.map(flip => flip.wind_mps))].sort((a, b) => a - b);
  const directions = new Set(flips.filter(flip => flip.wind_mps > 0).map(flip => flip.windFrom_deg)).size;
  const ring = RIM / (speeds.length - 0.5);
  const radii = (speed: number): [number, number] => {
    const place = speeds.indexOf(speed);
    return place === 0 ? [0, ring / 2] : [(place - 0.5) * ring, (place + 0.5) * ring];
  };
  const todayRadius = Math.min(RIM, (today.speed_mps / (speeds.at(-1) ?? 1)) * (RIM - ring / 2));
  const [todayX, todayY] = at(today.from_deg, todayRadius);
  return (
    <div className="flip-rose">
      <p>
        {nearestFlip === null
          ? `No wind up to ${units.speed(speeds.at(-1) ?? 0, 0)} changes the disc here.`
          : `Nearest change: ${units.speed(nearestFlip.wind_mps, 0)} from the ${compassPoint(nearestFlip.windFrom_deg)} makes it the ${nameOf(nearestFlip)}.`}
      </p>
      <svg viewBox={`0 0 ${SIZE} ${SIZE}`} role="img" aria-label={inWords(flips, discs)}>
        {flips.map(flip => {
          const letter = discs.indexOf(nameOf(flip));
          const [inner, outer] = radii(flip.wind_mps);
          const [x, y] = at(flip.windFrom_deg, (inner + outer) / 2);
          return (
            <g key={`${flip.wind_mps} ${flip.windFrom_deg}`} className={`rose-${letter % GROUNDS}`}>
              {inner === 0 ? (
                <circle cx={CENTRE} cy={CENTRE} r={outer} />
              ) : (
                <path d={cell(flip.windFrom_deg, 180 / directions, inner, outer)} />
              )}
              <text
                className={speeds.indexOf(flip.wind_mps) === 1 ? 'rose-inner' : undefined}
                x={inner === 0 ? CENTRE : x}
                y={inner === 0 ? CENTRE : y}
              >
                {LETTERS[letter] ?? '?'}
              </text>
            </g>
          );
        })}
        {(['N', 'E', 'S', 'W'] as const).map((letter, i) => {
          const [x, y] = at(i * 90, RIM + 10);
          return (
            <text key={letter} className="dial-letter" x={x} y={y}>
              {letter}
            </text>
          );
        })}
        <circle className="rose-today" cx={todayX} cy={todayY} r={8} />
      </svg>
      <ul>
        {discs.map((disc, i) => (
          <li key={disc}>
            <span className={`rose-key rose-${i % GROUNDS}`}>{LETTERS[i] ?? '?'}</span> {disc}
          </li>
        ))}
      </ul>
      <p className="soft">
        Outwards the wind is stronger: {speeds.map(speed => units.speed(speed, 0).split(' ')[0]).join(', ')}{' '}
        {units.speed(0).split(' ')[1]}. The ring marks today.
      </p>
    </div>
  );
}

const countOf = (flips: readonly Flip[], name: string) => flips.filter(flip => nameOf(flip) === name).length;

function at(bearing_deg: number, radius: number): readonly [number, number] {
  const angle = (bearing_deg * Math.PI) / 180;
  return [CENTRE + radius * Math.sin(angle), CENTRE - radius * Math.cos(angle)];
}

function cell(middle_deg: number, half_deg: number, inner: number, outer: number): string {
  const [a, b, c, d] = [
    at(middle_deg - half_deg, inner),
    at(middle_deg - half_deg, outer),
    at(middle_deg + half_deg, outer),
    at(middle_deg + half_deg, inner),
  ];
  return `M${a[0]} ${a[1]}L${b[0]} ${b[1]}A${outer} ${outer} 0 0 1 ${c[0]} ${c[1]}L${d[0]} ${d[1]}A${inner} ${inner} 0 0 0 ${a[0]} ${a[1]}Z`;
}

function inWords(flips: readonly Flip[], discs: readonly string[]): string {
  return `The choice in ${flips.length} winds. ${discs.map(disc => `${disc} in ${countOf(flips, disc)}`).join(', ')}.`;
}
