import { useEffect, useRef } from 'react';
import type { MenuCommand } from '../../backend/api/desktop-bridge.ts';
import { useCourse } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { offerFile } from './files.ts';
import { useImport } from './use-import.ts';
import { goTo } from './use-place.ts';

const isTyping = (target: EventTarget | null) =>
  target instanceof HTMLElement && (target.isContentEditable || /^(input|textarea)$/i.test(target.tagName));

function openReading(): void {
  const reading = document.querySelector('details.reading');
  if (reading instanceof HTMLDetailsElement) reading.open = true;
}

/** Shortcuts of the keyboard, and the shell's menu where there is one. */
export function useCommands(): void {
  const { undo, redo, settings, change, backend, tell } = usePlanner();
  const course = useCourse(settings.courseId);
  const take = useImport();
  const step = (by: number) => {
    const refs = course.data?.holes.map(hole => hole.ref) ?? [];
    const next = refs[refs.indexOf(settings.ref ?? '') + by];
    if (next !== undefined) change({ ref: next });
  };
  const openFiles = async (kind: 'course' | 'player' | 'library') => {
    const answer = await backend.desktop?.desktop.openFiles({ kind });
    if (answer === undefined) return;
    if (!answer.ok) return tell({ what: 'The files could not be opened', problems: answer.problems });
    if (answer.value.problems.length > 0)
      tell({ what: 'Some files could not be read', problems: answer.value.problems });
    await take(answer.value.files);
  };
  const exportLibrary = async () => {
    const answer = await backend.call.exportLibrary({});
    const kept = answer.ok ? await offerFile(backend, answer.value) : answer;
    if (!kept.ok) tell({ what: 'The library could not be written', problems: kept.problems });
  };
  const commands: Record<MenuCommand, () => unknown> = {
    undo,
    redo,
    previousHole: () => step(-1),
    nextHole: () => step(1),
    importCourse: () => openFiles('course'),
    importPlayer: () => openFiles('player'),
    importLibrary: () => openFiles('library'),
    exportLibrary,
    printSheet: () => goTo('sheet'),
    savePdf: () => goTo('sheet'),
    showSettings: openReading,
    showShortcuts: openReading,
  };
  const run = (command: MenuCommand) => void commands[command]();
  const latest = useRef({ run, take });
  latest.current = { run, take };

  useEffect(() => {
    const keyDown = (event: KeyboardEvent) => {
      const isCommand = event.ctrlKey || event.metaKey;
      const key = event.key.toLowerCase();
      const command: MenuCommand | null =
        isCommand && key === 'z' && !isTyping(event.target)
          ? event.shiftKey
            ? 'redo'
            : 'undo'
          : isCommand && key === 'y' && !isTyping(event.target)
            ? 'redo'
            : event.altKey && event.key === 'PageUp'
              ? 'previousHole'
              : event.altKey && event.key === 'PageDown'
                ? 'nextHole'
                : null;
      if (command === null) return;
      event.preventDefault();
      latest.current.run(command);
    };
    window.addEventListener('keydown', keyDown);
    return () => window.removeEventListener('keydown', keyDown);
  }, []);

  useEffect(() => {
    const { desktop } = backend;
    if (desktop === null) return;
    const takeWaiting = async () => {
      const answer = await desktop.desktop.takeOpenedFiles({});
      if (!answer.ok) return tell({ what: 'The files could not be opened', problems: answer.problems });
      if (answer.value.problems.length > 0)
        tell({ what: 'Some files could not be read', problems: answer.value.problems });
      await latest.current.take(answer.value.files);
    };
    void takeWaiting();
    return desktop.subscribeDesktop(event => {
      if (event.kind === 'command') latest.current.run(event.command);
      else void takeWaiting();
    });
  }, [backend, tell]);
}
