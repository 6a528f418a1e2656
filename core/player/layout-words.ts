import { formatLength } from '../units/length.ts';
import { percent } from '../units/percent.ts';
import { formatSpeed } from '../units/speed.ts';
import type { UnitsChoice } from '../units/units-choice.ts';
import type { Lean } from './bag-layout.ts';
import type { ThrowsReport } from './throws-report.ts';

type Layout = ThrowsReport['layout'];

const LEAN_WORDS: Readonly<Record<Lean, string>> = {
  turns: 'turns (finishes on the side it does not fade to)',
  straight: 'finishes straight',
  fades: 'fades hard (finishes well to its fade side)',
};

/** Gaps and doubles of a bag in sentences, lengths in the reader's units. */
export function layoutSentences(layout: Layout, units: UnitsChoice): { gaps: string[]; doubles: string[] } {
  const length = (length_m: number) => formatLength(length_m, units, 0);
  const gaps = layout.gaps.map(
    ({ hand, shorter, longer, from_m, to_m, isSure }) =>
      `${capital(hand)}: nothing between ${shorter} (${length(from_m)}) and ${longer} (${length(to_m)}), ${length(to_m - from_m)} apart${isSure ? '' : '; not sure yet: more throws of both would tell'}.`,
  );
  const finishGaps = layout.finishGaps.map(({ hand, lean, longest_m, reach_m }) =>
    longest_m === null
      ? `${capital(hand)}: no disc that ${LEAN_WORDS[lean]}.`
      : `${capital(hand)}: no disc that ${LEAN_WORDS[lean]} beyond ${length(longest_m)}, while your longest goes ${length(reach_m)}.`,
  );
  const doubles = layout.doubles.map(
    ({ hand, discs, apart_m, tellApartChance, isSure }) =>
      `${capital(hand)}: ${discs[0]} and ${discs[1]} land ${length(apart_m)} apart, calm or into ${formatSpeed(layout.thresholds.headwind_mps, units, 0)}: one landing tells which it was ${percent(tellApartChance)} of the time (a coin: 50 %)${isSure ? '' : '; not sure yet: more throws of both would tell'}.`,
  );
  return { gaps: [...gaps, ...finishGaps], doubles };
}

/** What counts as a gap or a double, and how it is known. */
export function layoutRule({ thresholds }: Layout, units: UnitsChoice): string {
  const { gap_m, finishGap_m, double_sd, headwind_mps } = thresholds;
  const length = (length_m: number) => formatLength(length_m, units, 0);
  return `Assumed: a gap is more than ${length(gap_m)} between neighbours, or a kind of finish that ends ${length(finishGap_m)} before your longest disc; a double is two discs whose throws land within ${double_sd} of their own scatter, in calm air and into ${formatSpeed(headwind_mps, units, 0)}. A spare of a disc you trust is a good reason for a double.`;
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
