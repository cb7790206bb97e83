import { useEffect, useRef, useState } from 'react';
import { counted } from '../../../geometry/messages/index.ts';
import { oneLine } from '../../../geometry/messages/plain-text.ts';
import { openFromLibrary } from '../../commands/open-and-save.ts';
import { titleWords } from '../../storage/library/described.ts';
import type { PlanSummary } from '../../storage/library/records.ts';
import { dueOf, fullWhenWords } from './dates.ts';
import { duplicatePlan, renamePlan, savePlanAsFile, trashPlan } from './library-actions.ts';
import { PlanPicture, VerdictCounts } from './plan-picture.tsx';
import { usePlanPreview } from './use-preview.ts';
import { VersionList } from './version-list.tsx';
import './plan-details.css';

interface PlanDetailsProps {
  readonly summary: PlanSummary;
  readonly now: number;
  readonly onClose: () => void;
  /** Called after the plan was deleted. */
  readonly onTrashed: () => void;
}

/** The details of one plan, beside the list, and its actions. */
export function PlanDetails({ summary, now, onClose, onTrashed }: PlanDetailsProps) {
  const [showsVersions, setShowsVersions] = useState(false);
  const top = useRef<HTMLElement>(null);
  const preview = usePlanPreview(summary, top);
  const heading = useRef<HTMLHeadingElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another plan, or the plan again after its versions, is new to read
  useEffect(() => {
    if (!showsVersions) heading.current?.focus();
  }, [summary.id, showsVersions]);
  return (
    <aside
      ref={top}
      className="plan-details"
      aria-label="The selected plan"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.preventDefault();
        event.stopPropagation();
        onClose();
      }}
    >
      <div className="plan-details__head">
        <h3 ref={heading} tabIndex={-1}>
          {titleWords(summary)}
        </h3>
        <button type="button" className="button button--bare" onClick={onClose}>
          Hide
        </button>
      </div>
      {showsVersions ? (
        <VersionList summary={summary} onBack={() => setShowsVersions(false)} />
      ) : (
        <>
          <Facts summary={summary} now={now} preview={preview} />
          {summary.readable && <TitleField key={summary.title} summary={summary} />}
          <Actions summary={summary} onVersions={() => setShowsVersions(true)} onTrashed={onTrashed} />
        </>
      )}
    </aside>
  );
}

interface FactsProps {
  readonly summary: PlanSummary;
  readonly now: number;
  readonly preview: ReturnType<typeof usePlanPreview>;
}

/** The picture of the plan, its verdicts, the next date, and when it was changed. */
function Facts({ summary, now, preview }: FactsProps) {
  if (!summary.readable) return <p>This could not be read as a plan. Save it as a file to keep what is in it.</p>;
  const due = dueOf(summary, now);
  return (
    <>
      <PlanPicture picture={preview?.picture} />
      <div className="plan-details__facts">
        <VerdictCounts look={preview} />
        {due.words && <p data-late={due.late || undefined}>{due.words}</p>}
        <p className="soft">
          {counted(summary.levels, 'level')}, changed {fullWhenWords(summary.changedAt)}
        </p>
      </div>
    </>
  );
}

interface ActionsProps {
  readonly summary: PlanSummary;
  readonly onVersions: () => void;
  readonly onTrashed: () => void;
}

/** The actions on the plan; a plan that cannot be read can only be saved or deleted. */
function Actions({ summary, onVersions, onTrashed }: ActionsProps) {
  return (
    <div className="buttons">
      {summary.readable && (
        <button type="button" className="button button--main" onClick={() => void openFromLibrary(summary.id)}>
          Open
        </button>
      )}
      {summary.readable && (
        <>
          <button type="button" className="button" onClick={onVersions}>
            Earlier versions
          </button>
          <button type="button" className="button" onClick={() => void duplicatePlan(summary)}>
            Duplicate
          </button>
        </>
      )}
      <button type="button" className="button" onClick={() => void savePlanAsFile(summary)}>
        Save as a file
      </button>
      <button type="button" className="button" onClick={() => void trashPlan(summary).then(onTrashed)}>
        Delete
      </button>
    </div>
  );
}

function TitleField({ summary }: { readonly summary: PlanSummary }) {
  const [text, setText] = useState(summary.title);
  const commit = () => {
    if (text.trim() !== summary.title) void renamePlan(summary, text.trim());
  };
  return (
    <label className="plan-details__title">
      <span>Title</span>
      <input
        className="plans__input"
        value={text}
        autoComplete="off"
        onChange={(event) => setText(oneLine(event.currentTarget.value))}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur();
        }}
      />
    </label>
  );
}
