import type { DetectorReport } from '../../../geometry/check/types.ts';
import { itemName } from '../../../geometry/edit/index.ts';
import { subjectName } from '../../../geometry/messages/subject.ts';
import type { Detector, PlanObject } from '../../../geometry/plan/model.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { unbrokenFigures } from '../../../geometry/units/no-break.ts';
import { carriedTogether, carriersBelow, setOnto } from '../../advice/onto-furniture.ts';
import { SUPPORT_ANSWER } from '../../commands/go-to.ts';
import { refuseLocked } from '../../state/locked-detectors.ts';
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

/**
 * What supports a detector: the object under it, or the answer that it hangs or has its own stand. A second press withdraws the answer. For
 * furniture below it at another height, a press sets it there.
 */
export function SupportAnswer({ detector, report, isGoal }: Props) {
  const level = useLevel();
  const unit = useAppStore((state) => state.plan.display.length);
  const check = report.checks.find(({ rule }) => rule === 'support');
  if (!check) return null;
  const carrier = level.objects.find(({ id }) => id === check.subject);
  if (carrier) return <p className="support">Carried by: {itemName('object', carrier)}.</p>;
  const answer = (support: Detector['support']) => useAppStore.getState().updateItem(detector.id, { support });
  const setOn = (object: PlanObject) => {
    const ids = carriedTogether(level, detector, object);
    if (!refuseLocked(useAppStore.getState(), ids)) useAppStore.getState().run((plan) => setOnto(plan, ids, object));
  };
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
        {carriersBelow(level, detector).map((object) => (
          <button key={object.id} type="button" className="button" onClick={() => setOn(object)}>
            {unbrokenFigures(`On ${subjectName(level, object.id)}, top at ${formatMeasured(object.top, unit)}`)}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
