import type { HoleMap, LocalPoint } from '../geometry/hole-map.ts';
import type { ObstacleRaster } from '../geometry/obstacle-raster.ts';
import { groundHeight } from '../geometry/terrain.ts';

/** One straight piece of a restricted plane, over ground from a to b, between two heights above ground. */
export type MandoPlane = Readonly<{ ax: number; ay: number; bx: number; by: number; low_m: number; high_m: number }>;

/** What the solver needs of a hole, in its local frame (metres east and north of the tee, heights above the tee's ground). */
export type World = Readonly<{
  map: HoleMap;
  raster: ObstacleRaster;
  basket: LocalPoint;
  mandos: readonly MandoPlane[];
  /** Where a penalised throw may be played from instead, if the hole has one. */
  dropZone: LocalPoint | null;
}>;

export function makeWorld(map: HoleMap, raster: ObstacleRaster): World {
  const mandos = map.mandos.flatMap(mando =>
    mando.line.slice(1).map((b, i): MandoPlane => {
      const a = mando.line[i];
      return { ax: a[0], ay: a[1], bx: b[0], by: b[1], low_m: mando.low_m, high_m: mando.high_m };
    }),
  );
  return { map, raster, basket: map.basket, mandos, dropZone: map.dropZones[0]?.at ?? null };
}

/** Ground above the tee's ground at a local point. */
export function groundAt(world: World, east_m: number, north_m: number): number {
  return groundHeight(world.map.terrain, east_m, north_m);
}
