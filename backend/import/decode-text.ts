import type { Result } from '../../core/units/result.ts';

/** A file's text, and how it was written when that is not plain UTF-8. */
export type DecodedText = Readonly<{ text: string; encoding: string }>;

/** Names an XML declaration may give, and what decodes them; all that maps are commonly saved in. */
const DECODERS: Readonly<Record<string, string>> = {
  'utf-8': 'utf-8',
  utf8: 'utf-8',
  'us-ascii': 'utf-8',
  ascii: 'utf-8',
  'utf-16': 'utf-16le',
  'utf-16le': 'utf-16le',
  'utf-16be': 'utf-16be',
  'iso-8859-1': 'windows-1252',
  latin1: 'windows-1252',
  'windows-1252': 'windows-1252',
  'iso-8859-2': 'iso-8859-2',
  'windows-1250': 'windows-1250',
  'iso-8859-15': 'iso-8859-15',
  'windows-1251': 'windows-1251',
};

/**
 * Text from a file's bytes: by its byte order mark, else by its XML declaration, else as UTF-8. The mark is dropped.
 * @returns problems when the bytes are not what they say they are
 */
export function decodeText(bytes: Uint8Array): Result<DecodedText> {
  const marked = byteOrderMark(bytes);
  const encoding = marked ?? unmarkedUtf16(bytes) ?? declaredEncoding(bytes) ?? 'utf-8';
  const decoder = DECODERS[encoding];
  if (decoder === undefined)
    return refuse('file', `is written in "${encoding.slice(0, 40)}", which is not read here: save it as UTF-8`);
  try {
    const text = new TextDecoder(decoder, { fatal: true }).decode(bytes);
    return text.isWellFormed() ? { ok: true, value: { text, encoding } } : notThis(bytes, encoding);
  } catch {
    return notThis(bytes, encoding);
  }
}

function byteOrderMark(bytes: Uint8Array): string | undefined {
  const [a, b, c] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf) return 'utf-8';
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  return a === 0xfe && b === 0xff ? 'utf-16be' : undefined;
}

/** `<` or `{` with a zero byte beside it. */
function unmarkedUtf16(bytes: Uint8Array): string | undefined {
  const [a, b] = bytes;
  const opens = (byte: number | undefined) => byte === 0x3c || byte === 0x7b;
  if (opens(a) && b === 0) return 'utf-16le';
  return a === 0 && opens(b) ? 'utf-16be' : undefined;
}

function declaredEncoding(bytes: Uint8Array): string | undefined {
  const head = String.fromCharCode(...bytes.subarray(0, 200));
  const name = /^\s*<\?xml\s[^>]*?encoding\s*=\s*["']([^"'<>]{1,60})["']/.exec(head)?.[1]?.toLowerCase();
  // One byte a character as far as here: it cannot be UTF-16, whatever it says.
  return name?.startsWith('utf-16') ? 'utf-8' : name;
}

function notThis(bytes: Uint8Array, encoding: string): Result<never> {
  if (encoding !== 'utf-8')
    return refuse('file', `says it is ${encoding} text, but is not: save it again as UTF-8, or check that it is whole`);
  const at = firstBadByte(bytes);
  return refuse(
    'file',
    `is not UTF-8 text (byte ${at + 1} is ${hex(bytes[at])}): save the file as UTF-8, or check that it is the right file`,
  );
}

const hex = (byte: number | undefined) => (byte === undefined ? 'missing' : `0x${byte.toString(16).padStart(2, '0')}`);

/** Halves the file until the byte that cannot be decoded is found. */
function firstBadByte(bytes: Uint8Array): number {
  let [good, bad] = [0, bytes.length];
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (decodes(bytes.subarray(0, middle))) good = middle;
    else bad = middle;
  }
  return good;
}

function decodes(bytes: Uint8Array): boolean {
  try {
    // As a stream, so that a character cut in two at the end is no fault yet.
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}

function refuse(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
