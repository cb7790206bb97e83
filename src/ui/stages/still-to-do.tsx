import { type ReactNode, type RefObject, useEffect, useRef } from 'react';
import { type StageState, stillToDo } from '../../advice/stages.ts';
import { usePanels } from '../../commands/panels.ts';
import { Hints } from './hints.tsx';
import './still-to-do.css';

interface Props {
  readonly stages: readonly StageState[];
  /** The full sentence on the state of the test. */
  readonly lead: ReactNode;
}

/**
 * Everything that is missing on the plan, over all levels and stages, the most important first; then remarks. It covers the page while it
 * is open, and closes with Escape, with a press outside it or after a press on one of its buttons.
 */
export function StillToDo({ stages, lead }: Props) {
  const hints = stillToDo(stages);
  const open = usePanels((ui) => ui.toDoOpen);
  const list = useRef<HTMLDetailsElement>(null);
  useCloseOutside(list, open);
  const missing = hints.filter((hint) => hint.missing);
  const remarks = hints.filter((hint) => !hint.missing);
  return (
    <details
      ref={list}
      className="to-do"
      open={open}
      onToggle={(event) => usePanels.setState({ toDoOpen: event.currentTarget.open })}
    >
      <summary className="button">
        Still to do{' '}
        <span className="soft">
          {missing.length > 0 && missing.length}
          <span className="to-do__more">{missing.length > 0 ? ' missing' : 'none for the verdict'}</span>
          {remarks.length > 0 && <span className="to-do__more">, {remarks.length} more</span>}
        </span>
      </summary>
      {open && (
        <div className="to-do__list">
          <p>{lead}</p>
          {missing.length > 0 && <Hints hints={missing} onFollow={close} />}
          {remarks.length > 0 && (
            <>
              <p className="to-do__head">Worth checking</p>
              <Hints hints={remarks} onFollow={close} />
            </>
          )}
        </div>
      )}
    </details>
  );
}

const close = (): void => usePanels.setState({ toDoOpen: false });

/** Closes the list on Escape, which moves the focus to its button, and on a press outside it. */
function useCloseOutside(list: RefObject<HTMLDetailsElement | null>, open: boolean): void {
  useEffect(() => {
    if (!open) return;
    const onDown = ({ target }: PointerEvent) => {
      if (target instanceof Node && !list.current?.contains(target)) close();
    };
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || !list.current?.contains(document.activeElement)) return;
      event.preventDefault();
      list.current.querySelector('summary')?.focus();
      close();
    };
    document.addEventListener('pointerdown', onDown);
    document.addEventListener('keydown', onKey, true);
    return () => {
      document.removeEventListener('pointerdown', onDown);
      document.removeEventListener('keydown', onKey, true);
    };
  }, [list, open]);
}
