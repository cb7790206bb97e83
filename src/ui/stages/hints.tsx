import type { Hint } from '../../advice/guidance/hint.ts';
import type { StageState } from '../../advice/guidance.ts';
import { stillToDo } from '../../advice/guidance.ts';
import { followHint } from '../../commands/go-to.ts';
import { usePanels } from '../../commands/panels.ts';
import './hints.css';

/** What is missing or worth a look, each with a button that leads there. */
export function Hints({ hints }: { readonly hints: readonly Hint[] }) {
  return (
    <ul className="hints">
      {hints.map(({ text, action: offer, missing }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two rooms without a use have the same words
        <li key={`${text}${index}`} className="hint" data-missing={missing || undefined}>
          {text}{' '}
          {offer && (
            <button type="button" className="text-button" onClick={() => followHint(offer)}>
              {offer.label}
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}

/**
 * Everything that is missing on the plan, all levels and stages together, the most important first; then what is worth a look.
 * While it is open the stages below do not say the same again.
 */
export function StillToDo({ stages }: { readonly stages: readonly StageState[] }) {
  const hints = stillToDo(stages);
  const open = usePanels((ui) => ui.toDoOpen);
  const missing = hints.filter((hint) => hint.missing);
  const remarks = hints.filter((hint) => !hint.missing);
  if (hints.length === 0) return null;
  return (
    <details
      className="group to-do"
      open={open}
      onToggle={(event) => usePanels.setState({ toDoOpen: event.currentTarget.open })}
    >
      <summary>
        Still to do{' '}
        <span className="soft">
          {missing.length > 0 ? `${missing.length} missing` : 'none missing'}
          {remarks.length > 0 && `, ${remarks.length} more`}
        </span>
      </summary>
      {open && missing.length > 0 && <Hints hints={missing} />}
      {open && remarks.length > 0 && (
        <>
          <p className="to-do__head">Worth a look</p>
          <Hints hints={remarks} />
        </>
      )}
    </details>
  );
}
