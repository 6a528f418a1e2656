import { useQuery } from '@tanstack/react-query';
import { useEffect, useId, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { createPortal } from 'react-dom';
import { usePlanner } from '../state/planner.tsx';

type PackageLicence = Readonly<{ name: string; version: string; licence: string; text: string }>;

/** Opens what the app is, and under which terms its parts come. */
export function AboutButton() {
  const dialog = useRef<HTMLDialogElement>(null);
  const [isOpen, setOpen] = useState(false);
  const title = useId();
  useEffect(() => {
    if (isOpen) dialog.current?.showModal();
  }, [isOpen]);
  return (
    <>
      <Button className="small-button" onPress={() => setOpen(true)}>
        About Roundwright
      </Button>
      {isOpen &&
        // Out of the panel that holds the button: it closes when the focus leaves it.
        createPortal(
          <dialog ref={dialog} className="about" aria-labelledby={title} onClose={() => setOpen(false)}>
            <h2 id={title}>About Roundwright</h2>
            <AboutText />
            <Button className="button" onPress={() => dialog.current?.close()}>
              Close
            </Button>
          </dialog>,
          document.body,
        )}
    </>
  );
}

function AboutText() {
  const { backend } = usePlanner();
  const notes = useQuery({ queryKey: ['startNotes'], queryFn: () => backend.call.getStartNotes({}) });
  const licences = useQuery({
    queryKey: ['licences'],
    // Written beside the page when it is built.
    queryFn: async () => (await (await fetch('licences.json')).json()) as PackageLicence[],
    staleTime: Number.POSITIVE_INFINITY,
  });
  return (
    <>
      <p>
        Version {notes.data?.ok ? notes.data.value.version : '…'}, under the MIT licence. It plans with your own throws;
        its numbers are estimates. Local rules, the course's staff and your own eyes come first.
      </p>
      <h3>Parts made by others</h3>
      {licences.isError && <p>The list of licences is not here: build the app again, or look into its node_modules.</p>}
      {licences.isPending && <p>Reading the list…</p>}
      <ul className="licences">
        {licences.data?.map(({ name, version, licence, text }) => (
          <li key={`${name}@${version}`}>
            {text === '' ? (
              <p>
                {name} {version}, {licence}
              </p>
            ) : (
              <details>
                <summary>
                  {name} {version}, {licence}
                </summary>
                <pre>{text}</pre>
              </details>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
