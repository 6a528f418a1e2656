import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import type { PenaltyKind } from '../../core/review/thrown.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import type { UnitsChoice } from '../../core/units/units-choice.ts';
import type { RoundThrow } from '../state/rounds.ts';
import { bareLength, readLength, readSide } from '../words/read-quantity.ts';

/** A throw while it is entered; texts as typed, '' for not written. */
export type ThrowDraft = Readonly<{
  discId: string;
  hand: '' | 'backhand' | 'forehand';
  shape: '' | NonNullable<RoundThrow['shape']>;
  power: string;
  /** Degrees right of the basket. */
  aim: string;
  toBasket: string;
  side: string;
  isBeyond: boolean;
  tapped: LocalPoint | null;
  penalty: '' | PenaltyKind;
  /** Where play went on after a penalty. */
  lieToBasket: string;
  lieTapped: LocalPoint | null;
  hit: boolean;
  /** Height, bank and launch of the planned shot, when it was thrown as planned. */
  planned: Pick<RoundThrow, 'height' | 'hyzer_deg' | 'launch_deg' | 'aimBearing_deg'> | null;
  /** Of a throw that is changed: more than one penalty can be kept, not entered. */
  penalties: RoundThrow['penalties'] | null;
}>;

export const EMPTY_DRAFT: ThrowDraft = {
  discId: '',
  hand: '',
  shape: '',
  power: '',
  aim: '',
  toBasket: '',
  side: '',
  isBeyond: false,
  tapped: null,
  penalty: '',
  lieToBasket: '',
  lieTapped: null,
  hit: false,
  planned: null,
  penalties: null,
};

/** True while at most the disc was chosen. */
export const isUntouched = (draft: ThrowDraft): boolean =>
  JSON.stringify({ ...draft, discId: '' }) === JSON.stringify(EMPTY_DRAFT);

type Units = Pick<UnitsChoice, 'length'>;

/** @param basketBearing_deg - of the basket from the lie, to count the aim from */
export function throwOf(
  draft: ThrowDraft,
  holed: boolean,
  basketBearing_deg: number,
  units: Units,
): Result<RoundThrow> {
  const problems: Problem[] = [];
  const rest = holed
    ? null
    : placeOf(draft.tapped, draft.toBasket, draft.side, draft.isBeyond, units, 'to basket', problems);
  const lie =
    holed || draft.penalty === ''
      ? null
      : placeOf(draft.lieTapped, draft.lieToBasket, '', false, units, 'went on from', problems);
  const aim = aimOf(draft.aim, problems);
  const goesBack = draft.penalty !== '' && draft.penalty !== 'hazard';
  if (!holed && rest === null && lie === null && !goesBack && problems.length === 0)
    problems.push({
      path: 'to basket',
      message: 'write how far from the basket it came to rest, or tap it on the map',
    });
  if (problems.length > 0) return { ok: false, problems };
  const { discId, hand, shape, power, hit, penalty, planned } = draft;
  return {
    ok: true,
    value: {
      ...(discId !== '' && { discId }),
      ...(hand !== '' && { hand }),
      ...(shape !== '' && { shape }),
      ...(power !== '' && { power: Number(power) }),
      ...(aim !== null && { aimBearing_deg: tenth((basketBearing_deg + aim + 720) % 360) }),
      ...(planned !== null && planned),
      ...(hit && { hit }),
      ...(rest !== null && { rest }),
      ...(lie !== null && { lie }),
      ...(penalty !== '' &&
        !holed && { penalties: draft.penalties?.[0]?.kind === penalty ? draft.penalties : [{ kind: penalty }] }),
      ...(holed && { holed }),
    },
  };
}

function placeOf(
  tapped: LocalPoint | null,
  toBasket: string,
  side: string,
  isBeyond: boolean,
  units: Units,
  field: string,
  problems: Problem[],
): RoundThrow['rest'] | null {
  if (tapped !== null) return { east_m: tenth(tapped[0]), north_m: tenth(tapped[1]) };
  if (toBasket.trim() === '') {
    if (side.trim() !== '') problems.push({ path: field, message: 'a side needs the distance to the basket too' });
    return null;
  }
  const distance = readLength(toBasket, units, field);
  const aside = readSide(side, units, 'side');
  if (!distance.ok) problems.push(...distance.problems);
  else if (distance.value < 0) problems.push({ path: field, message: 'must not be negative' });
  if (!aside.ok) problems.push(...aside.problems);
  if (!distance.ok || !aside.ok) return null;
  return {
    toBasket_m: distance.value,
    ...(aside.value !== null && { side_m: aside.value }),
    ...(isBeyond && { isBeyond }),
  };
}

/** Degrees right of the basket, "-3", "3 left"; null when nothing is written. */
function aimOf(text: string, problems: Problem[]): number | null {
  if (text.trim() === '') return null;
  const found = /^([+-]?\d+(?:\.\d+)?)\s*°?\s*(l|left|r|right)?$/i.exec(text.trim().replace('−', '-'));
  if (found === null || Math.abs(Number(found[1])) > 180) {
    problems.push({ path: 'aim', message: 'write degrees off the basket: 0, 5 left, 5 right' });
    return null;
  }
  return Number(found[1]) * (found[2]?.toLowerCase().startsWith('l') ? -1 : 1);
}

/** A kept throw, to be changed. */
export function draftOf(t: RoundThrow, basketBearing_deg: number, units: Units): ThrowDraft {
  const { rest, lie, aimBearing_deg, hyzer_deg, launch_deg, height } = t;
  const isPlanned = hyzer_deg !== undefined || launch_deg !== undefined || height !== undefined;
  const byDistance = rest !== undefined && 'toBasket_m' in rest ? rest : undefined;
  return {
    discId: t.discId ?? '',
    hand: t.hand ?? '',
    shape: t.shape ?? '',
    power: t.power === undefined ? '' : String(t.power),
    aim: aimBearing_deg === undefined || isPlanned ? '' : String(tenth(turn(basketBearing_deg, aimBearing_deg))),
    toBasket: bareLength(byDistance?.toBasket_m, units),
    side: bareLength(byDistance?.side_m, units),
    isBeyond: byDistance?.isBeyond ?? false,
    tapped: rest !== undefined && 'east_m' in rest ? [rest.east_m, rest.north_m] : null,
    penalty: t.penalties?.[0]?.kind ?? '',
    lieToBasket: lie !== undefined && 'toBasket_m' in lie ? bareLength(lie.toBasket_m, units) : '',
    lieTapped: lie !== undefined && 'east_m' in lie ? [lie.east_m, lie.north_m] : null,
    hit: t.hit ?? false,
    penalties: t.penalties ?? null,
    planned: isPlanned
      ? {
          ...(height !== undefined && { height }),
          ...(hyzer_deg !== undefined && { hyzer_deg }),
          ...(launch_deg !== undefined && { launch_deg }),
          ...(aimBearing_deg !== undefined && { aimBearing_deg }),
        }
      : null,
  };
}

const tenth = (value: number) => Math.round(value * 10) / 10 + 0;
const turn = (from_deg: number, to_deg: number) => ((((to_deg - from_deg) % 360) + 540) % 360) - 180;
