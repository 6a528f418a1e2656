const PART = /<!--[\s\S]*?-->|<!DOCTYPE[^>]*>|<\/?[A-Za-z][^<>]*>|<|>/g;
const ATTRIBUTES = /^<[A-Za-z][\w:-]*(?:\s+[\w:-]+="[^"<&]*(?:&(?:[a-z]+|#\d+);[^"<&]*)*")*\s*\/?>$/;

/** What is wrong with a document as XML: tags that do not close, loose angle brackets, attributes without quotes. */
export function faultsOfMarkup(html: string): string[] {
  const faults: string[] = [];
  const open: string[] = [];
  const body = html.replace(/<style>[\s\S]*?<\/style>/g, '');
  for (const [part] of body.matchAll(PART)) {
    if (part.startsWith('<!')) continue;
    const name = /^<\/?([A-Za-z][\w:-]*)/.exec(part)?.[1];
    if (name === undefined) faults.push(`loose "${part}"`);
    else if (part.startsWith('</')) {
      if (open.pop() !== name) faults.push(`${part} closes nothing`);
    } else {
      if (!ATTRIBUTES.test(part)) faults.push(`bad tag ${part.slice(0, 120)}`);
      if (!part.endsWith('/>')) open.push(name);
    }
  }
  return [...faults, ...open.map(name => `<${name}> stays open`)];
}

/** Text a reader sees, tags and drawings' markup taken out. */
export function textOf(html: string): string {
  return html
    .replace(/<style>[\s\S]*?<\/style>/g, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('\u00a0', ' ')
    .replace(/\s+/g, ' ');
}
