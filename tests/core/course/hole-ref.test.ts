import { expect, it } from 'vitest';
import { compareRefs, refKey, refKeys } from '../../../core/course/hole-ref.ts';

it('orders refs as people do', () => {
  expect(['B', '10A', '3', '10', '1', '2', '10B', 'a2', 'A10'].toSorted(compareRefs)).toEqual([
    '1',
    '2',
    '3',
    '10',
    '10A',
    '10B',
    'a2',
    'A10',
    'B',
  ]);
});

it('holds two spellings of a ref to be one', () => {
  expect(['7', '07', ' 7 ', '#7', '# 07'].map(refKey)).toEqual(['7', '7', '7', '7', '7']);
  expect(refKey('10a')).toBe(refKey('10A'));
  expect(refKey('0')).toBe('0');
});

it('reads several refs of one site', () => {
  expect(refKeys('3; 12')).toEqual(['3', '12']);
  expect(refKeys(undefined)).toEqual([]);
});
