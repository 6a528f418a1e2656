import { WIND_TABLE_CELLS, WIND_TABLE_TOP_M, type WindProfile } from '../../../core/air/wind-profile.ts';
import { type DiscSpec, discModel, releaseSpeedShare } from '../../../core/flight/disc-model.ts';
import { createFlier, LANDING } from '../../../core/flight/flier.ts';
import { RELEASE_HEIGHT_M, releaseSpin_radps } from '../../../core/flight/release.ts';

/** Invented discs of every class, by trade numbers. */
export const BAG = {
  putter: { speed: 2, glide: 3, turn: 0, fade: 1 },
  drivingPutter: { speed: 3, glide: 4, turn: -0.5, fade: 0.5 },
  midrange: { speed: 5, glide: 5, turn: -1, fade: 1 },
  overstableMid: { speed: 5, glide: 4, turn: 0, fade: 3 },
  fairway: { speed: 7, glide: 5, turn: -1, fade: 1.5 },
  control: { speed: 9, glide: 5, turn: -1, fade: 2 },
  distance: { speed: 13, glide: 5, turn: -1, fade: 3 },
} as const satisfies Record<string, DiscSpec>;
export type DiscName = keyof typeof BAG;
export const DISC_NAMES = Object.keys(BAG) as DiscName[];

/** Power law of exponent 0.15 for open ground (assumed): the wind of the prototype whose figures are checked for regression. */
export const POWER_LAW: WindProfile = Float64Array.from(
  { length: WIND_TABLE_CELLS + 1 },
  (_, i) => (Math.max(WIND_TABLE_TOP_M * (i / WIND_TABLE_CELLS) ** 2, 0.05) / 10) ** 0.15,
);

export type ThrowSetting = Readonly<{
  /** Release speed is this times the disc's share. */
  arm_mps: number;
  launch_deg?: number;
  nose_deg?: number;
  hyzer_deg?: number;
  azimuth_deg?: number;
  /** Multiplies the backhand's spin. */
  spinFactor?: number;
  /** Velocity of the air at 10 m: ahead, and to the left. */
  windX_mps?: number;
  windY_mps?: number;
  density_kgpm3?: number;
  /** Rise of the ground per metre ahead. */
  grade?: number;
}>;

export type Landed = Readonly<{
  launch_deg: number;
  along_m: number;
  left_m: number;
  apex_m: number;
  time_s: number;
  spin_radps: number;
  /** How far the disc leans to the left at touchdown. */
  lean_deg: number;
  /** Sideways extremes of the path. */
  mostLeft_m: number;
  mostRight_m: number;
  /** State at touchdown, `LANDING` indices. */
  touchdown: Float64Array;
}>;

const flier = createFlier();
// fine enough that numerical error, under 0.1 mm, cannot decide a comparison
const STEP_S = 0.02;

function prepare(spec: DiscSpec, setting: ThrowSetting): (launch_deg: number) => Landed {
  const model = discModel(spec);
  flier.setDisc(model);
  flier.setAir(setting.density_kgpm3 ?? 1.2, setting.windX_mps ?? 0, setting.windY_mps ?? 0, POWER_LAW);
  flier.setPlane(0, setting.grade ?? 0, 0);
  flier.setStep(STEP_S);
  const speed_mps = setting.arm_mps * releaseSpeedShare(spec.speed);
  const spin = (setting.spinFactor ?? 1) * releaseSpin_radps('backhand', 'right', speed_mps, model.diameter_m);
  return launch_deg => {
    const landed = flier.fly(
      speed_mps,
      setting.azimuth_deg ?? 0,
      launch_deg,
      setting.nose_deg ?? 0,
      setting.hyzer_deg ?? 0,
      spin,
      RELEASE_HEIGHT_M,
    );
    if (!landed) throw new RangeError('still in the air');
    const at = flier.landing;
    const sideways = Array.from({ length: flier.pathPoints() }, (_, i) => flier.path[3 * i + 1]!);
    return {
      launch_deg,
      along_m: at[LANDING.x]!,
      left_m: at[LANDING.y]!,
      apex_m: flier.apex_m(),
      time_s: flier.time_s(),
      spin_radps: at[LANDING.spin]!,
      lean_deg: (Math.asin(at[LANDING.ny]!) * 180) / Math.PI,
      mostLeft_m: Math.max(...sideways),
      mostRight_m: -Math.min(...sideways),
      touchdown: at.slice(),
    };
  };
}

/** A right-hand backhand, thrown flat unless the setting says otherwise, at 1.2 m over level ground in air of 1.2 kg/m³. */
export function thrown(spec: DiscSpec, setting: ThrowSetting & { launch_deg: number }): Landed {
  return prepare(spec, setting)(setting.launch_deg);
}

/** The same with the launch, in tenths of a degree within 1…24, that carries farthest along the aim. */
export function farthest(spec: DiscSpec, setting: ThrowSetting): Landed {
  const fly = prepare(spec, setting);
  const best = (from: number, to: number, by: number): Landed => {
    let found = fly(from);
    for (let launch_deg = from + by; launch_deg <= to + 1e-9; launch_deg += by) {
      const next = fly(launch_deg);
      if (next.along_m > found.along_m) found = next;
    }
    return found;
  };
  const { launch_deg } = best(1, 24, 1);
  return best(Math.max(1, launch_deg - 1), launch_deg + 1, 0.1);
}

/** The lowest launch (and so the lowest flight) that carries `along_m`, found to 1 mm; null when out of reach. */
export function lowestThat(spec: DiscSpec, setting: ThrowSetting, along_m: number): Landed | null {
  const most = farthest(spec, setting);
  if (most.along_m < along_m) return null;
  const fly = prepare(spec, setting);
  let [low, high] = [-8, most.launch_deg];
  while (high - low > 1e-4) {
    const middle = (low + high) / 2;
    if (fly(middle).along_m < along_m) low = middle;
    else high = middle;
  }
  return fly(high);
}
