import type { Level, Plan, Tracing } from '../plan/model.ts';
import type { EditResult } from './checked.ts';
import { levelChanged } from './level.ts';

/** The picture under a level put down, changed or (null) taken away. Asserts that the plan has the level. */
export function withTracing(plan: Plan, levelId: string, tracing: Tracing | null): EditResult {
  return levelChanged(plan, levelId, ({ tracing: _, ...level }): Level => (tracing ? { ...level, tracing } : level));
}

/** The plan with no picture under any level: small enough to be sent by mail. The same plan where there is none. */
export function withoutTracings(plan: Plan): Plan {
  if (!plan.levels.some(({ tracing }) => tracing)) return plan;
  return { ...plan, levels: plan.levels.map(({ tracing: _, ...level }): Level => level) };
}
