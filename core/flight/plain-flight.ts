import type { DiscModel } from './disc-model.ts';

/**
 * The disc as a plain body for throws that do not glide on their flat: drag that does not ask for the attitude, and a steady push to
 * the side the top faces, both with the square of the speed through the air; no moment turns it. Flown by the same integrators as
 * any disc.
 * @param drag - coefficient on the area of the disc's face
 * @param push - coefficient of the push along the disc's normal, signed
 * @throws {RangeError} naming the coefficient that no flight has
 * @source projectile with quadratic drag (textbook mechanics); the steady push is our own stand-in for how the disc turns over,
 * fitted to the measured finish, not validated
 */
export function plainFlightModel(disc: DiscModel, drag: number, push: number): DiscModel {
  if (!(drag >= 0) || !Number.isFinite(drag)) throw new RangeError(`drag must be 0 or more, got ${drag}`);
  if (!Number.isFinite(push)) throw new RangeError(`push must be finite, got ${push}`);
  return {
    ...disc,
    lift0: push,
    liftSlope: 0,
    dragMin: drag,
    dragRise: 0,
    // never reached: the drag does not rise
    dragMax: drag + 1,
    sineAtLeastDrag: 0,
    turnMoment: 0,
    baseMoment: 0,
    turnSine: 0,
    turnWidth: 1,
    fadeMoment: 0,
    fadeSine: 0,
    fadeWidth: 1,
    spinRoll: 0,
    damping: 0,
    spinDecay: 0,
  };
}
