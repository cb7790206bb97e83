import { type RefObject, type SyntheticEvent, useEffect, useRef } from 'react';
import { flushSync } from 'react-dom';

interface Modal {
  readonly ref: RefObject<HTMLDialogElement | null>;
  /** Closes it: the keyboard is back where it was, and what stood over the page is gone from it, when this returns. */
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
 * A browser gives the keyboard back when a dialog closes, and tells of it only with its next picture. Until then the page would still
 * take the dialog for open and its own keys for somebody else's: Control+S after Escape did nothing. So every way out goes through `shut`.
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
