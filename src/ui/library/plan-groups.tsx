import { useCallback, useMemo } from 'react';
import { counted } from '../../../geometry/messages/index.ts';
import { openFromLibrary } from '../../commands/open-and-save.ts';
import type { PlanSummary } from '../../storage/library/records.ts';
import { findIn, groupPlans, type Order } from '../../storage/library/search.ts';
import { useLibrary } from '../../storage/library-state.ts';
import { PlanCardView } from './plan-card.tsx';
import { useArrowKeys } from './use-arrow-keys.ts';
import './plan-groups.css';

interface Props {
  readonly summaries: readonly PlanSummary[];
  readonly looked: string;
  readonly order: Order;
  readonly now: number;
  readonly chosenId: string;
  readonly choose: (id: string) => void;
}

/** The cards of the found plans, in groups by the chosen order. */
export function PlanGroups({ summaries, looked, order, now, chosenId, choose }: Props) {
  const openId = useLibrary(({ openId }) => openId);
  const found = useMemo(() => {
    const where = new Map<string, string>();
    for (const summary of summaries) {
      const finding = findIn(summary, looked);
      if (finding.found) where.set(summary.id, finding.where);
    }
    return where;
  }, [summaries, looked]);
  const groups = useMemo(
    () =>
      groupPlans(
        summaries.filter(({ id }) => found.has(id)),
        order,
        now,
      ),
    [summaries, found, order, now],
  );
  const arrows = useArrowKeys(groups.flatMap((group) => group.summaries.map(({ id }) => id)));
  const open = useCallback((summary: PlanSummary) => void openFromLibrary(summary.id), []);
  const more = useCallback((summary: PlanSummary) => choose(summary.id), [choose]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the arrows are a short cut between the buttons inside
    <div className="plan-groups" data-order={order} onKeyDown={arrows.onKeyDown} onFocus={arrows.onFocus}>
      {looked !== '' && (
        <p role="status">{found.size === 0 ? `No plan has "${looked}".` : `${counted(found.size, 'plan')} found.`}</p>
      )}
      {groups.map((group) => (
        <section key={group.title} className="plan-group" aria-label={group.title}>
          <h3>
            {group.title} <span className="plan-group__count">{group.summaries.length}</span>
          </h3>
          <ul className="plan-group__cards">
            {group.summaries.map((summary) => (
              <PlanCardView
                key={summary.id}
                summary={summary}
                now={now}
                where={found.get(summary.id) ?? ''}
                isOpen={summary.id === openId}
                isChosen={summary.id === chosenId}
                tabStop={summary.id === arrows.stop}
                onOpen={open}
                onMore={more}
              />
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}
