import type { Plan } from '../../geometry/plan/model.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';
import { readSummaries, readWork } from './library/plans.ts';
import { useOpenPlan } from './open-plan.ts';

/** What this browser keeps besides the open plan. */
export interface OtherPlans {
  readonly plans: readonly Plan[];
  /** How many stand there that cannot be read: what they hold is not in any count. */
  readonly unread: number;
}

/** Every plan on the shelf but the open one, without those in the bin. Throws when the store is out of reach. */
export async function otherPlans(): Promise<OtherPlans> {
  const open = useOpenPlan.getState().id;
  const cards = (await readSummaries()).filter(({ id, binnedAt }) => binnedAt === null && id !== open);
  const read = await Promise.all(cards.map(({ id }) => planOf(id)));
  const plans = read.filter((plan) => plan !== null);
  return { plans, unread: read.length - plans.length };
}

async function planOf(id: string): Promise<Plan | null> {
  const work = await readWork(id);
  if (!work?.text) return null;
  const read = parsePlan(work.text);
  return read.ok ? read.plan : null;
}
