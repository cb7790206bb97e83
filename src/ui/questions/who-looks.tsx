import { looksOf } from '../../advice/walk-round.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { useThrottled } from '../hooks/use-throttled.ts';
import { WalkFields } from '../stages/house/walk-fields.tsx';
import { signLooks } from './answer-none.ts';

/** Who walks round and when: goes onto each "none here" that is answered. The same walk as that through the house. */
export function WhoLooks() {
  const plan = useAppStore((state) => state.plan);
  const model = useThrottled(selectModel);
  const answered = looksOf(plan, model, []).filter(({ state }) => state === 'none');
  return (
    <details className="group">
      <summary>Inspected by, and when</summary>
      <WalkFields
        lacking={answered.filter(({ by, at }) => by === '' || at === null)}
        onSign={signLooks}
        hint="Both are recorded with each answer from now on."
      />
    </details>
  );
}
