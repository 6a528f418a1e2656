import { afterEach, describe, expect, it, vi } from 'vitest';
import { type PlanProgress, type PlanRequest, planRound } from '../../../backend/planning/plan-round.ts';
import { makeDay } from '../../../core/air/day.ts';
import { parseCourse } from '../../../core/course/parse-course.ts';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import { parsePlayer } from '../../../core/player/player-file.ts';
import type { Result } from '../../../core/units/result.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';

const taken = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};
const request: PlanRequest = {
  course: taken(parseCourse(tinyCourse(), 'tiny')),
  player: fitPlayer(taken(parsePlayer(tinyPlayer()))),
  day: taken(makeDay({ wind: { speed_mps: 3, from_deg: 40 } })),
  limits: { classes: ['putter'], hands: ['backhand'] },
  seed: 7,
};

describe('planRound', () => {
  it('reports each hole once, gives the same plan whatever the number of threads, and another for another seed', async () => {
    const seen: PlanProgress[] = [];
    const one = taken(await planRound(request, { threads: 1, onProgress: progress => seen.push(progress) }));
    expect(seen).toEqual([
      { done: 1, total: 2, ref: expect.any(String) },
      { done: 2, total: 2, ref: expect.any(String) },
    ]);
    expect(seen.map(({ ref }) => ref).sort()).toEqual(['1', '2']);
    expect(taken(await planRound(request, { threads: 2 }))).toEqual(one);
    const other = taken(await planRound({ ...request, seed: 8, holes: ['1'] }));
    expect(other.holes[0]!.expectedThrows).not.toBe(one.holes[0]!.expectedThrows);
    expect(other.seed).toBe(8);
  });

  it('stops when asked to, before and during', async () => {
    await expect(planRound(request, { signal: AbortSignal.abort() })).rejects.toThrow(/abort/i);
    const stop = new AbortController();
    const running = planRound(request, { threads: 1, signal: stop.signal, onProgress: () => stop.abort() });
    await expect(running).rejects.toThrow(/abort/i);
  });

  it.each([
    { change: { holes: ['9'] }, path: 'holes', says: 'no hole 9' },
    {
      change: { limits: { classes: ['distance'] } } as const,
      path: 'limits',
      says: 'no disc to throw that is distance',
    },
  ])('refuses $change', async ({ change, path, says }) => {
    const result = await planRound({ ...request, ...change });
    expect(result).toMatchObject({ ok: false, problems: [{ path, message: expect.stringContaining(says) }] });
  });
});

describe('planRound without threads', () => {
  afterEach(() => {
    vi.doUnmock('tinypool');
    vi.resetModules();
  });

  it('fails with a message', async () => {
    vi.resetModules();
    vi.doMock('tinypool', () => ({
      Tinypool: class {
        constructor() {
          throw new Error('no room');
        }
      },
    }));
    const fresh = await import('../../../backend/planning/plan-round.ts');
    await expect(fresh.planRound(request)).rejects.toThrow('the planning threads could not be started: no room');
  });
});
