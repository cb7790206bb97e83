import { looksOf } from '../../advice/walk-round.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { useThrottled } from '../hooks/use-throttled.ts';
import { WalkFields } from '../stages/house/walk-fields.tsx';
import { signLooks } from './answer-none.ts';

/** Name and time of the walk round: stored with each answer "none here". The same walk as that of the house conditions. */
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
