import { listed } from '../../../geometry/messages/index.ts';
import { type LookRow, looksOf, type QuestionId } from '../../advice/walk-round.ts';
import { selectModel } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { useThrottled } from '../hooks/use-throttled.ts';
import './question-state.css';

/** Returns the looks of a question on the level in view; empty while the level has no walls. */
export function useLooks(id: QuestionId): readonly LookRow[] {
  const plan = useAppStore((state) => state.plan);
  const model = useThrottled(selectModel);
  const reports = useThrottled(shownReports);
  if (model.level.walls.length === 0) return [];
  return looksOf(plan, model, reports).filter(({ question }) => question === id);
}

/** Says beside a question whether it is answered. Shows nothing for a question that looks for nothing. */
export function QuestionState({ id }: { readonly id: QuestionId }) {
  const rows = useLooks(id);
  if (rows.length === 0) return null;
  const open = rows.filter(({ state }) => state === 'open');
  return (
    <span className="question__state" id={`question-${id}-state`} data-open={open.length > 0 || undefined}>
      {stateWords(rows, open)}
    </span>
  );
}

function stateWords(rows: readonly LookRow[], open: readonly LookRow[]): string {
  if (open.length === rows.length) return 'not looked for';
  if (open.length > 0) return `${listed(open.map(({ rule }) => rule.name.toLowerCase()))} not looked for`;
  if (rows.every(({ state }) => state === 'none')) return 'none here';
  return rows.some(({ rule }) => rule.subject.of === 'sun') ? 'worked out' : 'drawn';
}
