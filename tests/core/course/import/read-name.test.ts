import { describe, expect, it } from 'vitest';
import { readName } from '../../../../core/course/import/read-name.ts';

/* What names say, by our own rules: no source but how players name things. */
describe('readName', () => {
  it.each([
    ['Hole 3 tee', { role: 'tee', ref: '3' }],
    ['T3', { role: 'tee', ref: '3', byLetter: true }],
    ['3T', { role: 'tee', ref: '3', byLetter: true }],
    ['b12', { role: 'basket', ref: '12', byLetter: true }],
    ['3 basket', { role: 'basket', ref: '3' }],
    ['Tee 3 long', { role: 'tee', ref: '3', label: 'long' }],
    ['tee_03-red', { role: 'tee', ref: '3', label: 'red' }],
    ['Tee 3A', { role: 'tee', ref: '3', letter: 'A' }],
    ['H7 pin B', { role: 'basket', ref: '7', label: 'b' }],
    ['Hole 5 par 4 tee', { role: 'tee', ref: '5', par: 4 }],
    ['Tee 3 (95 m)', { role: 'tee', ref: '3' }],
    ['95m tee 3', { role: 'tee', ref: '3' }],
    ['Korb 4', { role: 'basket', ref: '4' }],
    ['Väylä 6 heittopaikka', { role: 'tee', ref: '6' }],
    ['DÉPART 2', { role: 'tee', ref: '2' }],
    ['Koš 9', { role: 'basket', ref: '9' }],
    ['Drop zone 5', { role: 'dropZone', ref: '5' }],
    ['Mando right, hole 8', { role: 'mandoRight', ref: '8' }],
    ['OB left of 3', { role: 'outOfBounds' }],
    ['Out of bounds', { role: 'outOfBounds' }],
    ['2 dogleg', { role: 'bend', ref: '2' }],
    ['Mill pond', { role: 'water' }],
  ])('%s', (name, wanted) => {
    expect(readName(name)).toMatchObject(wanted);
  });

  it.each(['Car park', '2026-05-03', 'Walk 3 May 2026', '007 1234', '', '…', 'Northern lights', '100'])(
    'says nothing of a hole: %s',
    name => {
      const { role, ref } = readName(name);
      expect(role).toBeUndefined();
      if (/\d{4}|^100$/.test(name)) expect(ref).toBeUndefined();
    },
  );

  it('notices two things in one name', () => {
    expect(readName('Tee 4 / basket 3').contradicts).toBe(true);
    expect(readName('Tee 4').contradicts).toBe(false);
  });
});
