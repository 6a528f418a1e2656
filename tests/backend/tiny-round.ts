import { collection, feature, hole, line, point } from '../core/course/course-file.ts';

/** Two open holes of 80 m and a tree, in level country. */
export const tinyCourse = (...more: object[]): object =>
  collection(
    feature(
      {
        type: 'Polygon',
        coordinates: [
          [
            [24.99, 59.99],
            [25.02, 59.99],
            [25.02, 60.01],
            [24.99, 60.01],
            [24.99, 59.99],
          ],
        ],
      },
      { leisure: 'disc_golf_course', name: 'Tiny Links' },
    ),
    ...hole('1'),
    ...hole('2', 200),
    point([40, 25], { natural: 'tree', height: '9', min_height: '2', diameter_crown: '5', circumference: '1' }),
    line(
      [
        [60, -10],
        [60, 10],
      ],
      { highway: 'path' },
    ),
    ...more,
  );

const throwsOf = (discId: string, hand: string, distances_m: readonly number[]) =>
  distances_m.map((distance_m, i) => ({ discId, hand, distance_m, side_m: ((i * 7) % 5) - 2 }));

/** A player of three discs, forehand measured with one: small, so that the fit takes no time. */
export const tinyPlayer = (): {
  discs: Record<string, unknown>[];
  sessions: Record<string, unknown>[];
  [key: string]: unknown;
} => ({
  schema: 'roundwright/player@1',
  name: 'Tiny Player',
  handedness: 'right',
  discs: [
    { id: 'putt', name: 'Home putter', speed: 2, glide: 3, turn: 0, fade: 1, role: 'putting' },
    { id: 'throw', name: 'Throwing putter', speed: 3, glide: 4, turn: 0, fade: 1 },
    { id: 'mid', name: 'Plain midrange', speed: 5, glide: 5, turn: -1, fade: 1 },
  ],
  sessions: [
    {
      date: '2026-05-01',
      throws: [
        ...throwsOf('throw', 'backhand', [61, 64, 66, 62, 65, 63, 60, 67, 64]),
        ...throwsOf('mid', 'backhand', [78, 84, 80, 82, 76, 83, 79, 81, 85]),
        ...throwsOf('mid', 'forehand', [60, 66, 63]),
      ],
    },
  ],
  putting: [
    { distance_m: 3, attempts: 40, makes: 38 },
    { distance_m: 8, attempts: 40, makes: 16 },
  ],
});
