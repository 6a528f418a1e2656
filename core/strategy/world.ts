import { type DropZoneUse, USUAL_USES } from '../course/course.ts';
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
  /** The hole's drop zones, if it has them: for out-of-bounds, for a missed mando, for a disc that is not found. */
  dropZone: LocalPoint | null;
  mandoDropZone: LocalPoint | null;
  lostDropZone: LocalPoint | null;
}>;

export function makeWorld(map: HoleMap, raster: ObstacleRaster): World {
  const mandos = map.mandos.flatMap(mando =>
    mando.line.slice(1).map((b, i): MandoPlane => {
      const a = mando.line[i];
      return { ax: a[0], ay: a[1], bx: b[0], by: b[1], low_m: mando.low_m, high_m: mando.high_m };
    }),
  );
  return {
    map,
    raster,
    basket: map.basket,
    mandos,
    dropZone: dropZoneFor(map, 'outOfBounds'),
    mandoDropZone: dropZoneFor(map, 'mando'),
    lostDropZone: dropZoneFor(map, 'lostDisc'),
  };
}

/** The first drop zone that serves a use. */
export function dropZoneFor({ dropZones }: Pick<HoleMap, 'dropZones'>, use: DropZoneUse): LocalPoint | null {
  return dropZones.find(zone => (zone.uses ?? USUAL_USES).includes(use))?.at ?? null;
}

/** Ground above the tee's ground at a local point. */
export function groundAt(world: World, east_m: number, north_m: number): number {
  return groundHeight(world.map.terrain, east_m, north_m);
}
