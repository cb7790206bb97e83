import { describeComputed, SEND_THE_PLAN } from '../../../geometry/messages/index.ts';
import { judgedAlike } from '../../state/second-at-rest.ts';
import { useCalm } from '../shell/calm.ts';
import { saveFile } from '../shell/file-acts.ts';
import { usePlan } from '../shell/use-level.ts';
import './second-line.css';

/** How the verdict was come by: computed twice, or once, or in two ways that differ, with both figures and the plan to send. */
export function SecondLine({ id }: { readonly id: string }) {
  const plan = usePlan();
  const second = useCalm((state) => state.second);
  const isCarried = useCalm(({ live }) => live !== null);
  const computed = second && !isCarried && judgedAlike(second.plan, plan) ? second.computed.get(id) : undefined;
  if (!computed) return <p className="second-line">Computed once so far.</p>;
  if (computed.how !== 'differs') return <p className="second-line">{describeComputed(computed, plan)}</p>;
  return (
    <div className="second-line second-line--differs" role="alert">
      <p>{describeComputed(computed, plan)}</p>
      <p>{SEND_THE_PLAN}</p>
      <button type="button" className="button" onClick={() => void saveFile()}>
        Save the plan to send it
      </button>
    </div>
  );
}
