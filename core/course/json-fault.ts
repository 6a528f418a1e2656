const BLANK = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON text may not hold them
const TEXT = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[\da-fA-F]{4}))*"/y;
const WORD = /true|false|null/y;

type Want = 'value' | 'valueOrEnd' | 'keyOrEnd' | 'key' | 'colon' | 'commaOrEnd';

/**
 * Where a text stops being JSON: the offset of the first token that may not stand where it does, the text's length when it
 * just stops, or undefined for JSON. One pass without recursion, whatever the size: a parser that builds a tree with places
 * takes seconds and gigabytes on a large broken file.
 * @source RFC 8259, section 2 to 7
 */
export function jsonFaultAt(text: string): number | undefined {
  const closers: ('}' | ']')[] = [];
  let want: Want = 'value';
  let at = skip(BLANK, text, 0);
  while (at < text.length) {
    const sign = text[at]!;
    const isEnd = sign === closers.at(-1) && (want === 'commaOrEnd' || want === 'valueOrEnd' || want === 'keyOrEnd');
    if (isEnd) {
      closers.pop();
      want = 'commaOrEnd';
      at++;
    } else if (want === 'commaOrEnd') {
      if (sign !== ',' || closers.length === 0) return at;
      want = closers.at(-1) === '}' ? 'key' : 'value';
      at++;
    } else if (want === 'colon') {
      if (sign !== ':') return at;
      want = 'value';
      at++;
    } else if (want === 'key' || want === 'keyOrEnd') {
      const end = skip(TEXT, text, at);
      if (end === at) return at;
      want = 'colon';
      at = end;
    } else if (sign === '{' || sign === '[') {
      closers.push(sign === '{' ? '}' : ']');
      want = sign === '{' ? 'keyOrEnd' : 'valueOrEnd';
      at++;
    } else {
      const end = Math.max(skip(TEXT, text, at), skip(NUMBER, text, at), skip(WORD, text, at));
      if (end === at) return at;
      want = 'commaOrEnd';
      at = end;
    }
    at = skip(BLANK, text, at);
  }
  return closers.length === 0 && want === 'commaOrEnd' ? undefined : text.length;
}

/** Where the pattern's match ends, or `from` when it does not match there. */
function skip(pattern: RegExp, text: string, from: number): number {
  pattern.lastIndex = from;
  return pattern.test(text) ? pattern.lastIndex : from;
}
