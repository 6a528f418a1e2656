import type { Role } from './role.ts';

/**
 * Words that name a thing of the course, without accents and in lower case. "Tee" is said nearly everywhere; the others are
 * plain words of several languages. A word too many here would propose wrongly, one too few only leaves a choice to the user.
 */
const NAMES: Readonly<Partial<Record<Role | 'hole' | 'mando', readonly string[]>>> = {
  tee: [
    ...['tee', 'tees', 'teepad', 'teepads', 'pad', 'pads', 'start', 'abwurf', 'utkast', 'utkastplats', 'udkast'],
    ...['heittopaikka', 'avauspaikka', 'depart', 'salida', 'partenza', 'vyhoz', 'rzutnia'],
  ],
  basket: [
    ...['basket', 'baskets', 'bskt', 'target', 'targets', 'pin', 'pins', 'korb', 'korbe', 'kori', 'korit', 'korg'],
    ...[
      'kurv',
      'kurve',
      'panier',
      'corbeille',
      'cesta',
      'canasta',
      'canestro',
      'cesto',
      'kos',
      'kosz',
      'korv',
      'grozs',
    ],
  ],
  bend: ['bend', 'dogleg', 'corner', 'knick', 'mutka', 'sving', 'svang', 'virage', 'coude', 'curva'],
  dropZone: ['dz', 'dropzone'],
  tree: [
    'tree',
    'oak',
    'pine',
    'birch',
    'spruce',
    'baum',
    'puu',
    'trad',
    'tre',
    'arbre',
    'arbol',
    'albero',
    'strom',
    'drzewo',
  ],
  outOfBounds: ['ob', 'oob'],
  hazard: ['hazard'],
  island: ['island'],
  fairway: ['fairway'],
  water: [
    ...[
      'water',
      'pond',
      'lake',
      'creek',
      'stream',
      'river',
      'brook',
      'ditch',
      'wasser',
      'teich',
      'bach',
      'lampi',
      'jarvi',
    ],
    ...['oja', 'damm', 'etang', 'ruisseau', 'agua', 'laghetto', 'rybnik', 'staw'],
  ],
  wood: [
    'wood',
    'woods',
    'forest',
    'trees',
    'copse',
    'wald',
    'metsa',
    'skog',
    'skov',
    'foret',
    'bois',
    'bosque',
    'bosco',
    'les',
    'las',
  ],
  scrub: ['scrub', 'bushes', 'thicket', 'rough'],
  treeRow: ['treeline', 'avenue'],
  hedge: ['hedge', 'hecke', 'haie'],
  fence: ['fence', 'zaun', 'aita', 'staket', 'hegn', 'cloture'],
  building: ['building', 'house', 'hut', 'shed', 'barn', 'shelter', 'clubhouse'],
  path: ['path', 'footpath', 'trail', 'track', 'weg', 'polku', 'stig', 'sentier'],
  hole: [
    'hole',
    'holes',
    'lane',
    'bahn',
    'loch',
    'hal',
    'hul',
    'hull',
    'vayla',
    'trou',
    'hoyo',
    'buca',
    'jamka',
    'dolek',
    'rada',
  ],
  mando: ['mando', 'mandatory'],
};

/** Several words in a row. */
const PHRASES: readonly (readonly [RegExp, string])[] = [
  [/\bout of bounds?\b/g, 'ob'],
  [/\bout-of-bounds?\b/g, 'ob'],
  [/\bdrop ?-?zone\b/g, 'dropzone'],
  [/\btree (?:row|line)\b/g, 'treeline'],
];

const SIDES: Readonly<Record<string, 'mandoLeft' | 'mandoRight'>> = {
  left: 'mandoLeft',
  links: 'mandoLeft',
  gauche: 'mandoLeft',
  right: 'mandoRight',
  rechts: 'mandoRight',
  droite: 'mandoRight',
};

const BY_WORD: ReadonlyMap<string, Role | 'hole' | 'mando'> = new Map(
  Object.entries(NAMES).flatMap(([role, words]) =>
    words!.map(word => [word, role as Role | 'hole' | 'mando'] as const),
  ),
);

export const roleNamed = (word: string): Role | 'hole' | 'mando' | undefined => BY_WORD.get(word);
export const sideNamed = (word: string): 'mandoLeft' | 'mandoRight' | undefined =>
  Object.hasOwn(SIDES, word) ? SIDES[word] : undefined;

/** A piece of a name; `joined` when nothing stood between it and the piece before. */
export type NamePiece = Readonly<{ text: string; isNumber: boolean; joined: boolean }>;

/** "Tee_03-long" gives tee, 03, long; accents and case are dropped. */
export function namePieces(name: string): NamePiece[] {
  let plain = name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  for (const [phrase, word] of PHRASES) plain = plain.replace(phrase, word);
  const pieces: NamePiece[] = [];
  let end = -1;
  for (const { 0: text, index } of plain.matchAll(/\p{N}+|\p{L}+/gu)) {
    pieces.push({ text, isNumber: /^\d+$/.test(text), joined: index === end });
    end = index + text.length;
  }
  return pieces;
}
