import { describe, expect, it } from 'vitest';
import { heightWord, namedHeight } from '../../../core/strategy/height-word.ts';
import { shotTitle } from '../../../core/strategy/shot-title.ts';

// bounds of 4 and 8 m: common practice, no source
describe('the height of a throw', () => {
  it('is told by its peak as written: none called high peaks below one called low', () => {
    expect([1.2, 3.94, 3.96, 7.94, 7.96, 20].map(heightWord)).toEqual([
      'low',
      'low',
      'middle',
      'middle',
      'high',
      'high',
    ]);
  });

  it('is part of the name only where launch and peak agree', () => {
    expect(namedHeight({ height: 'high', apex_m: 3.5 })).toBeNull();
    expect(namedHeight({ height: 'low', apex_m: 3.7 })).toBe('low');
    expect(namedHeight({ height: 'low', apex_m: 6 })).toBeNull();
    expect(namedHeight({ height: 'standard', apex_m: 2 })).toBeNull();
  });

  it('stands in the title as it stands beside the figure', () => {
    const shot = { throwIndex: 0, shape: 'flat', hyzer_deg: 0, launch_deg: 5, power: 1 } as const;
    const title = (height: 'low' | 'standard' | 'high', apex_m: number) =>
      shotTitle({ ...shot, height }, 'midrange', 'backhand', { fromTee: true, toBasket_m: 90, distance_m: 88, apex_m });
    expect(title('low', 3.7)).toBe('low midrange line, flat');
    expect(title('low', 5)).toBe('midrange off the tee, flat');
    expect(title('high', 3.5)).toBe('midrange off the tee, flat');
  });
});
