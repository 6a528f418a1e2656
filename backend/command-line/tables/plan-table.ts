import { inUnits } from '../../../core/sheet/words/lengths.ts';
import type { HolePlan, PlanReport } from '../../../core/strategy/plan-report.ts';
import { compassPoint } from '../../../core/units/compass-point.ts';
import { formatLength } from '../../../core/units/length.ts';
import { percent } from '../../../core/units/percent.ts';
import { formatSpeed, MPS_PER } from '../../../core/units/speed.ts';
import { bullets, wrapped } from '../paragraphs.ts';
import { CHOSEN, lengthIn, type Units } from '../show-units.ts';
import { type Column, table } from '../table.ts';
import { plain, type Terminal } from '../terminal.ts';

/** Narrower terminals go without the wind of each hole and write throw and disc together. */
const WIDE_COLUMNS = 100;

/** One row a hole, the round, and what to be careful about. */
export function planTable(plan: PlanReport, units: Units, terminal: Terminal): string {
  const { length, speed } = CHOSEN[units];
  const { columns } = terminal;
  const wide = columns >= WIDE_COLUMNS;
  const throwHeads: Column[] = wide
    ? [
        { head: `wind\n${speed === 'mps' ? 'm/s' : speed}` },
        { head: 'throw', flexible: true },
        { head: 'disc', flexible: true },
      ]
    : [{ head: 'throw', flexible: true }];
  const body = table(
    [
      { head: 'hole', align: 'right' },
      { head: 'par' },
      { head: length, align: 'right' },
      ...throwHeads,
      { head: 'aim' },
      { head: `in\n${formatLength(10, CHOSEN[units], 0)}`, align: 'right' },
      { head: 'clean\nflight', align: 'right' },
      { head: 'pen-\nalty', align: 'right' },
      { head: 'throws', align: 'right' },
    ],
    plan.holes.map(hole => row(hole, units, wide)),
    terminal,
  );
  const derived = plan.holes.some(hole => hole.parSource === 'derived');
  const say = (text: string) => inUnits(text, CHOSEN[units]);
  const flagged = plan.holes.filter(hole => hole.cautions.length > 0);
  return [
    `${plain(plan.course)}, ${plain(plan.player)}\n`,
    wrapped(airLine(plan, units), columns),
    '\n',
    body,
    '\n',
    wrapped(roundLine(plan), columns),
    ...targetLines(plan).map(line => wrapped(line, columns)),
    ...bagLines(plan).map(line => wrapped(line, columns)),
    ...(derived ? [wrapped('* par not on the map: worked out from the length', columns)] : []),
    ...(plan.holes.length > 1 ? [wrapped('Why, and what else: --holes 3 or --detail.', columns)] : []),
    '\nBe careful:\n',
    bullets(
      [
        ...flagged.flatMap(hole => hole.cautions.map(text => `hole ${hole.ref}: ${say(text)}`)),
        ...plan.cautions.map(say),
      ],
      columns,
    ),
    ...(plan.air.notes.length + plan.notes.length > 0
      ? ['\nAssumed:\n', bullets([...plan.air.notes, ...plan.notes].map(say), columns)]
      : []),
  ].join('');
}

function row(hole: HolePlan, units: Units, wide: boolean): string[] {
  const { choice } = hole;
  return [
    hole.ref,
    `${hole.par}${hole.parSource === 'derived' ? '*' : ''}`,
    lengthIn(units, hole.playLength_m),
    ...(wide ? [windOf(hole, units), choice.title, choice.disc] : [`${choice.title}: ${choice.disc}`]),
    aimOf(choice.aimFromBasket_deg),
    percent(choice.within10mChance),
    percent(choice.cleanChance),
    percent(choice.penaltyChance),
    hole.expectedThrows.toFixed(2),
  ];
}

/** The larger part of the wind along or across the line to the basket, as the thrower feels it. */
function windOf({ headwind_mps, windFromRight_mps }: HolePlan, units: Units): string {
  const shown = (speed_mps: number) => Math.round(Math.abs(speed_mps) / MPS_PER[CHOSEN[units].speed]);
  const parts = [
    { size: shown(headwind_mps), word: headwind_mps > 0 ? 'head' : 'tail' },
    { size: shown(windFromRight_mps), word: windFromRight_mps > 0 ? 'right' : 'left' },
  ].filter(part => part.size > 0);
  const main = parts.sort((a, b) => b.size - a.size)[0];
  return main === undefined ? 'calm' : `${main.word} ${main.size}`;
}

/** Against the line to the basket. */
export function aimOf(aimFromBasket_deg: number): string {
  const size = Math.round(Math.abs(aimFromBasket_deg));
  return size === 0 ? 'straight' : `${size}° ${aimFromBasket_deg > 0 ? 'right' : 'left'}`;
}

function airLine({ air, seed }: PlanReport, units: Units): string {
  const speed = (speed_mps: number) => formatSpeed(speed_mps, CHOSEN[units]);
  const wind =
    air.windSpeed_mps === 0
      ? 'calm'
      : `wind ${speed(air.windSpeed_mps)} from ${air.windFrom_deg.toFixed(0)}° (${compassPoint(air.windFrom_deg)}) at ${formatLength(10, CHOSEN[units], 0)}, gusts ${speed(air.gust_mps)}`;
  return `${wind}; ${air.source}; air ${air.density_kgpm3.toFixed(2)} kg/m³; seed ${seed}`;
}

function targetLines({ round: { target } }: PlanReport): string[] {
  if (target === undefined) return [];
  return [
    `Chance of ${target.throws} throws or fewer: ${percent(target.chance)}, looking at the score as the round goes; ${percent(target.chanceEven)} with the fewest expected throws on every hole.`,
  ];
}

function bagLines({ bag }: PlanReport): string[] {
  if (bag === undefined) return [];
  const discs = bag.carried.map(({ disc, worth }) => `${disc} (${worth.toFixed(2)})`).join(', ');
  const home = bag.bestLeftHome;
  return [
    `Carry to throw, with what a round loses without each: ${discs}.`,
    `With these ${bag.expectedThrows.toFixed(1)} throws, with everything ${bag.expectedWithAll.toFixed(1)}${home === null ? '' : `; best left at home: ${home.disc} (${home.worth.toFixed(2)})`}.`,
  ];
}

function roundLine({ round, holes }: PlanReport): string {
  const over = round.expectedThrows - round.par;
  const against = Math.abs(over) < 0.05 ? 'on par' : `${Math.abs(over).toFixed(1)} ${over > 0 ? 'over' : 'under'} par`;
  return `${holes.length === 1 ? 'This hole' : `These ${holes.length} holes`}: ${round.expectedThrows.toFixed(1)} throws expected, give or take ${round.sd.toFixed(1)}; par ${round.par}, ${against}`;
}
