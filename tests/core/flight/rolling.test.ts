import { describe, expect, it } from 'vitest';
import { windProfile } from '../../../core/air/wind-profile.ts';
import { discModel } from '../../../core/flight/disc-model.ts';
import { createFlier, LANDING } from '../../../core/flight/flier.ts';
import { groundPlay, SURFACE_FRICTION } from '../../../core/flight/ground-play.ts';
import { roll } from '../../../core/flight/rolling.ts';

const RADIUS_M = 0.106;
const GRAVITY_MPS2 = 9.80665;
const K = 0.68; // moment of inertia share of rolling.ts

type Down = Readonly<{ speed_mps: number; lean_deg: number; spin_radps: number; drop_mps?: number }>;

/** A disc that comes down along x on its edge, its top to the right (a right-hand backhand rolled forwards spins clockwise). */
function edgeOn({ speed_mps, lean_deg, spin_radps, drop_mps = 1 }: Down): Float64Array {
  const landing = new Float64Array(10);
  const lean = (lean_deg * Math.PI) / 180;
  landing[LANDING.vx] = speed_mps;
  landing[LANDING.vz] = -drop_mps;
  landing[LANDING.ny] = -Math.cos(lean);
  landing[LANDING.nz] = Math.sin(lean);
  landing[LANDING.spin] = spin_radps;
  return landing;
}
function rolled(landing: Float64Array, resistance = 0.2, gradX = 0): readonly [number, number] {
  const out = new Float64Array(2);
  roll(landing, RADIUS_M, resistance, gradX, 0, out);
  return [out[0], out[1]];
}
const withoutSlip = (speed_mps: number) => -speed_mps / RADIUS_M;

describe('a disc on its edge', () => {
  it.each([8, 14, 20])('upright and without slip rolls (v² − 1.5²)/2μg at %d m/s, straight on', speed_mps => {
    // energy against a constant resistance; 1.5 m/s is where rolling.ts lets it fall
    const want = (speed_mps ** 2 - 1.5 ** 2) / (2 * 0.2 * GRAVITY_MPS2);
    const [x, y] = rolled(edgeOn({ speed_mps, lean_deg: 0, spin_radps: withoutSlip(speed_mps) }));
    expect(Math.abs(x - want)).toBeLessThan(0.6); // a step of 0.5 m
    expect(Math.abs(y)).toBeLessThan(1e-9);
  });

  it('that slides first keeps its angular momentum about the ground: v′ = (v + k·ω·r)/(1 + k)', () => {
    const even = (18 + K * 6) / (1 + K);
    const [slipping] = rolled(edgeOn({ speed_mps: 18, lean_deg: 0, spin_radps: withoutSlip(6) }));
    const [rolling] = rolled(edgeOn({ speed_mps: even, lean_deg: 0, spin_radps: withoutSlip(even) }));
    expect(slipping).toBeCloseTo(rolling, 9);
  });

  it.each([-1, 1])(
    'leaning bends to the side its upper edge leans to, by g·tan(lean)/(1 + k)v² a metre (lean %d·4°)',
    sign => {
      const speed_mps = 15;
      const out = rolled(edgeOn({ speed_mps, lean_deg: 4 * sign, spin_radps: withoutSlip(speed_mps) }), 0.2);
      // top to the right and looking up: the upper edge leans left
      expect(Math.sign(out[1])).toBe(sign);
      // by hand for the first metres: heading after s is c·s/v², so y ≈ c·s²/2v² while v hardly changes
      const bend = (GRAVITY_MPS2 * Math.tan((4 * Math.PI) / 180)) / (1 + K);
      const short = rolled(edgeOn({ speed_mps, lean_deg: 4 * sign, spin_radps: withoutSlip(speed_mps) }), 2.2);
      const want = (bend * short[0] ** 2) / (2 * speed_mps ** 2);
      expect(Math.abs(short[1])).toBeGreaterThan(0.8 * want - 0.05);
      expect(Math.abs(short[1])).toBeLessThan(3 * want + 0.05);
    },
  );

  it.each([
    { speed_mps: 20, lean_deg: 6, resistance: 0.2 },
    { speed_mps: 16, lean_deg: -9, resistance: 0.3 },
  ])(
    'rolls a logarithmic spiral: turned by c·ln(v₀/v), c = tan(lean)/(1 + k)μ ($speed_mps m/s, $lean_deg°, μ $resistance)',
    ({ speed_mps, lean_deg, resistance }) => {
      // v falls by μg a second and the heading turns by g·tan(lean)/(1 + k)v: ∫ v e^(iθ) dt in closed form, by hand
      const c = Math.tan((lean_deg * Math.PI) / 180) / ((1 + K) * resistance);
      const u = Math.log(speed_mps / 1.5);
      const scale = speed_mps ** 2 / (resistance * GRAVITY_MPS2) / (4 + c * c);
      const [re, im] = [1 - Math.exp(-2 * u) * Math.cos(c * u), -Math.exp(-2 * u) * Math.sin(c * u)];
      const [x, y] = [scale * (2 * re - c * im), scale * (c * re + 2 * im)];
      const [rolledX, rolledY] = rolled(
        edgeOn({ speed_mps, lean_deg, spin_radps: withoutSlip(speed_mps) }),
        resistance,
      );
      // steps of 0.5 m
      expect(Math.hypot(rolledX - x, rolledY - y)).toBeLessThan(0.02 * Math.hypot(x, y) + 0.6);
    },
  );

  it('rolls further downhill and less far uphill', () => {
    const down = edgeOn({ speed_mps: 12, lean_deg: 0, spin_radps: withoutSlip(12) });
    const [flat] = rolled(down);
    expect(rolled(down, 0.2, -0.05)[0]).toBeGreaterThan(flat * 1.2);
    expect(rolled(down, 0.2, 0.05)[0]).toBeLessThan(flat * 0.85);
  });
});

describe('ground play', () => {
  const play = (landing: Float64Array) => {
    const out = new Float64Array(2);
    groundPlay(landing, RADIUS_M, SURFACE_FRICTION.turf, 0, 0, out);
    return Math.hypot(out[0], out[1]);
  };

  it('rolls a disc that lands on its edge, and neither one that lies flat, nor spins against its travel, nor drops steeply', () => {
    const spin_radps = withoutSlip(10);
    const rolling = play(edgeOn({ speed_mps: 18, lean_deg: 10, spin_radps }));
    expect(rolling).toBeGreaterThan(30);
    for (const other of [
      edgeOn({ speed_mps: 18, lean_deg: 60, spin_radps }),
      edgeOn({ speed_mps: 18, lean_deg: 10, spin_radps: -spin_radps }),
      edgeOn({ speed_mps: 10, lean_deg: 10, spin_radps, drop_mps: 12 }),
    ])
      expect(play(other)).toBeLessThan(0.7 * rolling);
  });

  it('changes gradually from lying down to rolling', () => {
    let before = play(edgeOn({ speed_mps: 18, lean_deg: 25, spin_radps: withoutSlip(10) }));
    for (let lean_deg = 25.5; lean_deg <= 45; lean_deg += 0.5) {
      const now = play(edgeOn({ speed_mps: 18, lean_deg, spin_radps: withoutSlip(10) }));
      expect(Math.abs(now - before)).toBeLessThan(4);
      before = now;
    }
  });

  it('a steep anhyzer thrown low rolls further than it flies, a flat throw never rolls (common practice)', () => {
    const flier = createFlier();
    flier.setDisc(discModel({ speed: 9, glide: 5, turn: -2, fade: 1 }));
    flier.setAir(1.2, 0, 0, windProfile('open'));
    flier.setPlane(0, 0, 0);
    const out = new Float64Array(2);
    const thrown = (hyzer_deg: number) => {
      flier.fly(22, 0, 3, 0, hyzer_deg, -0.46 * (22 / RADIUS_M), 1.2);
      groundPlay(flier.landing, RADIUS_M, SURFACE_FRICTION.turf, 0, 0, out);
      return { flown: flier.landing[LANDING.x], played: Math.hypot(out[0], out[1]) };
    };
    const roller = thrown(-75);
    expect(roller.played).toBeGreaterThan(roller.flown);
    const flat = thrown(0);
    expect(flat.played).toBeLessThan(0.5 * flat.flown);
  });
});
