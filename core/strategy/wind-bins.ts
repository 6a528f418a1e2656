import { levelLanding, PATH_STRIDE, pathsInWind, type TrajectoryLibrary } from './trajectory-library.ts';

const BINS = 32;

/** One relative wind's paths `[shot][sample][PATH_STRIDE]`, and where the middle of each shot lands on the level: `[along, left, forward per fall]`. */
type WindBin = Readonly<{ paths: Float64Array; landing: Float64Array }>;

/** The library as one hole meets it: a table per relative wind, made when first asked for. */
export type WindBins = Readonly<{
  library: TrajectoryLibrary;
  /** The bin for throws aimed at a true bearing. */
  at(aimBearing_deg: number): WindBin;
  /** How far the shortest shot lands along an aim. */
  leastReach_m(aimBearing_deg: number): number;
}>;

/**
 * @param windFrom_deg - true bearing the wind comes from
 * @param share - wind at the hole's exposure as a share of the open one
 */
export function windBins(library: TrajectoryLibrary, windFrom_deg: number, share: number): WindBins {
  const made = new Map<number, WindBin>();
  const bins = library.ringSpeed_mps === 0 ? 1 : BINS;
  const { shots, samples } = library;
  function make(bin: number): WindBin {
    const paths = new Float64Array(shots.length * samples * PATH_STRIDE);
    pathsInWind(library, (bin * 360) / bins, share, paths);
    const landing = new Float64Array(shots.length * 3);
    const point = new Float64Array(3);
    for (let s = 0; s < shots.length; s++) {
      levelLanding(paths, s * samples * PATH_STRIDE, point);
      landing.set(point, 3 * s);
    }
    return { paths, landing };
  }
  return {
    library,
    leastReach_m(aimBearing_deg) {
      const { landing } = this.at(aimBearing_deg);
      let least = Number.POSITIVE_INFINITY;
      for (let s = 0; s < shots.length; s++) least = Math.min(least, landing[3 * s]);
      return least;
    },
    at(aimBearing_deg) {
      const relative = (((windFrom_deg - aimBearing_deg) % 360) + 360) % 360;
      const bin = Math.round((relative * bins) / 360) % bins;
      let found = made.get(bin);
      if (!found) {
        found = make(bin);
        made.set(bin, found);
      }
      return found;
    },
  };
}
