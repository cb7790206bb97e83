import type { DetectorReport } from '../../../geometry/check/types.ts';
import { itemName } from '../../../geometry/edit/index.ts';
import type { Detector } from '../../../geometry/plan/model.ts';
import { SUPPORT_ANSWER } from '../../commands/go-to.ts';
import { useAppStore } from '../../state/store.ts';
import { useLevel } from '../hooks/use-level.ts';

const ANSWERS = [
  { support: 'hung', words: 'It hangs' },
  { support: 'stand', words: 'On a stand' },
] as const;

interface Props {
  readonly detector: Detector;
  readonly report: DetectorReport;
  /** Whether commands that lead to this question focus this answer. */
  readonly isGoal?: boolean;
}

/** What supports a detector: the object under it, or the answer that it hangs or has its own stand. A second press withdraws the answer. */
export function SupportAnswer({ detector, report, isGoal }: Props) {
  const level = useLevel();
  const check = report.checks.find(({ rule }) => rule === 'support');
  if (!check) return null;
  const carrier = level.objects.find(({ id }) => id === check.subject);
  if (carrier) return <p className="support">Carried by: {itemName('object', carrier)}.</p>;
  const answer = (support: Detector['support']) => useAppStore.getState().updateItem(detector.id, { support });
  return (
    <fieldset className="support" data-open={check.notRun || undefined}>
      <legend>What carries it?</legend>
      <div className="buttons">
        {ANSWERS.map(({ support, words }, index) => {
          const given = detector.support === support;
          return (
            <button
              key={support}
              type="button"
              id={isGoal && index === 0 ? SUPPORT_ANSWER : undefined}
              className="button"
              aria-pressed={given}
              onClick={() => answer(given ? null : support)}
            >
              {words}
            </button>
          );
        })}
      </div>
    </fieldset>
  );
}
