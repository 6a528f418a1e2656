import type { CourseGround } from '../../core/course/elevation-grid.ts';
import type { Editor } from '../store/changes.ts';
import type { Store } from '../store/open-store.ts';
import { groundDigest, groundFile, readGroundFile } from '../terrain/ground-file.ts';

/** The ground kept beside a course, with what tells it from another. */
type KeptGround = Readonly<{ digest: string; ground: CourseGround }>;

/** The elevation models the library keeps beside its courses. */
export type GroundBook = Readonly<{
  /** Costs next to nothing; undefined: none is kept. */
  digest(courseId: string): string | undefined;
  get(courseId: string): KeptGround | undefined;
}>;

export function groundBook({ tables }: Pick<Store, 'tables'>): GroundBook {
  const digest = (courseId: string) => tables.grounds.get({ courseId })?.digest;
  return {
    digest,
    get: courseId => {
      const known = digest(courseId);
      const file = tables.groundFiles.get({ courseId });
      if (known === undefined || file === undefined) return undefined;
      const ground = readGroundFile(JSON.parse(file.text));
      // Only what was read like this before is ever put there.
      if (!ground.ok) throw new Error(`the ground kept of ${courseId} is damaged: ${JSON.stringify(ground.problems)}`);
      return { digest: known, ground: ground.value };
    },
  };
}

/** Puts ground beside a course, in place of what is there. */
export function putGround(editor: Editor, courseId: string, ground: CourseGround): void {
  const text = JSON.stringify(groundFile(ground));
  editor.put('grounds', { courseId, digest: groundDigest(text) });
  editor.put('groundFiles', { courseId, text });
}

export function removeGround(editor: Editor, courseId: string): void {
  editor.remove('groundFiles', { courseId });
  editor.remove('grounds', { courseId });
}
