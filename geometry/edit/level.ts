import type { Level, Plan } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { checkedPlan, type EditResult } from './checked.ts';

/** What a level says of itself; what is drawn on it has edits of its own. */
export type LevelPatch = Partial<Pick<Level, 'name' | 'order' | 'ceiling' | 'living' | 'ground'>>;

/** Some of a level's own values changed. */
export function withLevel(plan: Plan, levelId: string, patch: LevelPatch): EditResult {
  return levelChanged(plan, levelId, (level) => ({ ...level, ...patch }));
}

/** The plan with one level put through a function that makes another of it, whatever it changes; the same level: the same plan. */
export function levelChanged(plan: Plan, levelId: string, change: (level: Level) => Level): EditResult {
  return checkedPlan(plan, changedLevel(plan, levelId, change));
}

/** Behind the levels that are there. Its id is new to the plan, and so are those of all that is drawn on it. */
export function withNewLevel(plan: Plan, level: Level): EditResult {
  return checkedPlan(plan, { ...plan, levels: [...plan.levels, level] });
}

/** A level taken away with all that is drawn on it, and the readings of its detectors. Asserts that the plan has it. */
export function withoutLevel(plan: Plan, levelId: string): Plan {
  const gone = new Set(levelOf(plan, levelId).detectors.map(({ id }) => id));
  const levels = plan.levels.filter(({ id }) => id !== levelId);
  return withoutReadings({ ...plan, levels }, gone);
}

/**
 * The plan without the readings of these detectors, their entries in the log and the earlier results of their places: at another
 * place these would mean something else.
 */
export function withoutReadings(plan: Plan, gone: ReadonlySet<string>): Plan {
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

/** Not looked at: for edits that cannot go wrong, or that go through `checkedPlan` later. */
export function changedLevel(plan: Plan, levelId: string, change: (level: Level) => Level): Plan {
  const before = levelOf(plan, levelId);
  const after = change(before);
  if (after === before) return plan;
  return { ...plan, levels: plan.levels.map((level) => (level === before ? after : level)) };
}

/** Asserts that the plan has the level: to ask for another is our own mistake. */
export function levelOf(plan: Plan, levelId: string): Level {
  const level = plan.levels.find(({ id }) => id === levelId);
  assert(level !== undefined, `the plan has no level ${levelId}`);
  return level;
}
