import type { FeatureCollection, LineString, MultiPolygon, Point, Polygon } from 'geojson';
import type { Problem } from '../units/result.ts';
import type { CourseGround } from './elevation-grid.ts';

/** Degrees on WGS 84, longitude first (RFC 7946); the third value, when there, is a height in metres. */
export type LonLat =
  | readonly [lon_deg: number, lat_deg: number]
  | readonly [lon_deg: number, lat_deg: number, height_m: number];

/** A tee or a basket as mapped. `featureIndex` counts in `Course.source.features`; -1 when it was the end of a hole line only. */
export type Site = Readonly<{ position: LonLat; height_m?: number; ref?: string; name?: string; featureIndex: number }>;

export type CourseHole = Readonly<{
  ref: string;
  name?: string;
  /** As tagged; absent when the map does not say. */
  par?: number;
  /** False (`placed=no`): drawn nowhere in particular; its lengths and directions hold, its place does not. */
  isPlaced?: false;
  /** `dist` as tagged, in metres. */
  taggedLength_m?: number;
  /** The tee and basket planned for; the first of `tees` and `baskets` unless a layout chooses. */
  tee: Site;
  basket: Site;
  tees: readonly Site[];
  baskets: readonly Site[];
  /** Line of play, tee first, basket last, bends between. */
  line: readonly LonLat[];
  /** Lines drawn from the hole's other tees or to its other baskets, tee first; for a layout that plays them. */
  otherLines?: readonly (readonly LonLat[])[];
  /** `straight`: no line was mapped, tee and basket were joined. */
  lineSource: 'drawn' | 'straight';
}>;

type OnMap = Readonly<{
  /** Index in `Course.source.features`. */
  featureIndex: number;
  /** Where to point the user, e.g. `features[3]`. */
  path: string;
  name?: string;
  /** The hole it belongs to, when the map says so; else it counts wherever it lies. */
  ref?: string;
  /** Names of the numbers below that the map does not give and that a stated default stands in for. */
  assumed: readonly string[];
}>;

/** Where a throw that went out-of-bounds may be played from: in from the line, the previous lie, the drop zone (806.02). */
export type Relief = 'line' | 'previousLie' | 'dropZone';
/** What a drop zone is for. One that does not say serves out-of-bounds and missed mandos: a lost disc has its own (805.03). */
export type DropZoneUse = 'outOfBounds' | 'mando' | 'lostDisc';
export const USUAL_USES: readonly DropZoneUse[] = ['outOfBounds', 'mando'];

export type MandoSide = 'left' | 'right' | 'above' | 'below';
export type CoverForm = 'wood' | 'scrub' | 'treeRow' | 'hedge' | 'wall' | 'fence' | 'building';

export type Tree = OnMap &
  Readonly<{
    kind: 'tree';
    position: LonLat;
    height_m: number;
    crownDiameter_m: number;
    crownBase_m: number;
    trunkDiameter_m: number;
  }>;
/** Ground covered by things in the way. Under `base_m` only stems stand (share `density`); solid forms have base 0 and density 1, or, when mapped as clear of the ground (a roof), that base and density 0. */
export type Cover = OnMap &
  Readonly<{
    kind: 'cover';
    form: CoverForm;
    geometry: Polygon | MultiPolygon | LineString;
    /** For LineStrings: full width of the strip. */
    width_m: number;
    height_m: number;
    base_m: number;
    /** Share of throws stopped by stems on 10 m of level flight under the crowns, 0…1. */
    density: number;
  }>;
export type Ceiling = OnMap &
  Readonly<{
    kind: 'ceiling';
    geometry: Polygon | LineString;
    clearance_m: number /** Infinity: closed above. */;
    top_m: number;
    width_m: number;
  }>;
export type Gap = OnMap &
  Readonly<{
    kind: 'gap';
    posts: readonly [LonLat, LonLat];
    low_m: number /** Infinity: open above. */;
    high_m: number;
  }>;
export type OutOfBounds = OnMap &
  Readonly<{
    kind: 'outOfBounds';
    geometry: Polygon | MultiPolygon | LineString;
    reason: 'tagged' | 'water';
    /** For LineStrings: full width of the strip that is out (a stream, a road). Absent: the line is a boundary, and the ground beyond it, seen from the fairway, is out. */
    strip_m?: number;
    /** Where a throw may be played from after it, when the course restricts that; absent: any of them. */
    relief?: readonly Relief[];
  }>;
export type Hazard = OnMap & Readonly<{ kind: 'hazard'; geometry: Polygon | MultiPolygon }>;
export type Island = OnMap & Readonly<{ kind: 'island'; geometry: Polygon | MultiPolygon; relief?: readonly Relief[] }>;
export type DropZone = OnMap & Readonly<{ kind: 'dropZone'; position: LonLat; uses?: readonly DropZoneUse[] }>;
/** Ground where a disc at rest is not found with chance `share`. */
export type LostGround = OnMap & Readonly<{ kind: 'lostGround'; geometry: Polygon | MultiPolygon; share: number }>;
export type Mando = OnMap &
  Readonly<{
    kind: 'mando';
    geometry: Point | LineString;
    side: MandoSide /** For above and below: the height to pass over or under. */;
    height_m?: number;
  }>;
export type Fairway = OnMap & Readonly<{ kind: 'fairway'; geometry: Polygon | MultiPolygon; surface?: string }>;
/** Where people walk, ride, drive, park or play: for cautions only. */
export type PeoplePlace = OnMap &
  Readonly<{ kind: 'people'; geometry: LineString | Polygon | MultiPolygon | Point; what: string }>;

export type CourseObject =
  | Tree
  | Cover
  | Ceiling
  | Gap
  | OutOfBounds
  | Hazard
  | Island
  | LostGround
  | DropZone
  | Mando
  | Fairway
  | PeoplePlace;

/** One hole as a layout plays it; a tee or basket left out is the hole's first. Keys are those of `siteKey`. */
export type LayoutHole = Readonly<{ ref: string; tee?: string; basket?: string; par?: number }>;
/** Which holes are played, from which tee to which basket, in order of play. */
export type Layout = Readonly<{ name: string; path: string; featureIndex: number; holes: readonly LayoutHole[] }>;

export type Course = Readonly<{
  name: string;
  holes: readonly CourseHole[];
  layouts: readonly Layout[];
  objects: readonly CourseObject[];
  /** Loose heights (features with `ele` or a third coordinate), for the terrain. */
  heights: readonly Readonly<{ position: LonLat; height_m: number }>[];
  /** Elevation models kept beside the course file; where they cover a hole they give its ground. */
  ground?: CourseGround;
  /** Stated defaults and readings the player should confirm; shown, never silent. */
  assumptions: readonly Problem[];
  /** Kinds of thing the map says nothing about at all ("not mapped", never "none"). */
  notMapped: readonly string[];
  /** The file as read, untouched: what export writes back. */
  source: FeatureCollection;
}>;
