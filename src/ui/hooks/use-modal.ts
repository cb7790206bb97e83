import { type RefObject, type SyntheticEvent, useEffect, useRef } from 'react';
import { flushSync } from 'react-dom';

interface Modal {
  readonly ref: RefObject<HTMLDialogElement | null>;
  /** Closes the dialog: on return the focus is restored, and the dialog is removed from the page. */
  readonly shut: () => void;
  /** Event handlers of the dialog element. */
  readonly events: {
    readonly onCancel: (event: SyntheticEvent) => void;
    readonly onClose: () => void;
  };
}

/**
 * Opens a modal dialog for as long as it is mounted. `onShut` removes it from the page.
 *
 * A browser restores the focus when a dialog closes, but reports the close only in its next frame. Until then the page would treat the
 * dialog as open and ignore shortcuts, such as Control+S after Escape. So every close must go through `shut`.
 */
export function useModal(onShut: () => void): Modal {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (!ref.current?.open) ref.current?.showModal();
  }, []);
  const shut = () => {
    ref.current?.close();
    flushSync(onShut);
  };
  return {
    ref,
    shut,
    events: {
      onCancel: (event) => {
        event.preventDefault();
        shut();
      },
      // Closed by the browser. After `shut` the ref is null, so that this late event does not close a dialog opened since.
      onClose: () => {
        if (ref.current) onShut();
      },
    },
  };
}
