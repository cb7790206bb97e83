import type { Plan } from '../../../geometry/plan/model.ts';
import { REQUIRED_ITEMS, type RequiredItem } from './items.ts';

type ItemState = 'present' | 'missing' | 'not-applicable';

export interface ItemReport {
  readonly item: RequiredItem;
  readonly state: ItemState;
  /** The parts that are not known; empty unless the item is missing. */
  readonly lacking: readonly string[];
}

/** Returns every required item with its state; none is left out. */
export function requiredItems(plan: Plan): readonly ItemReport[] {
  const hasDetectors = plan.levels.some(({ detectors }) => detectors.length > 0);
  return REQUIRED_ITEMS.map((item) => {
    if (item.applies && !item.applies(plan)) return { item, state: 'not-applicable', lacking: [] };
    const lacking = hasDetectors ? item.missing(plan) : [...item.missing(plan), 'no detector placed'];
    return { item, state: lacking.length > 0 ? 'missing' : 'present', lacking };
  });
}
