import type { FittedPlayer } from '../player/fitted-player.ts';
import { nameInText } from '../units/name-in-text.ts';
import { SUITS_FROM } from './course-fit.ts';
import type { PracticeRound } from './practice-report.ts';

/** What comes of the search, in a sentence or two. */
export function practiceText(limitWords: string, rounds: readonly PracticeRound[], courses: number): string {
  const [best] = rounds;
  if (best === undefined)
    return `None of the ${courses === 1 ? 'holes of this course suits' : `${courses} courses suits`} this limit (${limitWords}): they are too long for it, or too tight. Take shorter tees or a shorter course, or allow longer discs.`;
  const { target, holes, course } = best;
  return `${capital(limitWords)}: ${holes.length} ${holes.length === 1 ? 'hole' : 'holes'} of ${nameInText(course)}, ${best.expectedThrows.toFixed(1)} throws expected. A fair target is ${target.throws} (${againstPar(target.overPar)}): reached in ${percent(target.chance)} of simulated rounds${Math.abs(target.chance - 1 / 3) > FAR_OFF ? '; no whole score lies near one in three here' : ''}.`;
}

/** What every practice round rests on. */
export function practiceNotes(plays: number, rounds: number, player: Pick<FittedPlayer, 'putting'>): string[] {
  return [
    `Chances are simulated throw by throw: every hole ${plays} times, each throw flown with your scatter, gusts and everything in its way, then played on as the plan would from where it lies.`,
    `Throws are taken as independent of each other; what your fieldwork leaves unknown of a disc is part of each throw’s scatter. In ${rounds} more rounds it is the same for all throws of a disc in a round: the second chance given. Your form of the day, tiredness and nerves are in neither.`,
    player.putting.basis === 'predicted'
      ? 'Putts fall by an assumed curve: you have no putting log yet. Log some putts before you trust the target.'
      : 'Putts fall by your own curve, whatever disc you putt with under the limit.',
    `A hole suits when the look at its length, climb, wind and ceilings gives at least ${percent(SUITS_FROM)} to be within 20 m in the throws par allows before two putts (own choice). Trees and out-of-bounds are looked at when it is planned.`,
    'A fair target is the score reached nearest to one round in three, in one round of ten at least; scores are whole, so the chance is seldom exactly a third.',
  ];
}

/** So far off one in three that it should be said. */
const FAR_OFF = 0.12;

function againstPar(over: number): string {
  if (over === 0) return 'par';
  return `${Math.abs(over)} ${over > 0 ? 'over' : 'under'} par`;
}

const percent = (chance: number) => `${Math.round(100 * chance)} %`;
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
