/** A sideways finish as written, and the side a word in it names: "3 L", "left 3", "2.5 ft right". */
export type SideWords = Readonly<{ amount: string; direction: 'left' | 'right' | null }>;

/** Takes the word for the side off a written finish; what is left is a number with or without its unit. */
export function splitSide(text: string): SideWords {
  const plain = text.trim().toLowerCase();
  const before = /^(left|right|l|r)\s*([+-]?[\d.,].*)$/.exec(plain);
  const after = /^(.*\S)\s*(left|right)$|^(.*[\d.,\s'"])(l|r)$/.exec(plain);
  const word = before?.[1] ?? after?.[2] ?? after?.[4];
  const amount = before?.[2] ?? after?.[1] ?? after?.[3] ?? text;
  return { amount, direction: word === undefined ? null : word.startsWith('l') ? 'left' : 'right' };
}
