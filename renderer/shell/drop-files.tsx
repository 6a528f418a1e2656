import { useEffect, useState } from 'react';
import { readFiles } from './files.ts';
import { useTakePicked } from './use-import.ts';

const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;

/** Files dropped anywhere on the window are taken in. */
export function DropFiles() {
  const [isOver, setOver] = useState(false);
  const take = useTakePicked();
  useEffect(() => {
    const over = (event: DragEvent) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(false);
      void readFiles([...(event.dataTransfer?.files ?? [])]).then(take);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('dragleave', leave);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('dragleave', leave);
      window.removeEventListener('drop', drop);
    };
  }, [take]);
  return isOver ? (
    <div className="drop-hint">Drop a map of a course, a player, a table of throws, a round or a library file</div>
  ) : null;
}
