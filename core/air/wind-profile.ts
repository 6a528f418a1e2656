export const WIND_TABLE_CELLS = 96;
export const WIND_TABLE_TOP_M = 63;

/** 97 ratios u(z)/u(10 m at an open station) at heights z_i = TOP·(i/CELLS)²: uniform, and linear between, in √z. */
export type WindProfile = Float64Array;

/** What lies round the fairway: open ground; parkland with scattered trees; a lane through woods. */
export type Exposure = 'open' | 'park' | 'wood';

// Roughness lengths by the Davenport–Wieringa classes 3 (open), 6 (very rough: parkland) and 7 (closed: forest).
const OPEN_ROUGHNESS_m = 0.03;
const PARK_ROUGHNESS_m = 0.5;
const WOOD_ROUGHNESS_m = 1;
const STATION_HEIGHT_m = 10;
/** Height at which the wind no longer feels the local ground, where the local law is matched to the station's. */
const BLENDING_HEIGHT_m = 60;

// A lane through woods, all assumptions of ours but the source of the two bounds.
/** Assumed tree tops. */
const CANOPY_m = 12;
/** Below this the crowns are closed enough to shelter (assumed two thirds of the canopy). */
const SHELTERED_BELOW_m = 8;
/** Wind near the ground dies out over this height (assumed; a release is above it). */
const STILL_LAYER_m = 1;
/**
 * Wind under the canopy over wind 20 ft above it. Published: 0.1 under a closed dense stand (NWCG, midflame wind tables); from
 * memory 0.2 for an open stand and 0.3 for partly sheltered ground. A fairway is a lane cut through a stand, so wind gets
 * in along it, but the stand's crowns still take most: the middle value. An assumption.
 */
const SHELTER_FACTOR = 0.2;
const ABOVE_CANOPY_m = 20 * 0.3048;

/**
 * The wind's change with height, for the flight integrator. Zero at the ground, never falling with height.
 * @source roughness classes: Davenport–Wieringa (Wieringa 1992); moving a station's wind to other ground: log laws equal at 60 m
 */
export function windProfile(exposure: Exposure): WindProfile {
  const ratio = { open: openRatio, park: parkRatio, wood: woodRatio }[exposure];
  if (ratio === undefined) throw new RangeError(`exposure must be open, park or wood, got ${exposure}`);
  return Float64Array.from({ length: WIND_TABLE_CELLS + 1 }, (_, i) =>
    ratio(WIND_TABLE_TOP_M * (i / WIND_TABLE_CELLS) ** 2),
  );
}

/** The profile at one height, read the way the integrator does; heights below the ground and above the top are held at the ends. */
export function windRatioAt(profile: WindProfile, z_m: number): number {
  if (Number.isNaN(z_m)) throw new RangeError('z_m must be a number, got NaN');
  const at = Math.min(WIND_TABLE_CELLS, Math.sqrt(Math.max(0, z_m) / WIND_TABLE_TOP_M) * WIND_TABLE_CELLS);
  const cell = Math.min(WIND_TABLE_CELLS - 1, Math.floor(at));
  return profile[cell]! + (at - cell) * (profile[cell + 1]! - profile[cell]!);
}

/**
 * The open-station 10 m wind that would give the measured one.
 * @param height_m - of the measurement, 0.5…60
 * @param exposure - of the place of the measurement
 * @throws {RangeError} for a height outside that range or a speed that is negative or not finite
 */
export function windAt10m({
  speed_mps,
  height_m,
  exposure,
}: Readonly<{ speed_mps: number; height_m: number; exposure: Exposure }>): number {
  if (!(speed_mps >= 0 && speed_mps < Number.POSITIVE_INFINITY))
    throw new RangeError(`speed_mps must be 0 or more, got ${speed_mps}`);
  if (!(height_m >= 0.5 && height_m <= 60)) throw new RangeError(`height_m must lie in 0.5…60, got ${height_m}`);
  return speed_mps / windRatioAt(windProfile(exposure), height_m);
}

/**
 * Log law in the form ln((z + z0)/z0), not ln(z/z0): it is zero at the ground, where discs skid, instead of minus infinity,
 * needs no case in the integrator, and from 1 m up is within 0.8 % of the other.
 */
function openRatio(z_m: number): number {
  return (
    Math.log((z_m + OPEN_ROUGHNESS_m) / OPEN_ROUGHNESS_m) /
    Math.log((STATION_HEIGHT_m + OPEN_ROUGHNESS_m) / OPEN_ROUGHNESS_m)
  );
}

/**
 * Log law over rougher ground. Adding z0 would raise the wind at head height by a quarter here (z0 is no longer small),
 * so the plain law holds, and below e·z0 the straight line from the ground that touches it.
 */
function roughRatio(z_m: number, roughness_m: number): number {
  const touch_m = Math.E * roughness_m;
  const shape = z_m < touch_m ? z_m / touch_m : Math.log(z_m / roughness_m);
  return (openRatio(BLENDING_HEIGHT_m) * shape) / Math.log(BLENDING_HEIGHT_m / roughness_m);
}

const parkRatio = (z_m: number): number => roughRatio(z_m, PARK_ROUGHNESS_m);

/** Sheltered under the crowns, the rough law above the tops, a straight line through the crowns between. */
function woodRatio(z_m: number): number {
  if (z_m >= CANOPY_m) return roughRatio(z_m, WOOD_ROUGHNESS_m);
  const sheltered = SHELTER_FACTOR * roughRatio(CANOPY_m + ABOVE_CANOPY_m, WOOD_ROUGHNESS_m);
  if (z_m <= SHELTERED_BELOW_m) return sheltered * Math.min(1, z_m / STILL_LAYER_m);
  const through = (z_m - SHELTERED_BELOW_m) / (CANOPY_m - SHELTERED_BELOW_m);
  return sheltered + through * (roughRatio(CANOPY_m, WOOD_ROUGHNESS_m) - sheltered);
}
