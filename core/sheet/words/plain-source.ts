const PLACE = String.raw`features\[\d+\](?:\.[\w.[\]]+)?`;
const IN_BRACKETS = new RegExp(String.raw`\s*\(${PLACE}(?:,\s*${PLACE})*\)`, 'g');
const BARE = new RegExp(String.raw`:?\s*${PLACE}`, 'g');

/** "Pond, water (features[68])" as a player reads it: "Pond, water"; places in the course file mean nothing on paper. */
export function plainSource(text: string): string {
  return text.replace(IN_BRACKETS, '').replace(BARE, '').trim();
}
