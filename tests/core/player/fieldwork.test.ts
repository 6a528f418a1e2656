import { describe, expect, it } from 'vitest';
import { fieldRecords } from '../../../core/player/fieldwork.ts';
import { parsePlayer } from '../../../core/player/player-file.ts';

const groupsOf = (sessions: unknown[]) => {
  const parsed = parsePlayer({
    name: 'Invented',
    handedness: 'right',
    discs: [{ id: 'lantern', name: 'Lantern', speed: 5, glide: 5, turn: -1, fade: 1 }],
    sessions,
  });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return fieldRecords(parsed.value)[0]!.groups;
};
const throws = [{ discId: 'lantern', distance_m: 80, side_m: -3 }];

describe('fieldwork in the throw frame', () => {
  // by hand: wind blows from `from_deg`; x along the throw, y left; the wind table reads 10 m within 0.02 %
  it.each([
    { name: 'headwind', from_deg: 40, x: -5, y: 0 },
    { name: 'tailwind', from_deg: 220, x: 5, y: 0 },
    { name: 'from the right, blowing left', from_deg: 130, x: 0, y: 5 },
    { name: 'from the left, blowing right', from_deg: -50, x: 0, y: -5 },
  ])('$name', ({ from_deg, x, y }) => {
    const [group] = groupsOf([{ wind: { speed_mps: 5, from_deg }, bearing_deg: 40, throws }]);
    expect(Math.abs(group!.windX_mps - x)).toBeLessThanOrEqual(1e-3);
    expect(Math.abs(group!.windY_mps - y)).toBeLessThanOrEqual(1e-3);
  });

  it('brings a wind measured at head height up to 10 m', () => {
    const [group] = groupsOf([{ wind: { speed_mps: 3, from_deg: 0, height_m: 2 }, bearing_deg: 0, throws }]);
    // [C] log law over open ground, roughness 0.03 m: 3 · ln(10.03/0.03)/ln(2.03/0.03) = 4.137; the table reads it within 1 %
    expect(Math.abs(group!.windX_mps + 4.137)).toBeLessThanOrEqual(0.04);
  });

  it('groups throws made under the same conditions, over sessions', () => {
    const groups = groupsOf([
      { throws },
      { throws: [...throws, { ...throws[0], shape: 'hyzer' }] },
      { rise_m: 4, throws },
    ]);
    expect(groups.map(g => `${g.shape} ${g.throws.length} ${g.grade}`)).toEqual([
      'flat 2 0',
      'hyzer 1 0',
      'flat 1 0.05',
    ]);
    expect(groups[0]!.throws[0]).toEqual({ along_m: 80, left_m: 3, path: 'sessions[0].throws[0]' });
  });
});
