/**
 * Heights on a grid of longitudes and latitudes, as cut out of an elevation model. Row 0 is the northernmost, as in the file;
 * each height stands for the place of its node. Plain data.
 */
export type ElevationGrid = Readonly<{
  /** Node of row 0, column 0, degrees on WGS 84. */
  west_deg: number;
  north_deg: number;
  /** Between neighbouring nodes, degrees, both positive. */
  stepLon_deg: number;
  stepLat_deg: number;
  columns: number;
  rows: number;
  /** Metres above the model's own datum; NaN where it has none. */
  height_m: Float32Array;
}>;

/** An elevation model and where it comes from: heights of two models may only be compared when their datums agree. */
export type ElevationModel = ElevationGrid &
  Readonly<{
    /** File it was cut out of. */
    source: string;
    /** Coordinate system of that file, e.g. `EPSG:25832 (ETRS89 / UTM zone 32N)`. */
    crs: string;
    /** Between neighbouring pixels of that file, on the ground. */
    resolution_m: number;
    /** What the heights count from, as far as the file says. */
    datum: string;
  }>;

/** What is known of the ground beside the course file. */
export type CourseGround = Readonly<{
  terrain: ElevationModel;
  /** Tops of trees and roofs: less the terrain it gives heights of what stands there. */
  surface?: ElevationModel;
}>;
