import { inUnits } from '../../../core/sheet/words/lengths.ts';
import { isSpecialShape } from '../../../core/strategy/flown-as.ts';
import type { HolePlan, ShotReport } from '../../../core/strategy/plan-report.ts';
import { specialRelease } from '../../../core/strategy/special-words.ts';
import { compassPoint } from '../../../core/units/compass-point.ts';
import { formatLength } from '../../../core/units/length.ts';
import { percent } from '../../../core/units/percent.ts';
import { formatSpeed } from '../../../core/units/speed.ts';
import { bullets, wrapped } from '../paragraphs.ts';
import { CHOSEN, lengthIn, sideIn, type Units } from '../show-units.ts';
import { table } from '../table.ts';
import { plain, type Terminal } from '../terminal.ts';
import { aimOf } from './plan-table.ts';

const LEAST_SHOWN = 0.005;
const MOST_ALTERNATIVES = 8;

/** One hole: the throw, what follows it, why, and what else there is with its cost. */
export function holePlan(hole: HolePlan, units: Units, terminal: Terminal): string {
  const { columns } = terminal;
  const name = hole.name === undefined ? '' : ` "${plain(hole.name)}"`;
  const scores = hole.scoreDistribution.filter(({ chance }) => chance >= LEAST_SHOWN);
  const shown = hole.alternatives.slice(0, MOST_ALTERNATIVES);
  const more = hole.alternatives.length - shown.length;
  return [
    `Hole ${plain(hole.ref)}${name}, par ${hole.par}, ${formatLength(hole.playLength_m, CHOSEN[units])}\n`,
    ...(hole.wind === undefined ? [] : [wrapped(ownWind(hole.wind, units), columns, '  when    ')]),
    wrapped(`${hole.choice.title}: ${hole.choice.disc}, ${hole.choice.hand}`, columns, '  throw   '),
    wrapped(howTo(hole.choice, units), columns, '  how     '),
    wrapped(odds(hole.choice, units), columns, '  odds    '),
    ...hole.next.map((next, i) => wrapped(nextLine(next, units), columns, i === 0 ? '  then    ' : ' '.repeat(10))),
    wrapped(
      `${scores.map(({ throws, chance }) => `${throws}: ${percent(chance)}`).join(', ')}; ${hole.expectedThrows.toFixed(2)} expected`,
      columns,
      '  score   ',
    ),
    ...hole.choice.notes.map(note => wrapped(inUnits(note, CHOSEN[units]), columns, '  note    ')),
    ...(hole.reasons.length > 0 ? ['  why not\n'] : []),
    ...hole.reasons.map(reason =>
      wrapped(
        `${reason.against}${reason.hand === 'forehand' ? ', forehand' : ''}${reason.special === undefined ? '' : `, ${reason.special}`} (${cost(reason.costs)}): ${inUnits(reason.text, CHOSEN[units])}`,
        columns,
        '    - ',
      ),
    ),
    ...(hole.flips.length > 0 ? [wrapped(windLine(hole, units), columns, '  wind    ')] : []),
    ...(shown.length > 0 ? ['\n', alternatives(shown, units, terminal)] : []),
    ...(more > 0 ? [wrapped(`and ${more} more (--json has all)`, columns, '  ')] : []),
    ...(hole.cautions.length > 0
      ? [
          '  careful\n',
          bullets(
            hole.cautions.map(text => inUnits(text, CHOSEN[units])),
            columns,
            '    ',
          ),
        ]
      : []),
  ].join('');
}

function ownWind({ at, speed_mps, from_deg, gust_mps }: NonNullable<HolePlan['wind']>, units: Units): string {
  const speed = (mps: number) => formatSpeed(mps, CHOSEN[units]);
  return `about ${at}: wind ${speed(speed_mps)} from ${from_deg.toFixed(0)}° (${compassPoint(from_deg)}), gusts ${speed(gust_mps)}`;
}

function howTo(shot: ShotReport, units: Units): string {
  const bank = Math.round(Math.abs(shot.hyzer_deg));
  const parts = [
    isSpecialShape(shot.shape)
      ? `${shot.shape}, ${specialRelease({ shape: shot.shape, hyzer_deg: shot.hyzer_deg })}`
      : bank === 0
        ? 'flat'
        : `${bank}° ${shot.hyzer_deg > 0 ? 'hyzer' : 'anhyzer'}`,
    // an overhead throw's speed is what reproduces its distance, not what leaves the hand
    `power ${percent(shot.power)}${shot.shape === 'overhead' ? '' : ` (${formatSpeed(shot.releaseSpeed_mps, CHOSEN[units])})`}`,
    `launch ${shot.launch_deg.toFixed(0)}°`,
    `aim ${aimOf(shot.aimFromBasket_deg)}${Math.round(shot.aimFromBasket_deg) === 0 ? ' at the basket' : ' of the basket'} (${shot.aimBearing_deg.toFixed(0)}°)`,
    `goes ${formatLength(shot.distance_m, CHOSEN[units])}, ends ${side(shot.finish_m, units)}, ${formatLength(shot.apex_m, CHOSEN[units])} high`,
  ];
  return parts.join(', ');
}

function side(finish_m: number, units: Units): string {
  const text = sideIn(units, finish_m);
  if (text === 'straight') return 'on its line';
  const [size, word] = text.split(' ');
  return `${size} ${CHOSEN[units].length} ${word} of its line`;
}

function odds(shot: ShotReport, units: Units): string {
  const near = (length_m: number) => formatLength(length_m, CHOSEN[units], 0);
  const penalties = [
    ['out-of-bounds', shot.outOfBoundsChance],
    ['hazard', shot.hazardChance],
    ['missed mando', shot.mandoChance],
    ['lost disc', shot.lostChance ?? 0],
  ] as const;
  const named = penalties
    .filter(([, chance]) => chance >= LEAST_SHOWN)
    .map(([what, chance]) => `${what} ${percent(chance)}`);
  return [
    `clean flight ${percent(shot.cleanChance)}`,
    ...(shot.holedChance === undefined ? [] : [`goes in ${percent(shot.holedChance)}`]),
    named.length > 0 ? named.join(', ') : `penalty ${percent(shot.penaltyChance)}`,
    `within ${near(3)} ${percent(shot.parkedChance)}`,
    `${near(10)} ${percent(shot.within10mChance)}`,
    `${near(20)} ${percent(shot.within20mChance)}`,
  ].join(', ');
}

function nextLine(next: HolePlan['next'][number], units: Units): string {
  const where = `after ${next.after} (${percent(next.chance)}), from ${formatLength(next.toBasket_m, CHOSEN[units])}`;
  if (next.shot === undefined) return `${where}: putt, ${next.expectedThrows.toFixed(2)} to hole out`;
  return `${where}: ${next.shot.title}: ${next.shot.disc}, power ${percent(next.shot.power)}, aim ${aimOf(next.shot.aimFromBasket_deg)}, ${next.expectedThrows.toFixed(2)} to hole out`;
}

function windLine({ nearestFlip, flips }: HolePlan, units: Units): string {
  if (nearestFlip === null) {
    const strongest = Math.max(...flips.map(flip => flip.wind_mps));
    return `no wind up to ${formatSpeed(strongest, CHOSEN[units])} from any side calls for another disc`;
  }
  const { choice, wind_mps, windFrom_deg } = nearestFlip;
  const wind =
    wind_mps === 0 ? 'calm air' : `${formatSpeed(wind_mps, CHOSEN[units])} from ${compassPoint(windFrom_deg)}`;
  return `${wind} would make it ${choice.disc}, ${choice.hand}: the nearest change that does`;
}

const cost = (throws: number) => (throws < 0.005 ? 'about the same' : `costs ${throws.toFixed(2)}`);

function alternatives(shots: readonly ShotReport[], units: Units, terminal: Terminal): string {
  return table(
    [
      { head: 'instead', flexible: true },
      { head: 'disc', flexible: true },
      { head: 'power', align: 'right' },
      { head: 'aim' },
      { head: `goes\n${CHOSEN[units].length}`, align: 'right' },
      { head: `in\n${formatLength(10, CHOSEN[units], 0)}`, align: 'right' },
      { head: 'clean\nflight', align: 'right' },
      { head: 'pen-\nalty', align: 'right' },
      { head: 'costs', align: 'right' },
    ],
    shots.map(shot => [
      shot.title,
      shot.disc,
      percent(shot.power),
      aimOf(shot.aimFromBasket_deg),
      lengthIn(units, shot.distance_m),
      percent(shot.within10mChance),
      percent(shot.cleanChance),
      percent(shot.penaltyChance),
      shot.tie ? 'equal' : `+${shot.regret.toFixed(2)}`,
    ]),
    terminal,
  );
}
