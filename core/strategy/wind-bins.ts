import { levelLanding, PATH_STRIDE, pathsInWind, type TrajectoryLibrary } from './trajectory-library.ts';

const BINS = 32;
const MADE = 1;

/** One relative wind's paths `[shot][sample][PATH_STRIDE]`, and where the middle of each shot lands on the level: `[along, left, forward per fall]`. */
type WindBin = Readonly<{ paths: Float32Array; landing: Float32Array }>;

/**
 * A library's paths in every relative wind at one exposure, filled bin by bin when first asked for, and kept between holes. The
 * memory may be shared between threads: two that fill the same bin write the same numbers. Pages never written cost nothing.
 */
export type BinRoom = Readonly<{ views: (WindBin | undefined)[]; shared?: SharedBins }>;

type SharedBins = Readonly<{ paths: Float32Array; landing: Float32Array; made: Int32Array }>;

/** The library as one hole meets it: a table per relative wind, made when first asked for. */
export type WindBins = Readonly<{
  library: TrajectoryLibrary;
  /** The bin for throws aimed at a true bearing. */
  at(aimBearing_deg: number): WindBin;
  /** How far the shortest shot lands along an aim. */
  leastReach_m(aimBearing_deg: number): number;
  /** Lets the room go; bins asked for later are made again, in room of their own. */
  release(): void;
}>;

export function binRoom(): BinRoom {
  return { views: [] };
}

/** Room that threads share, for a library of so many shots and samples. */
export function sharedBinRoom(shots: number, samples: number, ringSpeed_mps: number): BinRoom {
  const bins = binCount(ringSpeed_mps);
  const shared = {
    paths: sharedFloats(bins * shots * samples * PATH_STRIDE),
    landing: sharedFloats(bins * shots * 3),
    made: new Int32Array(new SharedArrayBuffer(4 * bins)),
  };
  return { views: [], shared };
}

/** Zeroed numbers that threads can share. */
export function sharedFloats(length: number): Float32Array {
  return new Float32Array(new SharedArrayBuffer(Float32Array.BYTES_PER_ELEMENT * length));
}

/**
 * @param windFrom_deg - true bearing the wind comes from
 * @param share - wind at the hole's exposure as a share of the open one
 * @param room - kept between holes of the same exposure in the same wind, whatever its direction
 */
export function windBins(
  library: TrajectoryLibrary,
  windFrom_deg: number,
  share: number,
  room: BinRoom = binRoom(),
): WindBins {
  const bins = binCount(library.ringSpeed_mps);
  const { shots, samples } = library;
  let own = room;
  const point = new Float64Array(3);

  function open(bin: number): WindBin {
    const length = shots.length * samples * PATH_STRIDE;
    const { shared, views } = own;
    const paths = shared?.paths.subarray(bin * length, (bin + 1) * length) ?? new Float32Array(length);
    const landing =
      shared?.landing.subarray(3 * bin * shots.length, 3 * (bin + 1) * shots.length) ??
      new Float32Array(3 * shots.length);
    if (shared === undefined || Atomics.load(shared.made, bin) !== MADE) {
      pathsInWind(library, (bin * 360) / bins, share, paths);
      for (let s = 0; s < shots.length; s++) {
        levelLanding(paths, s * samples * PATH_STRIDE, point);
        landing.set(point, 3 * s);
      }
      if (shared !== undefined) Atomics.store(shared.made, bin, MADE);
    }
    const view = { paths, landing };
    views[bin] = view;
    return view;
  }

  function at(aimBearing_deg: number): WindBin {
    const relative = (((windFrom_deg - aimBearing_deg) % 360) + 360) % 360;
    const bin = Math.round((relative * bins) / 360) % bins;
    return own.views[bin] ?? open(bin);
  }

  return {
    library,
    at,
    leastReach_m(aimBearing_deg) {
      const { landing } = at(aimBearing_deg);
      let least = Number.POSITIVE_INFINITY;
      for (let s = 0; s < shots.length; s++) least = Math.min(least, landing[3 * s]);
      return least;
    },
    release() {
      own = binRoom();
    },
  };
}

function binCount(ringSpeed_mps: number): number {
  return ringSpeed_mps === 0 ? 1 : BINS;
}
