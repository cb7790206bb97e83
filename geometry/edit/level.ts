import type { Level, Plan } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { checkedPlan, type EditResult } from './checked.ts';

/** A level's own values; its items have edits of their own. */
export type LevelPatch = Partial<Pick<Level, 'name' | 'order' | 'ceiling' | 'living' | 'ground'>>;

/** Changes some of a level's own values. */
export function withLevel(plan: Plan, levelId: string, patch: LevelPatch): EditResult {
  return checkedLevelEdit(plan, levelId, (level) => ({ ...level, ...patch }));
}

/** Replaces a level by the result of `change`, checked. The same level gives the same plan. */
export function checkedLevelEdit(plan: Plan, levelId: string, change: (level: Level) => Level): EditResult {
  return checkedPlan(plan, uncheckedLevelEdit(plan, levelId, change));
}

/** Appends a level. Its id and those of its items must be new to the plan. */
export function withNewLevel(plan: Plan, level: Level): EditResult {
  return checkedPlan(plan, { ...plan, levels: [...plan.levels, level] });
}

/** Removes a level with everything on it, and the readings of its detectors. Throws if the plan does not have it. */
export function withoutLevel(plan: Plan, levelId: string): Plan {
  const gone = new Set(levelOf(plan, levelId).detectors.map(({ id }) => id));
  const levels = plan.levels.filter(({ id }) => id !== levelId);
  return withoutRecordsOf({ ...plan, levels }, gone);
}

/**
 * Returns the plan without the readings of these detectors, their log entries and the earlier results of their
 * locations, which would mean something else at another location.
 */
export function withoutRecordsOf(plan: Plan, gone: ReadonlySet<string>): Plan {
  const stays = ({ detector }: { readonly detector?: string | null }) => detector == null || !gone.has(detector);
  const { log, earlier, ...rest } = plan;
  if (plan.readings.every(stays) && (log ?? []).every(stays) && (earlier ?? []).every(stays)) return plan;
  return {
    ...rest,
    readings: plan.readings.filter(stays),
    ...(log ? { log: log.filter(stays) } : {}),
    ...(earlier ? { earlier: earlier.filter(stays) } : {}),
  };
}

/** Unchecked: for edits that cannot produce an invalid plan, or that go through `checkedPlan` later. */
export function uncheckedLevelEdit(plan: Plan, levelId: string, change: (level: Level) => Level): Plan {
  const before = levelOf(plan, levelId);
  const after = change(before);
  if (after === before) return plan;
  return { ...plan, levels: plan.levels.map((level) => (level === before ? after : level)) };
}

/** Returns the level; throws if the plan does not have it. */
export function levelOf(plan: Plan, levelId: string): Level {
  const level = plan.levels.find(({ id }) => id === levelId);
  assert(level !== undefined, `the plan has no level ${levelId}`);
  return level;
}
