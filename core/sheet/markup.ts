/** Text from a file made safe inside an element or a quoted attribute: nothing in it can become markup, move or reverse what stands beside it. */
export function escaped(text: string): string {
  return withoutControls(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}

/** Control characters, direction marks, lone surrogates and non-characters become spaces, runs of space one. */
function withoutControls(text: string): string {
  return text
    .toWellFormed()
    .replace(/[\p{Cc}\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069\ufdd0-\ufdef\ufffe\uffff]/gu, ' ')
    .replace(/[^\S\u00a0]+/g, ' ')
    .trim();
}

/**
 * Text of at most so many characters; what is too long loses its middle, since names differ at either end.
 * @param most - at least 5
 */
export function shortened(text: string, most: number): string {
  const characters = Array.from(withoutControls(text));
  if (characters.length <= most) return characters.join('');
  const tail = Math.floor((most - 1) * 0.35);
  const head = most - 1 - tail;
  return `${characters.slice(0, head).join('').trimEnd()}…${characters.slice(-tail).join('').trimStart()}`;
}
