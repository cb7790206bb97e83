import { memo, useRef } from 'react';
import { titleWords } from '../../storage/library/described.ts';
import type { PlanSummary } from '../../storage/library/records.ts';
import { dueOf, whenWords } from './dates.ts';
import { PlanPicture, VerdictCounts } from './plan-picture.tsx';
import { usePlanPreview } from './use-preview.ts';

interface PlanCardProps {
  readonly summary: PlanSummary;
  readonly now: number;
  /** The rooms and labels that match the search. */
  readonly where: string;
  readonly isOpen: boolean;
  readonly isChosen: boolean;
  /** Whether Tab stops here: at one card of the library only; arrows move to the others. */
  readonly tabStop: boolean;
  readonly onOpen: (summary: PlanSummary) => void;
  readonly onMore: (summary: PlanSummary) => void;
}

/** A plan in its group. A press opens it. */
export const PlanCardView = memo(function PlanCardView(props: PlanCardProps) {
  const { summary, now, where, isOpen, isChosen, tabStop, onOpen, onMore } = props;
  const item = useRef<HTMLLIElement>(null);
  const look = usePlanPreview(summary, item);
  const title = titleWords(summary);
  const due = dueOf(summary, now);
  const tabIndex = tabStop ? 0 : -1;
  return (
    <li ref={item} className="plan-card" data-chosen={isChosen || undefined}>
      <button
        type="button"
        className="plan-card__open"
        data-plan={summary.id}
        tabIndex={tabIndex}
        aria-current={isOpen || undefined}
        onClick={() => (summary.readable ? onOpen(summary) : onMore(summary))}
      >
        <PlanPicture picture={look?.picture} />
        <strong className="plan-card__title">{title}</strong>
        {summary.place && <span className="plan-card__line soft">{summary.place}</span>}
        <VerdictCounts look={look} />
        {due.words && (
          <span className="plan-card__line" data-late={due.late || undefined}>
            {due.words}
          </span>
        )}
        {where && <span className="plan-card__line">Contains {where}</span>}
        {isOpen && <span className="plan-card__line">Open now</span>}
        <span className="plan-card__line soft">Changed {whenWords(summary.changedAt, now)}</span>
      </button>
      <button
        type="button"
        className="button button--bare plan-card__more"
        tabIndex={tabIndex}
        aria-label={`More about ${title}`}
        aria-expanded={isChosen}
        onClick={() => onMore(summary)}
      >
        More
      </button>
    </li>
  );
});
