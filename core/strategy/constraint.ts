import type { ObstacleRaster } from '../geometry/obstacle-raster.ts';
import type { SolvedHole } from './hole-solver.ts';
import type { World } from './world.ts';

/**
 * What can be taken away from a hole to see what a choice hangs on: everything overhead (crowns, ceilings), everything that
 * stands on the ground (stems, walls, undergrowth), both, the wind, or penalty ground and mandos.
 */
export type Constraint = 'overhead' | 'standing' | 'trees' | 'wind' | 'penalty';

/** Wind below this moves a throw by less than its scatter: not looked at. */
const FELT_WIND_MPS = 1;

/** The constraints a hole has at all, those that stand alone before `trees`. */
export function constraintsOf({ world, table }: Pick<SolvedHole, 'world' | 'table'>): readonly Constraint[] {
  const { raster, mandos } = world;
  const found: Constraint[] = [];
  const overhead = raster.highDensity.some(density => density > 0);
  const standing = raster.lowDensity.some(density => density > 0);
  if (overhead) found.push('overhead');
  if (standing) found.push('standing');
  if (table.windSpeed_mps >= FELT_WIND_MPS) found.push('wind');
  if (mandos.length > 0 || raster.lostShare !== undefined || raster.zone.some(bits => bits !== 0))
    found.push('penalty');
  if (overhead && standing) found.push('trees');
  return found;
}

/** The same hole without a constraint; what a lie is worth is not looked at. The wind is no part of a world: it comes back as it is. */
export function worldWithout(world: World, constraint: Constraint): World {
  const { raster } = world;
  const none = () => new Float32Array(raster.columns * raster.rows);
  switch (constraint) {
    case 'overhead':
      return { ...world, raster: { ...raster, highDensity: none() } };
    case 'standing':
      return { ...world, raster: { ...raster, lowDensity: none() } };
    case 'trees':
      return { ...world, raster: { ...raster, highDensity: none(), lowDensity: none() } };
    case 'penalty':
      return { ...world, mandos: [], raster: withoutPenalties(raster) };
    case 'wind':
      return world;
    default:
      return constraint satisfies never;
  }
}

function withoutPenalties({ lostShare: _, ...raster }: ObstacleRaster): ObstacleRaster {
  return { ...raster, zone: new Uint8Array(raster.zone.length) };
}
