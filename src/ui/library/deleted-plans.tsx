import { useState } from 'react';
import { counted } from '../../../geometry/messages/index.ts';
import { titleWords } from '../../storage/library/described.ts';
import { TRASH_DAYS } from '../../storage/library/plans.ts';
import type { PlanSummary } from '../../storage/library/records.ts';
import { whenWords } from './dates.ts';
import { emptyTrash, restorePlan, savePlanAsFile } from './library-actions.ts';

/** Deleted plans that can still be restored. */
export function DeletedPlans({ summaries, now }: { readonly summaries: readonly PlanSummary[]; readonly now: number }) {
  const [sure, setSure] = useState(false);
  if (summaries.length === 0) return null;
  const sorted = [...summaries].sort((a, b) => (b.binnedAt ?? 0) - (a.binnedAt ?? 0));
  return (
    <details className="trash">
      <summary>Deleted plans: {counted(summaries.length, 'plan')}</summary>
      <p>
        Each stays at least {TRASH_DAYS} days, then it is deleted for good.{' '}
        <button type="button" className="text-button" onClick={() => setSure(true)}>
          Delete them all now
        </button>
      </p>
      {sure && (
        <div className="trash__sure" role="alert">
          <p>{counted(summaries.length, 'plan')} with all versions will be deleted for good. This cannot be undone.</p>
          <div className="buttons">
            <button type="button" className="button" onClick={() => setSure(false)}>
              Keep them
            </button>
            <button
              type="button"
              className="button"
              onClick={() => void emptyTrash(summaries).then(() => setSure(false))}
            >
              Delete for good
            </button>
          </div>
        </div>
      )}
      <ul className="trash__rows">
        {sorted.map((summary) => (
          <li key={summary.id}>
            <span>
              <strong>{titleWords(summary)}</strong> {summary.place}{' '}
              <span className="soft">deleted {whenWords(summary.binnedAt ?? 0, now)}</span>
            </span>
            <button
              type="button"
              className="button"
              aria-label={`Restore ${titleWords(summary)}`}
              onClick={() => void restorePlan(summary)}
            >
              Restore
            </button>
            <button
              type="button"
              className="button button--bare"
              aria-label={`Save ${titleWords(summary)} as a file`}
              onClick={() => void savePlanAsFile(summary)}
            >
              Save as a file
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
