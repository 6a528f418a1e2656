import type { CoverForm } from './course.ts';

/**
 * Numbers that stand in where the map gives none. Every use is listed in the object's `assumed` and summed up in the
 * course's assumptions. They are our own choices (common sizes in parks, no published source): low branches and
 * middling crowns, so that an unmeasured tree is neither waved away nor made a wall.
 */
export const treeDefaults = {
  /** A grown park tree of middling age. */
  height_m: 8,
  /** Crown diameter as a share of the height. */
  crownPerHeight: 0.55,
  /** Underside of the crown: head height and a reach, where parks prune. */
  crownBase_m: 2,
  /** Small trees branch lower: the underside is never above this share of the height. */
  crownBasePerHeight: 0.5,
  /** A crown mapped as starting higher than the assumed height is at least this deep. */
  leastCrown_m: 4,
  trunkDiameter_m: 0.3,
} as const;

type CoverDefaults = Readonly<{ height_m: number; base_m: number; density: number; width_m: number }>;

/**
 * `density` is the share of throws that stems and undergrowth stop on 10 m of level flight. Solid forms stop all.
 * `width_m` is the full width of the strip when the form is drawn as a line.
 */
export const coverDefaults: Readonly<Record<CoverForm, CoverDefaults>> = {
  /** Grown woodland with undergrowth; its edge trees branch a little above reach. */
  wood: { height_m: 12, base_m: 2.5, density: 0.7, width_m: 4 },
  /** Bushes: closed from the ground to above head height. */
  scrub: { height_m: 2, base_m: 0, density: 0.95, width_m: 2 },
  /** A row stands as single stems under joined crowns. */
  treeRow: { height_m: 8, base_m: 2, density: 0.5, width_m: 4 },
  hedge: { height_m: 1.5, base_m: 0, density: 1, width_m: 1 },
  wall: { height_m: 1.5, base_m: 0, density: 1, width_m: 0.3 },
  fence: { height_m: 1.5, base_m: 0, density: 1, width_m: 0.1 },
  /** One storey with a flat roof. */
  building: { height_m: 4, base_m: 0, density: 1, width_m: 4 },
};

/** `density=light` or `open`: a light, open stand. */
export const lightDensity = 0.3;

/** A ceiling drawn as a line (one branch, a wire, a beam) covers this width. */
export const ceilingWidth_m = 3;

/** Full widths of strips drawn as lines without `width`: a brook, a path, a lane. */
export const stripWidths_m = { waterway: 2, path: 2, road: 4 } as const;

/** How near a line's end must lie to a tee or basket to be that tee or basket. */
export const snap_m = 20;
