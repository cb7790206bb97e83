import type { Level, Plan } from '../plan/model.ts';
import { checkedPlan, type EditResult } from './checked.ts';
import { levelOf } from './level.ts';

/** Where a level is put relative to another one. */
export type Beside = 'above' | 'below';

/** Returns the levels from the lowest up; those of the same order in file order. */
export function levelsInOrder({ levels }: Plan): readonly Level[] {
  return [...levels].sort((a, b) => a.order - b.order);
}

/** Returns the level below this one; null for the lowest. Of several at one height, returns the last in the file. */
export function levelBelow(plan: Plan, levelId: string): Level | null {
  const { order } = levelOf(plan, levelId);
  return levelsInOrder(plan).findLast((level) => level.order < order) ?? null;
}

/** Returns the other levels at the same height: the halves of a split level house. */
export function levelsBeside(plan: Plan, levelId: string): readonly Level[] {
  const { order } = levelOf(plan, levelId);
  return plan.levels.filter((level) => level.order === order && level.id !== levelId);
}

/** Adds a level directly above or below another one, and renumbers the orders from 0. Ids as for `withNewLevel`. */
export function withLevelBeside(plan: Plan, level: Level, where: Beside, otherId: string): EditResult {
  const stories = storiesOf(plan);
  const at = stories.findIndex((ids) => ids.includes(levelOf(plan, otherId).id));
  const next = stories.toSpliced(where === 'above' ? at + 1 : at, 0, [level.id]);
  return checkedPlan(plan, ordered({ ...plan, levels: [...plan.levels, level] }, next));
}

/**
 * Moves a level one story up or down. A level that shares its height is separated from the others, directly above or
 * below; any other changes places with its neighbor. Returns the same plan if it cannot move.
 */
export function withLevelMoved(plan: Plan, levelId: string, where: Beside): Plan {
  const stories = storiesOf(plan);
  const at = stories.findIndex((ids) => ids.includes(levelId));
  const mates = (stories[at] ?? []).filter((id) => id !== levelId);
  const up = where === 'above';
  if (mates.length > 0)
    return ordered(plan, stories.toSpliced(at, 1, ...(up ? [mates, [levelId]] : [[levelId], mates])));
  const to = up ? at + 1 : at - 1;
  if (to < 0 || to >= stories.length) return plan;
  return ordered(plan, stories.toSpliced(at, 1).toSpliced(to, 0, [levelId]));
}

/** Puts a level at the height of another one, as in a split level house: both then count as equally low. */
export function withLevelAtHeightOf(plan: Plan, levelId: string, otherId: string): Plan {
  const { order } = levelOf(plan, otherId);
  return withOrdersFromZero({
    ...plan,
    levels: plan.levels.map((level) => (level.id === levelId ? { ...level, order } : level)),
  });
}

/** Renumbers the orders from 0 without gaps; levels at one height stay so. Returns the same plan if nothing changes. */
export function withOrdersFromZero(plan: Plan): Plan {
  return ordered(plan, storiesOf(plan));
}

/** Returns the ids of the levels grouped by height, lowest first. */
function storiesOf(plan: Plan): readonly (readonly string[])[] {
  const stories = new Map<number, string[]>();
  for (const { id, order } of levelsInOrder(plan)) stories.set(order, [...(stories.get(order) ?? []), id]);
  return [...stories.values()];
}

function ordered(plan: Plan, stories: readonly (readonly string[])[]): Plan {
  const orders = new Map(stories.flatMap((ids, order) => ids.map((id) => [id, order] as const)));
  const levels = plan.levels.map((level) => {
    const order = orders.get(level.id) ?? level.order;
    return order === level.order ? level : { ...level, order };
  });
  return levels.every((level, index) => level === plan.levels[index]) ? plan : { ...plan, levels };
}
