/** Bits of `ObstacleRaster.zone`. */
export const ZONE_OUT_OF_BOUNDS = 1;
export const ZONE_HAZARD = 2;
/** Out-of-bounds ground that takes a choice of next lie away: in from the line, the previous lie, the drop zone. */
export const ZONE_NO_LINE = 4;
export const ZONE_NO_PREVIOUS = 8;
export const ZONE_NO_DROP = 16;
/** Order of `ObstacleRaster.surface`. */
export const SURFACES = ['longGrass', 'turf', 'hardpan'] as const;

/**
 * What stands over each square metre of a hole, for marching flights through it. Row 0 is the south edge, column 0 the west;
 * index = row * columns + column; a cell covers [x0 + column·cell, x0 + (column+1)·cell). Heights in metres above the local
 * ground; densities are hits per metre flown (a path of length s is stopped with chance 1 − exp(−density·s)).
 */
export type ObstacleRaster = Readonly<{
  x0_m: number;
  y0_m: number;
  cell_m: number;
  columns: number;
  rows: number;
  /** Ground above the tee's ground, at the cell centre. */
  ground_m: Float32Array;
  /** Undergrowth, trunks, walls: from the ground to this height (0: nothing). */
  lowTop_m: Float32Array;
  lowDensity: Float32Array;
  /** Crowns and ceilings: between these heights (base = top = 0: nothing). */
  highBase_m: Float32Array;
  highTop_m: Float32Array;
  highDensity: Float32Array;
  /** ZONE_ bits at the cell centre. */
  zone: Uint8Array;
  /** Index into SURFACES. */
  surface: Uint8Array;
  /** Share of discs at rest at the cell centre that are not found; absent where the course marks no such ground. */
  lostShare?: Float32Array;
  /** Coarse table, `blockCells` cells square: height above the tee's ground of the highest thing (Infinity where part of the block is out of bounds). */
  blockCells: number;
  blockColumns: number;
  blockRows: number;
  blockTop_m: Float32Array;
  /** 1: all of the block is out of bounds. */
  blockOut: Uint8Array;
}>;
