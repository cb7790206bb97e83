import type { Plan } from '../../geometry/plan/model.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';
import { readSummaries, readWork } from './library/plans.ts';
import { useLibrary } from './library-state.ts';

/** The plans of the library besides the open one. */
export interface OtherPlans {
  readonly plans: readonly Plan[];
  /** Number of plans that cannot be read; they are not in `plans`. */
  readonly unread: number;
}

/** Returns every plan of the library that is neither open nor deleted. Throws if the store cannot be read. */
export async function otherPlans(): Promise<OtherPlans> {
  const open = useLibrary.getState().openId;
  const summaries = (await readSummaries()).filter(({ id, binnedAt }) => binnedAt === null && id !== open);
  const read = await Promise.all(summaries.map(({ id }) => planOf(id)));
  const plans = read.filter((plan) => plan !== null);
  return { plans, unread: read.length - plans.length };
}

/** Returns a plan of the library; null if there is none with this id or it cannot be read. */
export async function planOf(id: string): Promise<Plan | null> {
  const work = await readWork(id);
  if (!work?.text) return null;
  const read = parsePlan(work.text);
  return read.ok ? read.plan : null;
}
