import { describeComputed, SEND_THE_PLAN } from '../../../geometry/messages/index.ts';
import { saveFile } from '../../commands/open-and-save.ts';
import { sameForChecks } from '../../state/second-opinion-at-rest.ts';
import { usePlan } from '../hooks/use-level.ts';
import { useThrottled } from '../hooks/use-throttled.ts';
import './recheck-line.css';

/** How the verdict was computed: once, twice, or twice with different results, then with both figures and a button that saves the plan. */
export function RecheckLine({ id }: { readonly id: string }) {
  const plan = usePlan();
  const second = useThrottled((state) => state.second);
  const isCarried = useThrottled(({ draggedDetector }) => draggedDetector !== null);
  const computed = second && !isCarried && sameForChecks(second.plan, plan) ? second.computed.get(id) : undefined;
  if (!computed) return <p className="recheck-line">Computed once so far.</p>;
  if (computed.how !== 'differs') return <p className="recheck-line">{describeComputed(computed, plan)}</p>;
  return (
    <div className="recheck-line recheck-line--differs" role="alert">
      <p>{describeComputed(computed, plan)}</p>
      <p>{SEND_THE_PLAN}</p>
      <button type="button" className="button" onClick={() => void saveFile()}>
        Save the plan to send it
      </button>
    </div>
  );
}
