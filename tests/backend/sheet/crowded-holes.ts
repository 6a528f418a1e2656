import type { SheetHole } from '../../../core/sheet/sheet-input.ts';
import type { PlanReport } from '../../../core/strategy/plan-report.ts';
import { sampleHole, sampleShot, sampleSummary } from '../../core/sheet/sheet-sample.ts';

/** Invented names a file may hold: short, long, unbroken, of other scripts, right to left, wide. */
const NAMES = [
  'P',
  'Throwing putter',
  'Overstable low-speed driver, the worn one',
  'My very own and rather long name for a beaten-in understable fairway driver, number seventeen',
  'Unbrokennameofadiscthatneverendsandhasnospacesinitwhatsoeverforalongwhile',
  'WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW',
  '長い名前のディスク、とても長い名前のディスク、もっと長い名前のディスク、まだ長い',
  'قرص طويل الاسم جدا للرميات القصيرة والمتوسطة في الريح',
  'Диск с очень длинным именем для бросков против сильного ветра',
  '🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏🥏',
] as const;

const TITLES = [
  'putter off the tee, flat',
  'low low-speed driver placed short of the green, anhyzer, forehand',
  'distance driver placed short of the green, hyzer, forehand',
] as const;

const CAUTIONS = [
  'About 33 % of these throws end within 15 m of building (features[71]): wait until nobody is there.',
  'About 14 % of these throws end within 15 m of a playground with a long name (features[72]): wait until nobody is there.',
  'A sentence of the plan that the sheet does not know and keeps whole, however long it may be (features[73]).',
];

/** Holes from sparse to crowded: every name with every title, alternating how much there is to say. */
export function crowdedHoles(): SheetHole[] {
  const base = sampleHole();
  return NAMES.flatMap((disc, n) =>
    TITLES.flatMap((title, t) =>
      [0, 1, 2].map((crowd): SheetHole => {
        const i = n * TITLES.length * 3 + t * 3 + crowd;
        const choice = sampleShot({
          disc,
          title,
          hand: t > 0 ? 'forehand' : 'backhand',
          shape: t === 2 ? 'hyzer' : 'flat',
          hyzer_deg: t === 2 ? 12 : 0,
          basis: crowd === 2 ? 'predicted' : 'measured',
          hazardChance: crowd === 2 ? 0.11 : 0,
          outOfBoundsChance: crowd === 0 ? 0 : 0.12,
          aimFromBasket_deg: [5, -28, 14][crowd]!,
          aimBearing_deg: 90 + [5, -28, 14][crowd]!,
        });
        const ref = crowd === 2 ? `Long${i}B` : `${i + 1}`;
        const name = crowd === 0 ? undefined : NAMES[(n + crowd) % NAMES.length]!;
        const plan = {
          ...base.plan,
          ref,
          choice,
          alternatives: [choice, { ...choice, discId: 'other', tie: true }],
          parSource: crowd === 2 ? ('derived' as const) : ('tagged' as const),
          cautions: CAUTIONS.slice(0, crowd + 1),
          next: base.plan.next.map(next => ({ ...next, ...(next.shot && { shot: choice }) })),
        };
        const blindSpots =
          crowd === 0 ? [] : [{ target: 'basket' as const, station_m: 80, blockedAt_m: 40, blockedBy: 'x' }];
        return {
          plan,
          map: { ...base.map, ref, ...(name !== undefined && { name }) },
          report: { ...base.report, blindSpots },
          ...(crowd === 2 && { note: 'Wind swirls behind the barn, wait for a lull; the second tree is dead.' }),
        };
      }),
    ),
  );
}

const DAY = [
  'Thunder heard at all is near enough: stop, go indoors or into a hard-topped car, and wait 30 minutes after the last thunder. Lone trees, open shelters, hill tops and baskets are not safe. Defer to local rules and course staff.',
  'Never throw while anyone could be hit; wait until the way is clear, and shout if a disc flies towards somebody.',
  'Gusts reach Beaufort 8: twigs and dead branches break. Do not linger under trees.',
  'Feels like 41 °C (106 °F) in the shade, more in the sun: danger; heat cramps and exhaustion are likely, heat stroke possible: play early or late, or not at all.',
];

/** A round with everything there may be to say over its holes. */
export function crowdedSummary(): Omit<PlanReport, 'holes'> {
  const carried = Array.from({ length: 14 }, (_, i) => ({
    disc: `${NAMES[i % NAMES.length]!} ${i}`,
    discId: `d${i}`,
    worth: 0.1,
  }));
  return sampleSummary({
    course: NAMES[3],
    player: NAMES[5],
    cautions: DAY,
    notes: Array.from(
      { length: 12 },
      (_, i) => `Session ${i + 1} says nothing of the wind: taken as calm at 10 m, which it may not have been.`,
    ),
    bag: { carried, bestLeftHome: null, expectedThrows: 57, expectedWithAll: 56.8 },
  });
}
