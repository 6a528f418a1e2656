import type { Habit } from './invented-fieldwork.ts';
import type { Disc } from './player-file.ts';

const disc = (
  id: string,
  name: string,
  discClass: Disc['class'],
  [speed, glide, turn, fade]: readonly [number, number, number, number],
  [mass_g, diameter_mm, rimWidth_mm]: readonly [number, number, number],
  wear: number,
): Disc => ({
  id,
  name,
  class: discClass,
  speed,
  glide,
  turn,
  fade,
  mass_g,
  diameter_mm,
  rimWidth_mm,
  wear,
  role: id === 'firm-putter' ? 'putting' : 'throwing',
});

/** Slow to fast; distance and finish (right positive) as this player throws them, backhand, calm. */
export const bag: readonly Habit[] = [
  {
    disc: disc('firm-putter', 'Firm putter', 'putter', [2, 3, 0, 1], [173, 210, 9.5], 0.2),
    kind: 'putter',
    distance_m: 67,
    side_m: -3.4,
  },
  {
    disc: disc('throwing-putter', 'Throwing putter', 'putter', [2, 3, 0, 1], [173, 210, 10], 0.35),
    kind: 'putter',
    distance_m: 70,
    side_m: -3.2,
  },
  {
    disc: disc('approach-putter', 'Approach putter, overstable', 'putter', [3, 2, 0, 3], [172, 210, 11], 0.1),
    kind: 'putter',
    distance_m: 63,
    side_m: -6.5,
  },
  {
    disc: disc('driving-putter', 'Straight driving putter', 'putter', [3, 4, -0.5, 0.5], [174, 211, 11], 0.3),
    kind: 'drivingPutter',
    distance_m: 78,
    side_m: 0.2,
  },
  {
    disc: disc('straight-midrange', 'Straight midrange', 'midrange', [5, 5, -1, 1], [177, 216, 13], 0.25),
    kind: 'midrange',
    distance_m: 92,
    side_m: 0.6,
  },
  {
    disc: disc('understable-midrange', 'Understable midrange', 'midrange', [5, 5, -2.5, 1], [175, 216, 13], 0.5),
    kind: 'midrange',
    distance_m: 91,
    side_m: 5.5,
  },
  {
    disc: disc('overstable-midrange', 'Overstable midrange', 'midrange', [5, 4, 0, 3], [178, 217, 13], 0.1),
    kind: 'overstableMidrange',
    distance_m: 85,
    side_m: -6.6,
  },
  {
    disc: disc('low-speed-driver', 'Low-speed driver', 'fairway', [6, 5, -0.5, 1.5], [174, 212, 15], 0.2),
    kind: 'fairway',
    distance_m: 96,
    side_m: -2.6,
  },
  {
    disc: disc(
      'understable-low-speed-driver',
      'Understable low-speed driver',
      'fairway',
      [6, 5, -2.5, 1],
      [170, 212, 15],
      0.4,
    ),
    kind: 'fairway',
    distance_m: 96,
    side_m: 4.5,
  },
  {
    disc: disc('stable-fairway-driver', 'Stable fairway driver', 'fairway', [7, 5, -1, 1.5], [173, 212, 16.5], 0.2),
    kind: 'fairway',
    distance_m: 99,
    side_m: -1.4,
  },
  {
    disc: disc('control-driver', 'Control driver', 'control', [9, 5, -1, 2], [173, 212, 18], 0.15),
    kind: 'control',
    distance_m: 103,
    side_m: -4.4,
  },
  {
    disc: disc(
      'overstable-control-driver',
      'Overstable control driver',
      'control',
      [9, 4, 0, 3.5],
      [174, 212, 18],
      0.05,
    ),
    kind: 'control',
    distance_m: 96,
    side_m: -9.4,
  },
  {
    disc: disc(
      'understable-distance-driver',
      'Understable distance driver',
      'distance',
      [11, 5, -3, 2],
      [167, 211, 20.5],
      0.3,
    ),
    kind: 'distance',
    distance_m: 105,
    side_m: 0.8,
  },
  {
    disc: disc('distance-driver', 'Distance driver', 'distance', [12, 5, -1, 3], [171, 211, 22], 0.1),
    kind: 'distance',
    distance_m: 104,
    side_m: -8.2,
  },
];
