import type { Feature } from 'geojson';
import { tagOf } from './edit-tags.ts';

/** What can be drawn. */
export const FEATURE_KINDS = [
  'tee',
  'basket',
  'line',
  'fairway',
  'outOfBounds',
  'water',
  'hazard',
  'island',
  'rough',
  'mando',
  'dropZone',
  'tree',
  'wood',
  'treeRow',
  'hedge',
  'ceiling',
  'gap',
  'path',
] as const;
export type FeatureKind = (typeof FEATURE_KINDS)[number];
export type DrawnShape = 'Point' | 'LineString' | 'Polygon';

/** One tag of a kind as the player enters it; the course reader says what is wrong with a value. */
export type KindField = Readonly<{
  key: string;
  label: string;
  /** `length` takes any unit and is kept in metres. */
  takes: 'text' | 'length' | 'wholeNumber' | 'share' | 'choice';
  choices?: readonly string[];
  /** The file cannot be read without it. */
  must?: true;
}>;

export type KindOf = Readonly<{
  word: string;
  /** How it may be drawn, the usual way first. */
  shapes: readonly DrawnShape[];
  /** What makes a feature one of this kind; the first is looked for, all are written. */
  tags: Readonly<Record<string, string>>;
  fields: readonly KindField[];
  /** Positions it needs, where that is not what its shape needs. */
  exactly?: number;
}>;

const ref: KindField = { key: 'ref', label: 'Hole', takes: 'text' };
const name: KindField = { key: 'name', label: 'Name', takes: 'text' };
const ele: KindField = { key: 'ele', label: 'Ground above sea level', takes: 'length' };
const height: KindField = { key: 'height', label: 'Height of the top', takes: 'length' };
const underside: KindField = { key: 'min_height', label: 'Lowest branches', takes: 'length' };
const width: KindField = { key: 'width', label: 'Width, when drawn as a line', takes: 'length' };
const lostDisc: KindField = { key: 'lost_disc', label: 'Share of discs not found', takes: 'share' };
const relief: KindField = {
  key: 'relief',
  label: 'After it, only from',
  takes: 'choice',
  choices: ['line', 'previous_lie', 'drop_zone', 'line;previous_lie', 'previous_lie;drop_zone', 'line;drop_zone'],
};
const serves: KindField = {
  key: 'serves',
  label: 'For',
  takes: 'choice',
  choices: ['out_of_bounds', 'mando', 'lost_disc', 'out_of_bounds;mando', 'out_of_bounds;mando;lost_disc'],
};
const density: KindField = { key: 'density', label: 'Share of throws stopped on 10 m', takes: 'share' };

/** The kinds with their tags, in the order they are offered. */
export const KINDS: Readonly<Record<FeatureKind, KindOf>> = {
  tee: { word: 'tee', shapes: ['Point', 'Polygon'], tags: { disc_golf: 'tee' }, fields: [ref, name, ele] },
  basket: { word: 'basket', shapes: ['Point'], tags: { disc_golf: 'basket' }, fields: [ref, name, ele] },
  line: {
    word: 'line of play',
    shapes: ['LineString'],
    tags: { disc_golf: 'hole' },
    fields: [
      ref,
      name,
      { key: 'par', label: 'Par', takes: 'wholeNumber' },
      { key: 'dist', label: 'Length on the sign', takes: 'length' },
    ],
  },
  fairway: {
    word: 'fairway',
    shapes: ['Polygon'],
    tags: { disc_golf: 'fairway' },
    fields: [ref, { key: 'surface', label: 'Surface', takes: 'choice', choices: ['grass', 'dirt', 'gravel'] }],
  },
  outOfBounds: {
    word: 'out-of-bounds',
    shapes: ['Polygon', 'LineString'],
    tags: { disc_golf: 'out_of_bounds' },
    fields: [name, ref, relief],
  },
  water: {
    word: 'water',
    shapes: ['Polygon'],
    tags: { natural: 'water' },
    fields: [name, { key: 'out_of_bounds', label: 'Out-of-bounds', takes: 'choice', choices: ['yes', 'no'] }, relief],
  },
  hazard: { word: 'hazard', shapes: ['Polygon'], tags: { disc_golf: 'hazard' }, fields: [name, ref, lostDisc] },
  island: { word: 'island', shapes: ['Polygon'], tags: { disc_golf: 'island' }, fields: [name, ref, relief] },
  rough: { word: 'rough', shapes: ['Polygon'], tags: { disc_golf: 'rough' }, fields: [lostDisc, name, ref] },
  mando: {
    word: 'mando',
    shapes: ['Point', 'LineString'],
    tags: { disc_golf: 'mando' },
    fields: [
      {
        key: 'mando',
        label: 'Pass on side',
        takes: 'choice',
        choices: ['left', 'right', 'above', 'below'],
        must: true,
      },
      ref,
      { key: 'height', label: 'Height, for above and below', takes: 'length' },
    ],
  },
  dropZone: { word: 'drop zone', shapes: ['Point'], tags: { disc_golf: 'drop_zone' }, fields: [ref, name, serves] },
  tree: {
    word: 'tree',
    shapes: ['Point'],
    tags: { natural: 'tree' },
    fields: [
      height,
      { key: 'diameter_crown', label: 'Crown across', takes: 'length' },
      underside,
      { key: 'circumference', label: 'Round the trunk', takes: 'length' },
      name,
    ],
  },
  wood: {
    word: 'wood',
    shapes: ['Polygon'],
    tags: { natural: 'wood' },
    fields: [height, underside, density, lostDisc, name],
  },
  treeRow: {
    word: 'row of trees',
    shapes: ['LineString'],
    tags: { natural: 'tree_row' },
    fields: [height, underside, density, width],
  },
  hedge: { word: 'hedge', shapes: ['LineString', 'Polygon'], tags: { barrier: 'hedge' }, fields: [height, width] },
  ceiling: {
    word: 'ceiling',
    shapes: ['Polygon', 'LineString'],
    tags: { obstacle: 'ceiling' },
    fields: [
      { key: 'min_height', label: 'Free height under it', takes: 'length', must: true },
      { key: 'height', label: 'Top, when it can be thrown over', takes: 'length' },
      width,
      name,
    ],
  },
  gap: {
    word: 'gap',
    shapes: ['LineString'],
    exactly: 2,
    tags: { obstacle: 'gap' },
    fields: [
      { key: 'min_height', label: 'Lower edge', takes: 'length' },
      { key: 'height', label: 'Upper edge', takes: 'length' },
      name,
    ],
  },
  path: { word: 'path', shapes: ['LineString'], tags: { highway: 'path' }, fields: [name] },
};

/** The kind of a feature of the file; undefined for one that cannot be drawn here. */
export function kindOf(feature: Feature): FeatureKind | undefined {
  if (tagOf(feature, 'disc_golf') === 'pin') return 'basket';
  return FEATURE_KINDS.find(kind => {
    const [key, value] = Object.entries(KINDS[kind].tags)[0]!;
    return tagOf(feature, key)?.toLowerCase() === value;
  });
}
