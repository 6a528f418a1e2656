import { describe, expect, it } from 'vitest';
import { loadCaution } from '../../../core/player/session-load.ts';

const throws = (count: number, hand: 'backhand' | 'forehand') =>
  Array.from({ length: count }, () => ({
    discId: 'mid',
    hand,
    shape: 'flat' as const,
    power: 'full' as const,
    distance_m: 80,
    side_m: 0,
  }));

describe('the load of a session', () => {
  // limits are the code's own, assumed
  it.each([
    { backhands: 59, forehands: 0, says: null },
    { backhands: 60, forehands: 0, says: /^60 throws/ },
    { backhands: 0, forehands: 24, says: null },
    { backhands: 0, forehands: 25, says: /^25 forehands.*elbow/ },
    { backhands: 50, forehands: 30, says: /^30 forehands/ },
  ])('$backhands backhands, $forehands forehands', ({ backhands, forehands, says }) => {
    const caution = loadCaution({ throws: [...throws(backhands, 'backhand'), ...throws(forehands, 'forehand')] });
    if (says === null) expect(caution).toBeNull();
    else expect(caution).toMatch(says);
  });
});
