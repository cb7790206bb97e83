import type { Fixture, Opening, PlanObject } from '../../../geometry/plan/model.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { useAppStore } from '../../state/store.ts';

interface Props {
  readonly item: Pick<Opening | Fixture | PlanObject, 'id' | 'bottom' | 'top' | 'bottomAnswered' | 'topAnswered'>;
  /** Names of its lower and its upper height. */
  readonly names: readonly [bottom: string, top: string];
}

/** Says that the heights in the fields are assumed, with a button that marks them as measured. A typed height is marked by itself. */
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
