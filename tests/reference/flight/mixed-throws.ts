import { windProfile } from '../../../core/air/wind-profile.ts';
import { type DiscModel, discModel } from '../../../core/flight/disc-model.ts';
import type { ProductionAir } from './production-equations.ts';
import type { ReferenceRelease } from './release.ts';
import type { GroundPlane } from './surroundings.ts';
import { vector } from './vector.ts';

export type MixedThrow = Readonly<{
  disc: DiscModel;
  release: ReferenceRelease;
  air: ProductionAir;
  ground: GroundPlane;
}>;

// One of each kind that a bag holds, from the slow putter to the distance driver.
const DISCS = [
  [2, 3, 0, 1],
  [3, 4, -0.5, 0.5],
  [5, 5, -1, 1],
  [5, 4, 0, 3],
  [7, 5, -1, 1.5],
  [9, 5, -1, 2],
  [13, 5, -1, 3],
].map(([speed, glide, turn, fade]) => ({
  model: discModel({ speed: speed!, glide: glide!, turn: turn!, fade: fade! }),
  // launch that suits the disc thrown flat; own prototype
  launch_deg: 10.5 - 0.33 * speed!,
}));

/**
 * Ordinary throws of every disc: 16–30 m/s, both hands, launch and nose within two spreads of a player, a little anhyzer
 * to plain hyzer, wind to 8 m/s from anywhere, ground sloping up to 8 %. The same list for the same seed.
 */
export function mixedThrows(count: number, seed: number): readonly MixedThrow[] {
  const random = generator(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const profile = windProfile('open');
  return Array.from({ length: count }, (_, index) => {
    const speed_mps = between(16, 30);
    const { model, launch_deg } = DISCS[index % DISCS.length]!;
    const clockwise = random() < 0.7 ? -1 : 1;
    const [wind_mps, towards_rad] = [between(0, 8), between(0, 2 * Math.PI)];
    return {
      disc: model,
      release: {
        speed_mps,
        // advance ratio 0.46: assumed
        spin_radps: (clockwise * 0.46 * speed_mps) / (model.diameter_m / 2),
        launch_deg: launch_deg + between(-3, 3),
        nose_deg: between(-3, 3),
        hyzer_deg: between(-6, 15),
        azimuth_deg: between(-5, 5),
        height_m: 1.2,
      },
      air: {
        density_kgpm3: between(1, 1.3),
        wind_mps: vector(wind_mps * Math.cos(towards_rad), wind_mps * Math.sin(towards_rad), 0),
        profile,
      },
      ground: { height_m: 0, slopeX: between(-0.08, 0.08), slopeY: between(-0.08, 0.08) },
    };
  });
}

/** Uniform numbers in [0, 1). Source: mulberry32, public domain (Tommy Ettinger, 2017). */
function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
