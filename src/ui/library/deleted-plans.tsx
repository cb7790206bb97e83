import { useState } from 'react';
import { counted } from '../../../geometry/messages/index.ts';
import { TRASH_DAYS } from '../../storage/library/plans.ts';
import type { PlanSummary } from '../../storage/library/records.ts';
import { titleWords } from '../../storage/library/summary.ts';
import { whenWords } from './dates.ts';
import { emptyTrash, restorePlan, saveCardAsFile } from './library-actions.ts';

/** What was put away, and can still be had back. */
export function DeletedPlans({ cards, now }: { readonly cards: readonly PlanSummary[]; readonly now: number }) {
  const [sure, setSure] = useState(false);
  if (cards.length === 0) return null;
  const sorted = [...cards].sort((a, b) => (b.binnedAt ?? 0) - (a.binnedAt ?? 0));
  return (
    <details className="trash">
      <summary>The bin: {counted(cards.length, 'plan')}</summary>
      <p>
        Each stays {TRASH_DAYS} days, then it goes for good.{' '}
        <button type="button" className="text-button" onClick={() => setSure(true)}>
          Empty the bin now
        </button>
      </p>
      {sure && (
        <div className="trash__sure" role="alert">
          <p>{counted(cards.length, 'plan')} with all versions will be gone for good. This cannot be undone.</p>
          <div className="buttons">
            <button type="button" className="button" onClick={() => setSure(false)}>
              Keep the bin
            </button>
            <button type="button" className="button" onClick={() => void emptyTrash(cards).then(() => setSure(false))}>
              Empty it
            </button>
          </div>
        </div>
      )}
      <ul className="trash__rows">
        {sorted.map((card) => (
          <li key={card.id}>
            <span>
              <strong>{titleWords(card)}</strong> {card.place}{' '}
              <span className="soft">put here {whenWords(card.binnedAt ?? 0, now)}</span>
            </span>
            <button
              type="button"
              className="button"
              aria-label={`Put ${titleWords(card)} back on the shelf`}
              onClick={() => void restorePlan(card)}
            >
              Put back
            </button>
            <button
              type="button"
              className="button button--bare"
              aria-label={`Save ${titleWords(card)} as a file`}
              onClick={() => void saveCardAsFile(card)}
            >
              Save as a file
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
