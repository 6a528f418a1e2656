import type { CoverForm, DropZoneUse, MandoSide, Relief } from '../course/course.ts';

/** A point in the hole's local frame: metres east and north of the tee, on the WGS 84 ellipsoid. */
export type LocalPoint = readonly [east_m: number, north_m: number];
/** Outer ring first, then holes; rings closed (first equals last). */
export type LocalPolygon = readonly (readonly LocalPoint[])[];

/** Ground heights above the tee's ground on a square grid (row 0 south, column 0 west), bilinear between. Plain data: crosses to workers. */
export type Terrain = Readonly<{
  x0_m: number;
  y0_m: number;
  cell_m: number;
  columns: number;
  rows: number;
  height_m: Float32Array /** False: no heights on the map, the ground is taken as level. */;
  known: boolean;
}>;

type Origin = Readonly<{ /** e.g. `features[3]`. */ source: string; assumed: readonly string[] }>;

export type LocalTree = Origin &
  Readonly<{ at: LocalPoint; height_m: number; crownRadius_m: number; crownBase_m: number; trunkRadius_m: number }>;
export type LocalCover = Origin &
  Readonly<{ form: CoverForm; polygons: readonly LocalPolygon[]; height_m: number; base_m: number; density: number }>;
type LocalCeiling = Origin & Readonly<{ polygons: readonly LocalPolygon[]; clearance_m: number; top_m: number }>;
export type LocalGap = Origin & Readonly<{ posts: readonly [LocalPoint, LocalPoint]; low_m: number; high_m: number }>;
export type LocalArea = Origin &
  Readonly<{
    polygons: readonly LocalPolygon[] /** In words, e.g. `water`, `out-of-bounds`. */;
    what?: string;
    name?: string;
  }>;
/** `relief`: where a throw that went out here (for an island: out of it) may be played from; absent: the line, the previous lie, the drop zone. */
type LocalOutArea = LocalArea & Readonly<{ relief?: readonly Relief[] }>;
type LocalLostGround = LocalArea & Readonly<{ share: number }>;
export type LocalFairway = LocalArea & Readonly<{ surface: SurfaceName; ownHole: boolean }>;
/** A vertical plane a throw must not enter: over the ground track `line`, between the two heights above ground. */
export type LocalMando = Origin &
  Readonly<{
    line: readonly LocalPoint[];
    side: MandoSide;
    low_m: number;
    high_m: number /** The mapped object itself, for drawing. */;
    at: LocalPoint;
  }>;
export type LocalPeople = Origin &
  Readonly<{
    what: string;
    lines: readonly (readonly LocalPoint[])[] /** True when the lines are the outline of an area. */;
    closed: boolean;
  }>;

/** Ground a disc skids on; the numbers behind each name are in flight/ground-play. */
export type SurfaceName = 'longGrass' | 'turf' | 'hardpan';

/**
 * Everything about one hole that a throw can meet, in the hole's local frame: x east, y north, origin at the tee,
 * heights above the tee's ground (terrain) or above the local ground (obstacles).
 */
export type HoleMap = Readonly<{
  ref: string;
  name?: string;
  par: number;
  parSource: 'tagged' | 'derived';
  /** Longitude, latitude and (if known) height of the tee: the frame's origin. */
  origin: readonly [lon_deg: number, lat_deg: number];
  basket: LocalPoint;
  /** Line of play, tee first, basket last. */
  line: readonly LocalPoint[];
  otherTees: readonly LocalPoint[];
  terrain: Terrain;
  trees: readonly LocalTree[];
  covers: readonly LocalCover[];
  ceilings: readonly LocalCeiling[];
  gaps: readonly LocalGap[];
  outOfBounds: readonly LocalOutArea[];
  hazards: readonly LocalArea[];
  /** When there, all ground outside these (and outside own fairways) is out-of-bounds. */
  islands: readonly LocalOutArea[];
  /** Ground where a disc is not found with a chance; the least lucky counts where areas overlap. */
  lostGrounds?: readonly LocalLostGround[];
  dropZones: readonly (Origin & Readonly<{ at: LocalPoint; uses?: readonly DropZoneUse[] }>)[];
  mandos: readonly LocalMando[];
  fairways: readonly LocalFairway[];
  people: readonly LocalPeople[];
  assumptions: readonly string[];
}>;
