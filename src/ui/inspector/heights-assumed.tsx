import type { Fixture, Opening, PlanObject } from '../../../geometry/plan/model.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { useAppStore } from '../../state/store.ts';

interface Props {
  readonly item: Pick<Opening | Fixture | PlanObject, 'id' | 'bottom' | 'top' | 'bottomAnswered' | 'topAnswered'>;
  /** What its lower and its upper height are called. */
  readonly names: readonly [bottom: string, top: string];
}

/** What stands in the fields is what a new thing begins with: a press says that it was measured. Each height is entered by itself, too. */
export function HeightsAssumed({ item, names }: Props) {
  const updateItem = useAppStore((state) => state.updateItem);
  const unit = useAppStore((state) => state.plan.display.length);
  const { id, bottom, top, bottomAnswered, topAnswered } = item;
  const open = [
    ...(bottomAnswered === false ? [{ name: names[0], mm: bottom, patch: { bottom } }] : []),
    ...(topAnswered === false ? [{ name: names[1], mm: top, patch: { top } }] : []),
  ];
  if (open.length === 0) return null;
  const words = open.map(({ name, mm }) => `${name} ${formatMeasured(mm, unit)}`).join(', ');
  return (
    <div className="wide">
      <p className="soft">Assumed, not measured: no rule is met by it.</p>
      <button
        type="button"
        className="button"
        onClick={() => updateItem(id, Object.assign({}, ...open.map(({ patch }) => patch)))}
      >
        {words}: measured
      </button>
    </div>
  );
}
