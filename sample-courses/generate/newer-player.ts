import {
  type Batch,
  type Habit,
  inventPutting,
  inventSession,
  type SessionPlan,
  type Thrower,
} from './invented-fieldwork.ts';
import { playerText } from './player-file.ts';
import { seededRandom } from './seeded-random.ts';

/** Slow to fast; distance and finish (right positive) as this player throws them, backhand, calm. The last was a present. */
const habits: readonly Habit[] = [
  {
    disc: {
      id: 'soft-putter',
      name: 'Soft putter',
      class: 'putter',
      speed: 2,
      glide: 3,
      turn: 0,
      fade: 1,
      mass_g: 170,
      diameter_mm: 210,
      rimWidth_mm: 9.5,
      wear: 0.1,
      role: 'putting',
    },
    kind: 'putter',
    distance_m: 48,
    side_m: -2.6,
  },
  {
    disc: {
      id: 'gliding-putter',
      name: 'Gliding putter',
      class: 'putter',
      speed: 3,
      glide: 4,
      turn: -0.5,
      fade: 0.5,
      mass_g: 170,
      diameter_mm: 211,
      rimWidth_mm: 11,
      wear: 0.1,
      role: 'throwing',
    },
    kind: 'drivingPutter',
    distance_m: 54,
    side_m: -1.6,
  },
  {
    disc: {
      id: 'light-midrange',
      name: 'Light midrange',
      class: 'midrange',
      speed: 5,
      glide: 5,
      turn: -1,
      fade: 1,
      mass_g: 168,
      diameter_mm: 216,
      rimWidth_mm: 13,
      wear: 0.2,
      role: 'throwing',
    },
    kind: 'midrange',
    distance_m: 60,
    side_m: -2.8,
  },
  {
    disc: {
      id: 'understable-midrange',
      name: 'Understable midrange',
      class: 'midrange',
      speed: 4,
      glide: 5,
      turn: -2,
      fade: 1,
      mass_g: 166,
      diameter_mm: 216,
      rimWidth_mm: 12.5,
      wear: 0.1,
      role: 'throwing',
    },
    kind: 'midrange',
    distance_m: 60,
    side_m: -1.2,
  },
  {
    disc: {
      id: 'fairway-driver',
      name: 'Understable fairway driver',
      class: 'fairway',
      speed: 7,
      glide: 5,
      turn: -2,
      fade: 1,
      mass_g: 163,
      diameter_mm: 212,
      rimWidth_mm: 16.5,
      wear: 0.1,
      role: 'throwing',
    },
    kind: 'fairway',
    distance_m: 62,
    side_m: -4,
  },
  {
    disc: {
      id: 'fast-driver',
      name: 'Fast distance driver',
      class: 'distance',
      speed: 13,
      glide: 5,
      turn: -1,
      fade: 3,
      mass_g: 172,
      diameter_mm: 211,
      rimWidth_mm: 22.5,
      wear: 0,
      role: 'throwing',
    },
    kind: 'distance',
    distance_m: 60,
    side_m: -10,
  },
];

const thrower: Thrower = { arm_mps: 20, forehand: 0.78, scatter: discSpeed => 0.07 + (0.05 * (discSpeed - 2)) / 11 };

const batch = (discId: string, count: number, more: Partial<Batch> = {}): Batch => ({
  discId,
  hand: 'backhand',
  shape: 'flat',
  power: 'full',
  count,
  ...more,
});

const plans: readonly SessionPlan[] = [
  {
    date: '2026-05-02',
    wind: { speed_mps: 0.5, from_deg: 180, height_m: 10 },
    bearing_deg: 270,
    rise_m: 0,
    batches: [
      batch('soft-putter', 5),
      batch('gliding-putter', 6),
      batch('light-midrange', 8),
      batch('fairway-driver', 6),
    ],
  },
  {
    date: '2026-05-17',
    wind: { speed_mps: 1, from_deg: 250, height_m: 10 },
    bearing_deg: 270,
    rise_m: 0,
    batches: [
      batch('gliding-putter', 4),
      batch('light-midrange', 6),
      batch('understable-midrange', 7),
      batch('fast-driver', 8),
    ],
  },
  {
    date: '2026-06-07',
    wind: { speed_mps: 3.2, from_deg: 265, height_m: 10 },
    bearing_deg: 270,
    rise_m: 0,
    batches: [
      batch('gliding-putter', 5),
      batch('light-midrange', 6),
      batch('understable-midrange', 5),
      batch('fairway-driver', 5),
    ],
  },
  {
    date: '2026-06-28',
    wind: { speed_mps: 2.4, from_deg: 350, height_m: 10 },
    bearing_deg: 270,
    rise_m: -0.8,
    batches: [
      batch('light-midrange', 5, { hand: 'forehand' }),
      batch('understable-midrange', 4),
      batch('fairway-driver', 5),
      batch('soft-putter', 4, { power: 0.85 }),
    ],
  },
];

/** The newer player: midrange 60 m, a fast driver they cannot use yet. */
export function newerPlayer(): string {
  const random = seededRandom(600084);
  const sessions = plans.map(plan => inventSession(plan, habits, thrower, random));
  const putts: readonly (readonly [number, number])[] = [
    [3, 40],
    [4, 40],
    [5, 50],
    [6, 60],
    [7, 40],
    [8, 40],
    [9, 30],
    [10, 30],
    [12, 20],
  ];
  return playerText({
    schema: 'roundwright/player@1',
    name: 'Newer player',
    handedness: 'right',
    discs: habits.map(h => h.disc),
    sessions,
    putting: inventPutting(putts, 5.3, 3.2, random),
  });
}
