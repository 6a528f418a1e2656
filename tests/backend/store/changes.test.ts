import fc from 'fast-check';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Editor } from '../../../backend/store/changes.ts';
import { openStore, type Store } from '../../../backend/store/open-store.ts';
import { taken } from '../taken.ts';
import { temporaryFolder } from '../temporary-folder.ts';

function openedStore(folder = temporaryFolder()): Store {
  const store = taken(openStore(folder));
  onTestFinished(() => store.close());
  return store;
}
const courseRow = (courseId: string, name: string) =>
  ({ courseId, name, fileName: 'a.geojson', sample: 0, addedAt_ms: 1 }) as const;
const everything = ({ tables }: Store) => ({
  courses: tables.courses.where(),
  files: tables.courseFiles.where(),
  players: tables.players.where(),
  pins: tables.pins.where(),
  notes: tables.notes.where(),
});

describe('changes', () => {
  it('takes a change back and does it again', () => {
    const store = openedStore();
    const { changes, tables } = store;
    changes.change('Add A', editor => editor.put('courses', courseRow('a', 'A')));
    const rename = changes.change('Rename A', editor => editor.put('courses', courseRow('a', 'B')));
    const back = taken(changes.undo(rename.changeId));
    expect(back.change.what).toBe('Undo: Rename A');
    expect(back.tables).toEqual(['courses']);
    expect(tables.courses.get({ courseId: 'a' })?.name).toBe('A');
    const again = taken(changes.undo(back.change.changeId));
    expect(again.change.what).toBe('Redo: Rename A');
    expect(tables.courses.get({ courseId: 'a' })?.name).toBe('B');
    expect(changes.list().map(({ what }) => what)).toEqual(['Redo: Rename A', 'Undo: Rename A', 'Rename A', 'Add A']);
  });

  it('refuses to take back what was changed again since, and changes nothing', () => {
    const { changes, tables } = openedStore();
    const first = changes.change('Note', editor => {
      editor.put('courses', courseRow('a', 'A'));
      editor.put('notes', { courseId: 'a', layout: '', ref: '1', text: 'one' });
    });
    changes.change('Note again', editor => editor.put('notes', { courseId: 'a', layout: '', ref: '1', text: 'two' }));
    expect(changes.undo(first.changeId)).toMatchObject({
      ok: false,
      problems: [{ path: 'changeId', message: expect.stringContaining('changed again since') }],
    });
    expect(tables.notes.get({ courseId: 'a', layout: '', ref: '1' })?.text).toBe('two');
    expect(tables.courses.where()).toHaveLength(1);
    expect(changes.list()).toHaveLength(2);
  });

  it('refuses to leave a pin without its player', () => {
    const { changes, tables } = openedStore();
    changes.change('Add course', editor => editor.put('courses', courseRow('a', 'A')));
    const player = changes.change('Add player', editor =>
      editor.put('players', { playerId: 'p', file: '{}', sample: 0, addedAt_ms: 1 }),
    );
    changes.change('Pin', editor =>
      editor.put('pins', { courseId: 'a', playerId: 'p', layout: '', ref: '1', shot: '{}', title: 't' }),
    );
    expect(changes.undo(player.changeId)).toMatchObject({ ok: false, problems: [{ path: 'changeId' }] });
    expect(tables.players.where()).toHaveLength(1);
  });

  it('writes nothing when the edit throws', () => {
    const { changes, tables } = openedStore();
    expect(() =>
      changes.change('Fail', editor => {
        editor.put('courses', courseRow('a', 'A'));
        throw new Error('no');
      }),
    ).toThrow('no');
    expect(tables.courses.where()).toEqual([]);
    expect(changes.list()).toEqual([]);
  });

  it('remembers the last 200 only', () => {
    const { changes } = openedStore();
    const [first] = Array.from({ length: 201 }, (_, i) =>
      changes.change(`${i}`, editor => editor.put('courses', courseRow('a', `A${i}`))),
    );
    expect(changes.list()).toHaveLength(200);
    expect(changes.undo(first!.changeId)).toMatchObject({ ok: false });
  });

  it('undone in reverse, any edits leave what stood before', () => {
    const store = openedStore();
    const id = fc.constantFrom('a', 'b');
    const edit = fc.oneof(
      fc.tuple(fc.constant('put'), fc.constant('courses'), id, fc.string({ minLength: 1 })),
      fc.tuple(fc.constant('remove'), fc.constant('courses'), id, fc.constant('')),
      fc.tuple(fc.constant('put'), fc.constant('notes'), id, fc.string({ minLength: 1 })),
      fc.tuple(fc.constant('remove'), fc.constant('notes'), id, fc.constant('')),
    );
    const apply = (editor: Editor, [how, table, key, text]: readonly string[]) => {
      if (table === 'courses' && how === 'put') editor.put('courses', courseRow(key!, text!));
      else if (table === 'courses') editor.remove('courses', { courseId: key! });
      else if (how === 'put') editor.put('notes', { courseId: key!, layout: '', ref: '1', text: text! });
      else editor.remove('notes', { courseId: key!, layout: '', ref: '1' });
    };
    fc.assert(
      fc.property(fc.array(fc.array(edit, { maxLength: 5 }), { maxLength: 6 }), changesMade => {
        const before = everything(store);
        const made: string[] = [];
        for (const edits of changesMade) {
          try {
            made.push(
              store.changes.change('some', editor => {
                for (const one of edits) apply(editor, one);
              }).changeId,
            );
          } catch (error) {
            // A note without its course is refused as a whole.
            expect((error as { code?: string }).code).toBe('SQLITE_CONSTRAINT_FOREIGNKEY');
          }
        }
        for (const changeId of made.toReversed()) taken(store.changes.undo(changeId));
        expect(everything(store)).toEqual(before);
      }),
      { numRuns: 60, seed: 4 },
    );
  });
});
