import {
  type Batch,
  gripSlip,
  inventPutting,
  inventSession,
  type SessionPlan,
  type Thrower,
} from './invented-fieldwork.ts';
import { playerText, type Session } from './player-file.ts';
import { bag } from './sample-player-bag.ts';
import { seededRandom } from './seeded-random.ts';

const thrower: Thrower = {
  arm_mps: 25.5,
  forehand: 0.88,
  // slower discs land tighter: 5 % for a putter, about 10 % for the fastest driver
  scatter: discSpeed => 0.05 + (0.045 * (discSpeed - 2)) / 10,
};

const batch = (discId: string, count: number, more: Partial<Batch> = {}): Batch => ({
  discId,
  hand: 'backhand',
  shape: 'flat',
  power: 'full',
  count,
  ...more,
});
const forehand = { hand: 'forehand' } as const;
const hyzer = { shape: 'hyzer' } as const;
const anhyzer = { shape: 'anhyzer' } as const;

/** Nine mornings on the same two fields, calm and windy, level and sloping. */
const plans: readonly SessionPlan[] = [
  {
    date: '2026-03-14',
    wind: { speed_mps: 0.4, from_deg: 200, height_m: 10 },
    bearing_deg: 35,
    rise_m: 0,
    batches: [
      batch('firm-putter', 6),
      batch('throwing-putter', 8),
      batch('driving-putter', 7),
      batch('straight-midrange', 8),
      batch('stable-fairway-driver', 7),
      batch('control-driver', 6),
    ],
  },
  {
    date: '2026-03-28',
    wind: { speed_mps: 4.2, from_deg: 40, height_m: 10 },
    bearing_deg: 35,
    rise_m: 0,
    batches: [
      batch('throwing-putter', 6),
      batch('approach-putter', 5),
      batch('straight-midrange', 6),
      batch('overstable-midrange', 6),
      batch('low-speed-driver', 6),
      batch('overstable-control-driver', 5),
      batch('distance-driver', 5),
    ],
  },
  {
    date: '2026-04-11',
    wind: { speed_mps: 0.8, from_deg: 310, height_m: 10 },
    bearing_deg: 120,
    rise_m: -1.5,
    batches: [
      batch('approach-putter', 6),
      batch('understable-midrange', 7),
      batch('overstable-midrange', 7),
      batch('understable-low-speed-driver', 7),
      batch('understable-distance-driver', 6),
      batch('distance-driver', 6),
    ],
  },
  {
    date: '2026-04-25',
    wind: { speed_mps: 3.5, from_deg: 210, height_m: 10 },
    bearing_deg: 35,
    rise_m: 0,
    batches: [
      batch('throwing-putter', 5),
      batch('driving-putter', 6),
      batch('straight-midrange', 5),
      batch('stable-fairway-driver', 6),
      batch('control-driver', 6),
      batch('distance-driver', 5),
      batch('understable-distance-driver', 5),
    ],
  },
  {
    date: '2026-05-09',
    wind: { speed_mps: 5, from_deg: 125, height_m: 10 },
    bearing_deg: 35,
    rise_m: 0,
    batches: [
      batch('throwing-putter', 5),
      batch('understable-midrange', 5),
      batch('overstable-midrange', 5),
      batch('low-speed-driver', 6),
      batch('control-driver', 5),
      batch('overstable-control-driver', 6),
    ],
  },
  {
    date: '2026-05-23',
    wind: { speed_mps: 0.6, from_deg: 90, height_m: 10 },
    bearing_deg: 35,
    rise_m: 0,
    batches: [
      batch('throwing-putter', 6, forehand),
      batch('straight-midrange', 6, forehand),
      batch('overstable-midrange', 6, forehand),
      batch('stable-fairway-driver', 6, forehand),
      batch('control-driver', 6, forehand),
      batch('overstable-control-driver', 6, forehand),
      batch('distance-driver', 5, forehand),
    ],
  },
  {
    date: '2026-06-06',
    wind: { speed_mps: 2.6, from_deg: 300, height_m: 10 },
    bearing_deg: 120,
    rise_m: 1.2,
    batches: [
      batch('straight-midrange', 4, forehand),
      batch('overstable-midrange', 4, forehand),
      batch('control-driver', 4, forehand),
      batch('overstable-control-driver', 4, forehand),
      batch('driving-putter', 5),
      batch('low-speed-driver', 5),
      batch('understable-low-speed-driver', 5),
      batch('stable-fairway-driver', 5),
    ],
  },
  {
    date: '2026-06-20',
    wind: { speed_mps: 1.1, from_deg: 20, height_m: 10 },
    bearing_deg: 120,
    rise_m: 0,
    batches: [
      batch('throwing-putter', 5, { power: 0.8 }),
      batch('driving-putter', 4, { power: 0.85 }),
      batch('straight-midrange', 5, { power: 0.8 }),
      batch('approach-putter', 4, { power: 0.8 }),
      batch('stable-fairway-driver', 4, { power: 0.9 }),
      batch('overstable-midrange', 4, hyzer),
      batch('understable-midrange', 4, hyzer),
      batch('stable-fairway-driver', 4, hyzer),
      batch('straight-midrange', 3, anhyzer),
    ],
  },
  {
    date: '2026-07-04',
    wind: { speed_mps: 5.8, from_deg: 330, height_m: 10 },
    bearing_deg: 35,
    rise_m: 0,
    batches: [
      batch('firm-putter', 4),
      batch('driving-putter', 4),
      batch('understable-low-speed-driver', 4, anhyzer),
      batch('understable-distance-driver', 4, hyzer),
      batch('overstable-control-driver', 5),
      batch('control-driver', 4),
      batch('distance-driver', 6),
      batch('straight-midrange', 5),
    ],
  },
];

/** The n-th throw of a session went wrong in the hand. */
const slips: readonly (readonly [session: number, nth: number])[] = [
  [0, 37],
  [3, 27],
  [5, 20],
  [8, 32],
];

/** The practised player: 14 discs, 300 and more measured throws. */
export function samplePlayer(): string {
  const random = seededRandom(140625);
  const clean = plans.map(plan => inventSession(plan, bag, thrower, random));
  const sessions = clean.map(
    (session, i): Session => ({
      ...session,
      throws: session.throws.map((t, n) =>
        slips.some(([s, nth]) => s === i && nth === n) ? gripSlip(t, true, random) : t,
      ),
    }),
  );
  const putts: readonly (readonly [number, number])[] = [
    [3, 80],
    [4, 100],
    [5, 100],
    [6, 120],
    [7, 100],
    [8, 100],
    [9, 100],
    [10, 100],
    [11, 60],
    [12, 60],
    [13, 50],
    [15, 60],
    [18, 60],
    [20, 40],
  ];
  return playerText({
    schema: 'roundwright/player@1',
    name: 'Sample player',
    handedness: 'right',
    discs: bag.map(h => h.disc),
    sessions,
    putting: inventPutting(putts, 9, 3.5, random),
  });
}
