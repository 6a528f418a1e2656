import { useEffect, useState } from 'react';
import { usePlanner } from '../state/planner.tsx';

const SHOWN_ms = 5000;

/** The last thing done, for eyes and screen readers. */
export function Said() {
  const { said, say } = usePlanner();
  const [shown, setShown] = useState('');
  useEffect(() => {
    if (said === '') return;
    setShown(said);
    const timer = setTimeout(() => {
      setShown('');
      say('');
    }, SHOWN_ms);
    return () => clearTimeout(timer);
  }, [said, say]);
  return (
    <output className="said" data-empty={shown === '' || undefined}>
      {shown}
    </output>
  );
}
