/** A length in metres, or what is wrong with the text and how to write it. */
export type OsmLength = Readonly<{ ok: true; length_m: number }> | Readonly<{ ok: false; message: string }>;

/** Exact: international yard and pound agreement of 1959, as in NIST SP 811 (2008), App. B.8. */
const metresPerFoot = 0.3048;
const metresPerInch = 0.0254;
const metresPerUnit: Readonly<Record<string, number>> = {
  ...{ '': 1, m: 1, metre: 1, metres: 1, meter: 1, meters: 1, cm: 0.01, km: 1000 },
  ...{ ft: metresPerFoot, feet: metresPerFoot, foot: metresPerFoot, "'": metresPerFoot },
  ...{ yd: 0.9144, yds: 0.9144, yard: 0.9144, yards: 0.9144 },
  ...{ in: metresPerInch, inch: metresPerInch, inches: metresPerInch, '"': metresPerInch },
};
const number = '[+-]?(?:\\d+\\.?\\d*|\\.\\d+)';
const oneUnit = new RegExp(`^(${number})\\s*([a-z]*|'|")$`);
const feetAndInches = /^(\d+)\s*(?:'|ft|feet|foot)\s*(\d+(?:\.\d+)?)\s*(?:"|in|inch|inches)$/;

/**
 * A length as OpenStreetMap writes it: metres unless a unit follows (`12 ft`, `40'`, `12' 6"`, `120 yd`).
 * @param value - tag value; a JSON number is metres
 * @returns metres (may be negative: the range is the caller's to check)
 * @source OpenStreetMap wiki, Map features/Units
 */
export function parseOsmLength(value: string | number | boolean): OsmLength {
  if (typeof value === 'number') {
    return Number.isFinite(value) ? { ok: true, length_m: value } : bad(String(value), 'it must be a finite number');
  }
  const text = plain(String(value));
  const both = feetAndInches.exec(text);
  if (both) return { ok: true, length_m: Number(both[1]) * metresPerFoot + Number(both[2]) * metresPerInch };
  const match = oneUnit.exec(text);
  if (!match) return bad(String(value), advice(text));
  const perUnit = Object.hasOwn(metresPerUnit, match[2]!) ? metresPerUnit[match[2]!] : undefined;
  if (perUnit === undefined)
    return bad(String(value), `"${match[2]}" is not a unit known here; use m, ft, in, yd, cm or km`);
  const length_m = Number(match[1]) * perUnit;
  return Number.isFinite(length_m) ? { ok: true, length_m } : bad(String(value), 'it must be a finite number');
}

/** Lower case, with typographic minus and prime signs brought to their keyboard forms. */
function plain(text: string): string {
  const keyboard = text.trim().toLowerCase().replaceAll('−', '-');
  return keyboard.replace(/[′’ʹ]/g, "'").replace(/[″”ʺ]|''/g, '"');
}

function advice(text: string): string {
  const comma = /^([+-]?\d+),(\d+)(.*)$/.exec(text);
  if (comma) return `write the decimals after a point: ${comma[1]}.${comma[2]}${comma[3]}`;
  if (/\d\s*(?:-|;|–|to|\.\.)\s*\d/.test(text)) return 'give one number, not a range or a list';
  if (/^[~<>≈]|^(?:about|ca)/.test(text)) return 'give the number alone, without a sign before it';
  return 'write a number in metres, such as 3.5, or with a unit, such as 12 ft or 120 yd';
}

function bad(text: string, advice: string): OsmLength {
  return { ok: false, message: `"${text}" is not a length: ${advice}` };
}
