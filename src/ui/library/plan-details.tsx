import { useEffect, useRef, useState } from 'react';
import { counted } from '../../../geometry/messages/index.ts';
import { openFromLibrary } from '../../commands/open-and-save.ts';
import type { PlanSummary } from '../../storage/library/records.ts';
import { titleWords } from '../../storage/library/summary.ts';
import { dueOf, fullWhenWords } from './dates.ts';
import { duplicatePlan, renamePlan, saveCardAsFile, trashPlan } from './library-actions.ts';
import { PlanPicture, VerdictCounts } from './plan-picture.tsx';
import { usePlanPreview } from './use-preview.ts';
import { VersionList } from './version-list.tsx';

interface PlanDetailsProps {
  readonly card: PlanSummary;
  readonly now: number;
  readonly onClose: () => void;
  /** The plan, and so its card, has left the shelf. */
  readonly onTrashed: () => void;
}

/** All about one plan, beside the shelf, and what can be done with it. */
export function PlanDetails({ card, now, onClose, onTrashed }: PlanDetailsProps) {
  const [showsVersions, setShowsVersions] = useState(false);
  const top = useRef<HTMLElement>(null);
  const look = usePlanPreview(card, top);
  const heading = useRef<HTMLHeadingElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another plan in the slip, or the plan again after its versions, is a new thing to read
  useEffect(() => {
    if (!showsVersions) heading.current?.focus();
  }, [card.id, showsVersions]);
  const due = dueOf(card, now);
  return (
    <aside
      ref={top}
      className="plan-slip"
      aria-label="The plan that you picked"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.preventDefault();
        event.stopPropagation();
        onClose();
      }}
    >
      <div className="plan-verdict-panel__head">
        <h3 ref={heading} tabIndex={-1}>
          {titleWords(card)}
        </h3>
        <button type="button" className="button button--bare" onClick={onClose}>
          Hide
        </button>
      </div>
      {showsVersions ? (
        <VersionList card={card} onBack={() => setShowsVersions(false)} />
      ) : (
        <>
          {card.readable && <PlanPicture picture={look?.picture} />}
          {card.readable ? (
            <div className="plan-verdict-panel__facts">
              <VerdictCounts look={look} />
              {due.words && <p data-late={due.late || undefined}>{due.words}</p>}
              <p className="soft">
                {counted(card.levels, 'level')}, changed {fullWhenWords(card.changedAt)}
              </p>
            </div>
          ) : (
            <p>This could not be read as a plan. Save it as a file to keep what is in it.</p>
          )}
          {card.readable && <TitleField key={card.title} card={card} />}
          <div className="buttons">
            {card.readable && (
              <button type="button" className="button button--main" onClick={() => void openFromLibrary(card.id)}>
                Open
              </button>
            )}
            {card.readable && (
              <>
                <button type="button" className="button" onClick={() => setShowsVersions(true)}>
                  Earlier versions
                </button>
                <button type="button" className="button" onClick={() => void duplicatePlan(card)}>
                  Duplicate
                </button>
              </>
            )}
            <button type="button" className="button" onClick={() => void saveCardAsFile(card)}>
              Save as a file
            </button>
            <button type="button" className="button" onClick={() => void trashPlan(card).then(onTrashed)}>
              To the bin
            </button>
          </div>
        </>
      )}
    </aside>
  );
}

function TitleField({ card }: { readonly card: PlanSummary }) {
  const [text, setText] = useState(card.title);
  const commit = () => {
    if (text.trim() !== card.title) void renamePlan(card, text.trim());
  };
  return (
    <label className="plan-verdict-panel__title">
      <span>Title</span>
      <input
        className="plans__input"
        value={text}
        autoComplete="off"
        onChange={(event) => setText(event.currentTarget.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur();
        }}
      />
    </label>
  );
}
