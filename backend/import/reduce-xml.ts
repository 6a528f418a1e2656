import type { Result } from '../../core/units/result.ts';
import { importLimits } from './import-limits.ts';
import { type LeftOut, leftOutCounter } from './osm-element.ts';
import { scanXml } from './scan-xml.ts';

/** What of a file's XML means something here, by local name. */
export type XmlVocabulary = Readonly<{
  root: string;
  /** Written on the root instead of its own attributes. */
  namespaces: string;
  /** Names without prefix; any other element is dropped with all inside it. */
  kept: ReadonlySet<string>;
  attributes: ReadonlySet<string>;
  /** In words: what is dropped and worth a line in the report, by local name. */
  worthALine: Readonly<Record<string, readonly [what: string, why: string]>>;
  /** Words of what is wrong with an element that is kept, or undefined. */
  fault?: (name: string, attributes: ReadonlyMap<string, string>) => string | undefined;
}>;

/**
 * The file's XML with all that means nothing here taken out, well-formed and without namespaces of its own: what is then made a
 * tree is small and holds no surprises.
 */
export function reduceXml(
  text: string,
  vocabulary: XmlVocabulary,
): Result<Readonly<{ xml: string; leftOut: readonly LeftOut[] }>> {
  const { root, namespaces, kept, attributes: wanted, worthALine } = vocabulary;
  const parts: string[] = [];
  const leftOut = leftOutCounter();
  let depth = 0;
  /** Depth at which something dropped began; all inside it goes too. */
  let droppedAt = 0;
  let elements = 0;
  /** Whatever prefix the first element has stands for the format; others are dropped, but for those in `kept` with theirs. */
  let prefix = '';

  const nameOf = (name: string): string | undefined => {
    if (kept.has(name)) return name;
    const local = name.startsWith(prefix) ? name.slice(prefix.length) : name;
    return kept.has(local) ? local : undefined;
  };
  const wrong = scanXml(text, {
    open: (name, attributes) => {
      depth++;
      if (depth === 1) {
        if (name !== root && !name.endsWith(`:${root}`)) return `the first element is <${name}>: it must be <${root}>`;
        prefix = name.slice(0, -root.length);
      }
      if (droppedAt > 0) return undefined;
      const own = nameOf(name);
      if (own === undefined) {
        droppedAt = depth;
        const local = name.replace(/^.*:/, '');
        const line = Object.hasOwn(worthALine, local) ? worthALine[local] : undefined;
        if (line !== undefined) leftOut.add(...line);
        return undefined;
      }
      if (++elements > importLimits.treeElements)
        return `the file has more than ${importLimits.treeElements} places, corners and names: leave out long tracks, or cut it down to the course`;
      const fault = vocabulary.fault?.(own, attributes);
      if (fault !== undefined) return fault;
      const ownAttributes = [...attributes]
        .filter(([key]) => wanted.has(key))
        .map(([key, value]) => ` ${key}="${escaped(value)}"`);
      parts.push(`<${own}${own === root && depth === 1 ? namespaces : ''}${ownAttributes.join('')}>`);
      return undefined;
    },
    close: name => {
      if (droppedAt === 0) parts.push(`</${nameOf(name)}>`);
      else if (droppedAt === depth) droppedAt = 0;
      depth--;
    },
    text: words => {
      if (droppedAt === 0) parts.push(escaped(words));
    },
  });
  if (wrong !== undefined) return { ok: false, problems: [wrong] };
  return { ok: true, value: { xml: parts.join(''), leftOut: leftOut.lines() } };
}

const ESCAPES: Readonly<Record<string, string>> = { '<': '&lt;', '>': '&gt;', '&': '&amp;', '"': '&quot;' };
/** Characters that XML cannot hold at all become blanks. */
const escaped = (text: string) =>
  text
    .replace(/[<>&"]/g, sign => ESCAPES[sign]!)
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be written
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, ' ');
