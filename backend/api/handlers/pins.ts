import type { Problem, Result } from '../../../core/units/result.ts';
import { type AppContext, sayChanged } from '../app-context.ts';
import type { pins } from '../contract/pins.ts';
import { ShotChoiceSchema } from '../contract/values.ts';
import type { Handlers } from '../dispatch.ts';

/** Where no layout is played. */
const MAPPED = '';

export function pinHandlers(app: AppContext): Pick<Handlers, keyof typeof pins> {
  const { store, courses, players } = app;
  const { tables, changes } = store;

  /** Only what is there can be pinned or noted. */
  function check(
    courseId: string,
    layout: string | undefined,
    playerId: string | null,
    ref: string | null,
  ): Result<true> {
    const course = courses.get(courseId, layout);
    const player = playerId === null ? null : players.get(playerId);
    const problems: Problem[] = [course, player].flatMap(found => (found === null || found.ok ? [] : found.problems));
    if (ref !== null && course.ok && !course.value.holes.some(hole => hole.ref === ref))
      problems.push({ path: 'ref', message: `the course has no hole "${ref}"` });
    return problems.length === 0 ? { ok: true, value: true } : { ok: false, problems };
  }

  return {
    listPins: ({ courseId, playerId, layout }) => {
      const there = check(courseId, layout, playerId, null);
      if (!there.ok) return there;
      const value = tables.pins.where({ courseId, playerId, layout: layout ?? MAPPED }).map(({ ref, shot, title }) => ({
        ref,
        shot: ShotChoiceSchema.parse(JSON.parse(shot)),
        title,
      }));
      return { ok: true, value };
    },
    pinShot: ({ courseId, playerId, layout, ref, shot, title }) => {
      const there = check(courseId, layout, playerId, ref);
      if (!there.ok) return there;
      const undo = changes.change(`Pin ${title} on hole ${ref}`, editor =>
        editor.put('pins', { courseId, playerId, layout: layout ?? MAPPED, ref, shot: JSON.stringify(shot), title }),
      );
      sayChanged(app, ['pins']);
      return { ok: true, value: { undo } };
    },
    unpinShot: ({ courseId, playerId, layout, ref }) => {
      const there = check(courseId, layout, playerId, ref);
      if (!there.ok) return there;
      const key = { courseId, playerId, layout: layout ?? MAPPED, ref };
      if (tables.pins.get(key) === undefined)
        return { ok: false, problems: [{ path: 'ref', message: `hole ${ref} has no pinned shot` }] };
      const undo = changes.change(`Unpin hole ${ref}`, editor => editor.remove('pins', key));
      sayChanged(app, ['pins']);
      return { ok: true, value: { undo } };
    },
    listNotes: ({ courseId, layout }) => {
      const there = check(courseId, layout, null, null);
      if (!there.ok) return there;
      const found = tables.notes.where({ courseId, layout: layout ?? MAPPED });
      return { ok: true, value: found.map(({ ref, text }) => ({ ref, text })) };
    },
    setNote: ({ courseId, layout, ref, text }) => {
      const there = check(courseId, layout, null, ref);
      const key = { courseId, layout: layout ?? MAPPED, ref };
      if (!there.ok) return there;
      const undo = changes.change(`Note on hole ${ref}`, editor => {
        if (text.trim() === '') editor.remove('notes', key);
        else editor.put('notes', { ...key, text });
      });
      sayChanged(app, ['notes']);
      return { ok: true, value: { undo } };
    },
  };
}
