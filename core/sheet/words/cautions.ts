import type { HoleReport } from '../../geometry/hole-report.ts';
import type { HolePlan } from '../../strategy/plan-report.ts';
import type { UnitsChoice } from '../../units/units-choice.ts';
import { shortened } from '../markup.ts';
import { far, inUnits } from './lengths.ts';
import { plainSource } from './plain-source.ts';

const LONGEST_NAME = 30;

/** On every card, whatever the hole: the few words that must not be missed. */
export const SHORT_RULES =
  'Nobody in reach before you throw. Thunder: indoors, 30 min. Pain: stop. Local rules and staff come first.';

/** On every sheet in full, beside what the day itself asks for. */
export const SHEET_CAUTIONS: readonly string[] = [
  'You cannot see where it lands: send a spotter to a safe side and wait for the sign, or, alone, walk forward and look first.',
  'Pain in elbow, shoulder, back or knee: stop throwing. A licensed doctor or physiotherapist decides, not a plan. Warm up, and build up the number of hard throws over weeks.',
  'This sheet is advice from a model, no ruling: local rules, posted signs and the course’s staff come first.',
];

const PEOPLE_CROSS = /^People may cross at /;
const NOT_SEEN = /^The landing ground at /;
const ENDS_NEAR = /^About (\d+ %) of these throws end within (\d+ m) of (.+): wait until nobody is there\.$/;

/**
 * What this hole asks to be careful about, shortened for a card. What the plan says in words of its own is kept whole.
 * @param plan - its cautions, as the planner writes them
 */
export function holeCautionWords(report: HoleReport, plan: Pick<HolePlan, 'cautions'>, units: UnitsChoice): string[] {
  const others = plan.cautions.filter(text => !PEOPLE_CROSS.test(text) && !NOT_SEEN.test(text));
  const near = others.filter(text => ENDS_NEAR.test(text));
  return [
    ...peopleWords(report, near, units),
    ...others.filter(text => !near.includes(text)).map(text => inUnits(plainSource(text), units)),
    ...blindWords(report),
  ];
}

/** Where people cross, and how many throws end near them, in one breath. */
function peopleWords({ pathCrossings }: HoleReport, near: readonly string[], units: UnitsChoice): string[] {
  const crossing = pathCrossings.map(
    ({ station_m, what }) => `${shortened(plainSource(what), LONGEST_NAME)} at ${far(station_m, units)}`,
  );
  const ends = near.map(text => {
    const [, share, within, where] = ENDS_NEAR.exec(text)!;
    return `${share} end within ${inUnits(within!, units)} of ${shortened(plainSource(where!), LONGEST_NAME)}`;
  });
  if (crossing.length + ends.length === 0) return [];
  return [`PEOPLE: ${[...crossing, ...ends].join('; ')}. Wait until clear.`];
}

function blindWords({ blindSpots }: HoleReport): string[] {
  if (blindSpots.length === 0) return [];
  const targets = [...new Set(blindSpots.map(({ target }) => target))].join(' and ');
  return [`BLIND ${targets}: send a spotter, or walk up and look.`];
}
