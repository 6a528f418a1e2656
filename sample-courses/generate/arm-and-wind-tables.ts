/**
 * How the kinds of disc answer arm speed and wind: calm carry and sideways finish (left positive) by arm speed, and what 5 m/s
 * of wind at 10 m does at 26 m/s. Measured on a throw-away prototype of our own (its tables of flat throws with the launch
 * chosen again for each wind); they only give the invented fieldwork its proportions.
 */
export const ARM_SPEEDS_MPS = [16, 18, 20, 22, 24, 26, 28, 30] as const;

export type FlightKind = Readonly<{
  carry_m: readonly number[];
  left_m: readonly number[];
  /** Share of the distance that 5 m/s of head- and tailwind add. */
  head: number;
  tail: number;
  /** Metres further left in a head-, tail- and crosswind of 5 m/s (from the right, from the left). */
  headLeft_m: number;
  tailLeft_m: number;
  fromRightLeft_m: number;
  fromLeftLeft_m: number;
  /** Metres of distance lost for each metre the landing lies higher. */
  perRise: number;
}>;

export const flightKinds = {
  putter: {
    carry_m: [35, 43, 51, 59, 67, 74, 81, 88],
    left_m: [1.6, 1.7, 1.9, 2.1, 2.3, 2.6, 2.9, 3.3],
    head: -0.18,
    tail: 0.1,
    headLeft_m: -2.1,
    tailLeft_m: 1.2,
    fromRightLeft_m: 9,
    fromLeftLeft_m: -9.5,
    perRise: 2.2,
  },
  drivingPutter: {
    carry_m: [37, 46, 55, 64, 73, 82, 90, 98],
    left_m: [0.9, 0.8, 0.6, 0.1, -0.6, -1.4, -2.3, -3.4],
    head: -0.18,
    tail: 0.1,
    headLeft_m: -3.3,
    tailLeft_m: 3.9,
    fromRightLeft_m: 8.4,
    fromLeftLeft_m: -9.3,
    perRise: 2.2,
  },
  midrange: {
    carry_m: [40, 51, 61, 72, 83, 93, 103, 112],
    left_m: [2, 1.8, 1.3, 0.3, -1.1, -3, -5.1, -7.5],
    head: -0.17,
    tail: 0.05,
    headLeft_m: -8.1,
    tailLeft_m: 5.2,
    fromRightLeft_m: 8.3,
    fromLeftLeft_m: -9.9,
    perRise: 2.6,
  },
  overstableMidrange: {
    carry_m: [36, 46, 56, 66, 76, 86, 95, 104],
    left_m: [3.6, 3.7, 3.9, 4, 4.3, 4.5, 4.8, 5.1],
    head: -0.11,
    tail: 0.01,
    headLeft_m: -1.6,
    tailLeft_m: 0.3,
    fromRightLeft_m: 8.2,
    fromLeftLeft_m: -8.6,
    perRise: 2.8,
  },
  fairway: {
    carry_m: [41, 53, 65, 77, 89, 100, 111, 122],
    left_m: [3, 2.9, 2.7, 2, 0.9, -0.6, -2.5, -4.6],
    head: -0.13,
    tail: 0.01,
    headLeft_m: -8.2,
    tailLeft_m: 3.8,
    fromRightLeft_m: 8.1,
    fromLeftLeft_m: -9.7,
    perRise: 3.1,
  },
  control: {
    carry_m: [40, 53, 66, 79, 92, 104, 117, 128],
    left_m: [3.9, 4, 3.9, 3.6, 2.9, 1.7, 0.2, -1.5],
    head: -0.1,
    tail: -0.02,
    headLeft_m: -6.8,
    tailLeft_m: 2.6,
    fromRightLeft_m: 7.7,
    fromLeftLeft_m: -9,
    perRise: 3.2,
  },
  distance: {
    carry_m: [35, 48, 62, 76, 90, 104, 118, 130],
    left_m: [5.4, 6, 6.2, 6.3, 6.3, 6.1, 5.6, 4.8],
    head: -0.04,
    tail: -0.06,
    headLeft_m: -3.4,
    tailLeft_m: 0.4,
    fromRightLeft_m: 6.5,
    fromLeftLeft_m: -7.1,
    perRise: 3.3,
  },
} as const satisfies Record<string, FlightKind>;

export type FlightKindName = keyof typeof flightKinds;

/** The table's value at an arm speed, straight lines between its columns and beyond its ends. */
export function atArmSpeed(column: readonly number[], arm_mps: number): number {
  const last = ARM_SPEEDS_MPS.length - 2;
  const i = Math.min(
    last,
    Math.max(
      0,
      ARM_SPEEDS_MPS.findIndex((_, k) => arm_mps <= ARM_SPEEDS_MPS[k + 1]!),
    ),
  );
  const share = (arm_mps - ARM_SPEEDS_MPS[i]!) / (ARM_SPEEDS_MPS[i + 1]! - ARM_SPEEDS_MPS[i]!);
  return column[i]! + share * (column[i + 1]! - column[i]!);
}
