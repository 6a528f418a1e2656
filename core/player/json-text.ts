import type { Result } from '../units/result.ts';

/**
 * Text to JSON value; a syntax error says where by line and column (engines word theirs differently, and some leave the place out).
 * A leading byte-order mark is ignored.
 */
export function parseJsonText(text: string): Result<unknown> {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  try {
    return { ok: true, value: JSON.parse(body) as unknown };
  } catch {
    const { at, message } = firstJsonError(body);
    const before = body.slice(0, at).split('\n');
    const column = before.at(-1)!.length + 1;
    return { ok: false, problems: [{ path: `line ${before.length}, column ${column}`, message }] };
  }
}

type JsonError = Readonly<{ at: number; message: string }>;

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids exactly these inside a string
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const SPACE = /[ \t\r\n]*/y;

/**
 * The first place where the text leaves the JSON grammar. An explicit stack, so that deep nesting can't overflow the call stack.
 * @source grammar: RFC 8259
 */
function firstJsonError(text: string): JsonError {
  let at = 0;
  const open: ('{' | '[')[] = [];
  const match = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    if (!pattern.test(text)) return false;
    at = pattern.lastIndex;
    return true;
  };
  const key = (): JsonError | null => {
    if (!match(STRING)) return expected('a property name in double quotes');
    match(SPACE);
    if (text[at] !== ':') return expected('":" after the property name');
    at++;
    return null;
  };
  const expected = (what: string): JsonError => {
    const found = at >= text.length ? 'the file ends' : `found ${JSON.stringify(text[at])}`;
    return { at, message: `not valid JSON: expected ${what}, but ${found}` };
  };
  for (;;) {
    // a value
    match(SPACE);
    const first = text[at];
    if (first === '{' || first === '[') {
      at++;
      match(SPACE);
      if (text[at] !== (first === '{' ? '}' : ']')) {
        open.push(first);
        if (first === '{') {
          const wrong = key();
          if (wrong !== null) return wrong;
        }
        continue;
      }
      at++;
    } else if (!match(STRING) && !match(NUMBER)) {
      const word = ['true', 'false', 'null'].find(w => text.startsWith(w, at));
      if (word === undefined)
        return expected(first === '"' ? 'the closing quote of this text (on the same line)' : 'a value');
      at += word.length;
    }
    // what may follow a value
    for (;;) {
      match(SPACE);
      const inside = open.at(-1);
      if (inside === undefined) return expected('the end of the file');
      const close = inside === '{' ? '}' : ']';
      if (text[at] === close) {
        at++;
        open.pop();
        continue;
      }
      if (text[at] !== ',') return expected(`"," or "${close}"`);
      at++;
      match(SPACE);
      if (inside === '{') {
        const wrong = key();
        if (wrong !== null) return wrong;
      }
      break;
    }
  }
}
