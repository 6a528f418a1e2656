import { lineAndColumn } from '../../core/course/line-and-column.ts';
import type { Problem } from '../../core/units/result.ts';
import { importLimits } from './import-limits.ts';

/** Told of everything in an XML text in order; names keep their prefix. Ends the scan by returning words of what is wrong. */
export type XmlListener = Readonly<{
  open(name: string, attributes: ReadonlyMap<string, string>): string | undefined;
  close(name: string): void;
  text(text: string): void;
}>;

const NAME = /[\p{L}_:][\p{L}\p{N}\p{M}_:.·-]*/uy;
const ATTRIBUTE = /\s+([\p{L}_:][\p{L}\p{N}\p{M}_:.·-]*)\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/uy;
const TAG_END = /\s*(\/?)>/y;
const REFERENCE = /&(?:#(\d{1,7})|#x([\da-fA-F]{1,6})|([A-Za-z]+));/g;
const ENTITIES: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };
const MOST_ATTRIBUTES = 200;

/**
 * Reads XML from front to back, strictly and in one pass. No document type, so no entities but the five of XML itself: nothing
 * can be fetched and nothing can grow.
 * @returns the first thing wrong, with its line and column and how to mend it, or undefined
 */
export function scanXml(text: string, listener: XmlListener): Problem | undefined {
  const open: string[] = [];
  let elements = 0;
  let at = 0;
  const wrong = (offset: number, message: string): Problem => ({ path: lineAndColumn(text, offset), message });

  while (at < text.length) {
    const next = text.indexOf('<', at);
    const end = next === -1 ? text.length : next;
    if (end > at) {
      const words = text.slice(at, end);
      if (open.length === 0) {
        if (words.trim() !== '')
          return wrong(at, 'text stands outside the first element: the file is damaged; save it again');
      } else {
        const decoded = decode(words);
        if (decoded === undefined) return wrong(at, badReference(words));
        listener.text(decoded);
      }
    }
    if (next === -1) break;
    at = next;
    if (text.startsWith('<!--', at)) {
      const close = text.indexOf('-->', at + 4);
      if (close === -1) return wrong(at, 'this comment never ends: the file stops too early or "-->" is missing');
      at = close + 3;
    } else if (text.startsWith('<![CDATA[', at)) {
      const close = text.indexOf(']]>', at + 9);
      if (close === -1) return wrong(at, 'this CDATA part never ends: the file stops too early or "]]>" is missing');
      if (open.length === 0)
        return wrong(at, 'text stands outside the first element: the file is damaged; save it again');
      listener.text(text.slice(at + 9, close));
      at = close + 3;
    } else if (text.startsWith('<?', at)) {
      const close = text.indexOf('?>', at + 2);
      if (close === -1) return wrong(at, 'this instruction never ends: "?>" is missing');
      at = close + 2;
    } else if (text.startsWith('<!', at)) {
      return wrong(
        at,
        'the file declares a document type (<!DOCTYPE …>), which can make a program fetch files or grow without end: it is refused; delete the declaration, or export the map again',
      );
    } else if (text.startsWith('</', at)) {
      NAME.lastIndex = at + 2;
      const name = NAME.exec(text)?.[0];
      TAG_END.lastIndex = name === undefined ? at : NAME.lastIndex;
      const tagEnd = name === undefined ? null : TAG_END.exec(text);
      if (name === undefined || tagEnd === null || tagEnd[1] !== '') return wrong(at, 'this closing tag is not whole');
      const expected = open.pop();
      if (expected !== name)
        return wrong(
          at,
          expected === undefined
            ? `</${shown(name)}> closes nothing`
            : `</${shown(name)}> stands where </${shown(expected)}> should close`,
        );
      listener.close(name);
      at = TAG_END.lastIndex;
    } else {
      NAME.lastIndex = at + 1;
      const name = NAME.exec(text)?.[0];
      if (name === undefined) return wrong(at, 'a "<" stands here that opens nothing: write &lt; for the sign itself');
      if (open.length === 0 && elements > 0) return wrong(at, `a second first element <${shown(name)}>: keep one`);
      if (++elements > importLimits.xmlElements)
        return wrong(at, `the file has more than ${importLimits.xmlElements} elements: cut it down to the course`);
      const attributes = new Map<string, string>();
      let after = NAME.lastIndex;
      for (;;) {
        ATTRIBUTE.lastIndex = after;
        const attribute = ATTRIBUTE.exec(text);
        if (attribute === null) break;
        const value = decode(attribute[2] ?? attribute[3] ?? '');
        if (value === undefined) return wrong(after, badReference(attribute[0]));
        if (attributes.has(attribute[1]!))
          return wrong(after, `the attribute ${shown(attribute[1]!)} stands twice in one tag: keep one of the two`);
        if (attributes.size >= MOST_ATTRIBUTES)
          return wrong(after, `more than ${MOST_ATTRIBUTES} attributes in one tag`);
        attributes.set(attribute[1]!, value);
        after = ATTRIBUTE.lastIndex;
      }
      TAG_END.lastIndex = after;
      const tagEnd = TAG_END.exec(text);
      if (tagEnd === null)
        return wrong(after, `the tag <${shown(name)}> is not whole: a quote, an equals sign or ">" is missing`);
      if (open.length >= importLimits.xmlDepth)
        return wrong(at, `elements lie more than ${importLimits.xmlDepth} deep in each other: this is no map`);
      const complaint = listener.open(name, attributes);
      if (complaint !== undefined) return wrong(at, complaint);
      if (tagEnd[1] === '/') listener.close(name);
      else open.push(name);
      at = TAG_END.lastIndex;
    }
  }
  if (open.length > 0)
    return wrong(
      text.length,
      `the file stops too early: </${shown(open.at(-1)!)}> is missing; save or download it again`,
    );
  return elements === 0 ? wrong(0, 'there is no element in this XML file') : undefined;
}

/** @returns undefined when an entity is not one of XML's own five */
function decode(text: string): string | undefined {
  if (!text.includes('&')) return text;
  let isGood = true;
  const decoded = text.replace(REFERENCE, (_, decimal?: string, hex?: string, name?: string) => {
    if (name !== undefined) {
      isGood &&= Object.hasOwn(ENTITIES, name);
      return ENTITIES[name] ?? '';
    }
    const code = decimal === undefined ? Number.parseInt(hex!, 16) : Number(decimal);
    const isCharacter =
      code <= 0x10ffff && !(code >= 0xd800 && code <= 0xdfff) && (code >= 32 || [9, 10, 13].includes(code));
    isGood &&= isCharacter;
    return isCharacter ? String.fromCodePoint(code) : '';
  });
  return isGood && !text.replace(REFERENCE, '').includes('&') ? decoded : undefined;
}

function badReference(text: string): string {
  const rest = text.replace(/&(?:lt|gt|amp|quot|apos);/g, '');
  const found = /&[^;\s&]{0,30};?/.exec(rest)?.[0] ?? '&';
  return `${found} is no character XML knows by itself: write &amp; for the sign "&", or the character itself`;
}

function shown(name: string): string {
  return name.length > 40 ? `${name.slice(0, 37)}...` : name;
}
