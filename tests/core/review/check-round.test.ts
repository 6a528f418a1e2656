import { describe, expect, it } from 'vitest';
import { parseCourse } from '../../../core/course/parse-course.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import { checkRound } from '../../../core/review/check-round.ts';
import { parseRound } from '../../../core/review/round-file.ts';
import { taken } from '../../backend/taken.ts';
import { tinyCourse, tinyPlayer } from '../../backend/tiny-round.ts';

describe('a round that does not fit its player', () => {
  it('names every unknown disc, and lists the bag once', () => {
    const course = taken(parseCourse(tinyCourse(), 'tiny'));
    const maps = course.holes.map(hole => buildHoleMap(course, hole));
    const rest = { east_m: 30, north_m: 0 };
    const holes = [{ ref: '1', throws: ['brick', 'plate', 'brick'].map(discId => ({ discId, rest })) }];
    const round = taken(parseRound({ schema: 'roundwright/round@1', date: '2026-05-30', holes }));
    const player = tinyPlayer() as unknown as { name: string; discs: { id: string }[] };
    const messages = checkRound(round, maps, player as never).map(({ message }) => message);
    const list = `: ${player.discs.map(({ id }) => id).join(', ')}`;
    expect(messages).toEqual([
      `"brick" is no disc of ${player.name}${list}`,
      `"plate" is no disc of ${player.name}`,
      `"brick" is no disc of ${player.name}`,
    ]);
  });
});
