import { dayCautions } from '../air/cautions.ts';
import type { Day } from '../air/day.ts';
import type { SessionLoad } from './session-load.ts';

export type PracticeLoad = Readonly<{
  /** Full throws of one round, as simulated, and of the drills. */
  fullThrows: number;
  drillThrows: number;
  forehandOnly: boolean;
  usesOtherTees: boolean;
  /** The most that the player's fieldwork has in one day. */
  before: SessionLoad;
}>;

/** More full throws in a day than this are a long session (assumed, no source). */
const LONG_SESSION = 60;
/** The same for forehands only, which load elbow and shoulder more (common practice; the number is assumed). */
const LONG_FOREHAND = 30;

/** What to be careful about in a practice round, the people first. Plain sentences. */
export function practiceCautions(day: Day, load: PracticeLoad): string[] {
  const [first, people, ...weather] = dayCautions(day).map(({ text }) => text);
  return [
    people!,
    ...(load.usesOtherTees
      ? [
          'From another tee than usual you may throw across people who do not expect it: look at the tees behind and beside you first.',
        ]
      : []),
    ...overuse(load),
    'Warm up first: some minutes of easy movement, then about ten throws from soft to full. Build up the number of hard throws over weeks.',
    'Pain in elbow, shoulder, back or knee: stop throwing. A licensed doctor or physiotherapist decides, not a plan.',
    'Practise only where and when it is allowed, one throw from each lie, and let groups through: local rules, posted signs and the course’s staff come first.',
    first!,
    ...weather,
  ];
}

function overuse({ fullThrows, drillThrows, forehandOnly, before }: PracticeLoad): string[] {
  const round = Math.round(fullThrows);
  const all = round + drillThrows;
  const done = forehandOnly ? before.mostForehand : before.mostThrows;
  const hand = forehandOnly ? 'full forehands' : 'full throws';
  const counted = `About ${round} ${hand} in the round${drillThrows > 0 ? `, ${all} with all the drills` : ''}`;
  const own =
    done === 0
      ? forehandOnly
        ? 'your fieldwork has no day of forehands yet'
        : 'your fieldwork has no day to compare with'
      : `the most in one day of your fieldwork is ${done}`;
  const most = forehandOnly ? LONG_FOREHAND : LONG_SESSION;
  if (forehandOnly)
    return [
      `${counted}; ${own}. Forehand only loads elbow and shoulder one way: ${all > most || all > 2 * done ? 'leave the drills for another day, and stop earlier if the arm tires' : 'stop when the arm tires'} (common practice, no source).`,
    ];
  if (all <= most) return [`${counted}: stop when the arm tires.`];
  return [
    `${counted}: a long session (over ${most}, assumed); ${own}. Split it over two days, and stop when the arm tires.`,
  ];
}
