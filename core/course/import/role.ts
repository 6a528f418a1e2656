import type { Geometry } from 'geojson';

export const ROLES = [
  ...(['tee', 'basket', 'bend', 'lineOfPlay', 'dropZone', 'mandoLeft', 'mandoRight', 'fairway', 'island'] as const),
  ...(['outOfBounds', 'hazard', 'water', 'tree', 'wood', 'scrub', 'treeRow', 'hedge', 'fence', 'building'] as const),
  ...(['path', 'courseOutline', 'leave'] as const),
] as const;
/** What a place or line of a file that does not say it is to a course; `leave` is nothing, it is not taken in. */
export type Role = (typeof ROLES)[number];

export type Shape = 'point' | 'line' | 'area' | 'mixed';

/** How a role is written and read; the first word is shown. */
export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  tee: 'tee',
  basket: 'basket',
  bend: 'bend',
  lineOfPlay: 'line of play',
  dropZone: 'drop zone',
  mandoLeft: 'mando left',
  mandoRight: 'mando right',
  fairway: 'fairway',
  island: 'island',
  outOfBounds: 'out-of-bounds',
  hazard: 'hazard',
  water: 'water',
  tree: 'tree',
  wood: 'wood',
  scrub: 'scrub',
  treeRow: 'tree row',
  hedge: 'hedge',
  fence: 'fence',
  building: 'building',
  path: 'path',
  courseOutline: 'course outline',
  leave: 'leave out',
};

const ROLES_OF: Readonly<Record<Shape, readonly Role[]>> = {
  point: ['tee', 'basket', 'bend', 'dropZone', 'mandoLeft', 'mandoRight', 'tree', 'leave'],
  line: ['lineOfPlay', 'outOfBounds', 'water', 'treeRow', 'hedge', 'fence', 'path', 'leave'],
  area: [
    ...(['tee', 'fairway', 'island', 'outOfBounds', 'hazard', 'water', 'wood', 'scrub', 'building'] as const),
    ...(['courseOutline', 'leave'] as const),
  ],
  mixed: ['leave'],
};

export const rolesOf = (shape: Shape): readonly Role[] => ROLES_OF[shape];

/** Roles that mean nothing without the hole they belong to. */
export const needsRef = (role: Role): boolean =>
  role === 'tee' || role === 'basket' || role === 'bend' || role === 'lineOfPlay';

export function shapeOf(geometry: Geometry | null): Shape {
  switch (geometry?.type) {
    case 'Point':
      return 'point';
    case 'LineString':
    case 'MultiLineString':
      return 'line';
    case 'Polygon':
    case 'MultiPolygon':
      return 'area';
    default:
      return 'mixed';
  }
}

/** The tags that say the role; `line` tells a stream from a pond. */
export function tagsOf(role: Role, shape: Shape): Readonly<Record<string, string>> {
  switch (role) {
    case 'tee':
      return { disc_golf: 'tee' };
    case 'basket':
      return { disc_golf: 'basket' };
    case 'lineOfPlay':
      return { disc_golf: 'hole' };
    case 'dropZone':
      return { disc_golf: 'drop_zone' };
    case 'mandoLeft':
      return { disc_golf: 'mando', mando: 'left' };
    case 'mandoRight':
      return { disc_golf: 'mando', mando: 'right' };
    case 'fairway':
      return { disc_golf: 'fairway' };
    case 'island':
      return { disc_golf: 'island' };
    case 'outOfBounds':
      return { disc_golf: 'out_of_bounds' };
    case 'hazard':
      return { disc_golf: 'hazard' };
    case 'water':
      return shape === 'line' ? { waterway: 'stream' } : { natural: 'water' };
    case 'tree':
      return { natural: 'tree' };
    case 'wood':
      return { natural: 'wood' };
    case 'scrub':
      return { natural: 'scrub' };
    case 'treeRow':
      return { natural: 'tree_row' };
    case 'hedge':
      return { barrier: 'hedge' };
    case 'fence':
      return { barrier: 'fence' };
    case 'building':
      return { building: 'yes' };
    case 'path':
      return { highway: 'path' };
    case 'courseOutline':
      return { leisure: 'disc_golf_course' };
    case 'bend':
    case 'leave':
      return {};
    default:
      return role satisfies never;
  }
}
