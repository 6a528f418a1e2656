/** The form in which two spellings of a hole's ref are the same: `#07`, `07` and `7` are one hole. */
export function refKey(ref: string): string {
  return ref
    .trim()
    .toLowerCase()
    .replace(/^#\s*/, '')
    .replace(/^0+(?=\d)/, '');
}

/** The holes a `ref` names; OpenStreetMap parts several values with semicolons. */
export function refKeys(ref: string | undefined): string[] {
  return (ref ?? '')
    .split(';')
    .map(refKey)
    .filter(key => key !== '');
}

/** Natural order of refs: 1, 2, 3, 10, 10A, B. Own comparison, so that it is the same under every language setting. */
export function compareRefs(a: string, b: string): number {
  const [left, right] = [chunks(refKey(a)), chunks(refKey(b))];
  for (const [i, l] of left.entries()) {
    const r = right[i];
    if (r === undefined) return 1;
    const numbers = [Number(l), Number(r)] as const;
    const order =
      Number.isNaN(numbers[0]) || Number.isNaN(numbers[1]) ? (l < r ? -1 : l > r ? 1 : 0) : numbers[0] - numbers[1];
    if (order !== 0) return order;
  }
  return left.length - right.length;
}

function chunks(ref: string): string[] {
  return ref.match(/\d+|\D+/g) ?? [];
}
