import { type RefObject, type SyntheticEvent, useEffect, useRef } from 'react';
import { flushSync } from 'react-dom';

interface Modal {
  readonly ref: RefObject<HTMLDialogElement | null>;
  /** Closes it: when this returns the focus is back where it was, and the dialog is off the page. */
  readonly shut: () => void;
  /** For the dialog itself. */
  readonly events: {
    readonly onCancel: (event: SyntheticEvent) => void;
    readonly onClose: () => void;
  };
}

/**
 * A dialog that is open while it is on the page. `onShut` takes it off the page.
 *
 * A browser moves the focus back when a dialog closes, but reports the close only with its next frame. Until then the page would still
 * take the dialog for open and ignore its own keys: Control+S after Escape did nothing. So every close goes through `shut`.
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
      // Closed by something else. After `shut` it is off the page, and this comes too late to close what has opened since.
      onClose: () => {
        if (ref.current) onShut();
      },
    },
  };
}
