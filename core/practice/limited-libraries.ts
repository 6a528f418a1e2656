import type { DayLibraries } from '../strategy/day-libraries.ts';
import type { ShotSpec } from '../strategy/shots.ts';
import { libraryLength, PATH_STRIDE, type TrajectoryLibrary } from '../strategy/trajectory-library.ts';
import { binRoom } from '../strategy/wind-bins.ts';

/**
 * A day's libraries with some shapes of line only. The tightest lines of each shape stay in the field.
 * @throws {RangeError} when no shot of these shapes is there
 */
export function limitedLibraries(libraries: DayLibraries, shapes: readonly ShotSpec['shape'][]): DayLibraries {
  const keep = (shot: ShotSpec) => shapes.includes(shot.shape);
  const shots = libraries.shots.filter(keep);
  if (shots.length === 0) throw new RangeError(`no shot is left with these shapes: ${shapes.join(', ')}`);
  const [all, field] = [limited(libraries.all, keep), limited(libraries.field, keep)];
  const room = () => ({ all: binRoom(), field: binRoom() });
  return { ...libraries, shots, all, field, bins: { open: room(), park: room(), wood: room() } };
}

/** The paths of the shots kept, wind by wind. */
function limited(library: TrajectoryLibrary, keep: (shot: ShotSpec) => boolean): TrajectoryLibrary {
  const { shots, samples, paths, ringSpeed_mps } = library;
  const kept = shots.flatMap((shot, i) => (keep(shot) ? [i] : []));
  if (kept.length === 0) throw new RangeError('no shot of the field is left with these shapes');
  const perShot = samples * PATH_STRIDE;
  // the library may stand in more room than it fills
  const winds = libraryLength(shots.length, samples, ringSpeed_mps) / (shots.length * perShot);
  const some = new Float32Array(winds * kept.length * perShot);
  for (let w = 0; w < winds; w++) {
    kept.forEach((shot, i) => {
      const from = (w * shots.length + shot) * perShot;
      some.set(paths.subarray(from, from + perShot), (w * kept.length + i) * perShot);
    });
  }
  return { ...library, shots: kept.map(i => shots[i]!), paths: some };
}
