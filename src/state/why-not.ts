import { blockingChecks } from '../../geometry/check/blocking-checks.ts';
import { describeBlocked } from '../../geometry/messages/index.ts';
import type { XY } from '../../geometry/plan/model.ts';
import type { LevelRegion } from '../../geometry/region/types.ts';
import type { AppState } from './app-state.ts';
import { selectModel, selectProbe, selectRegion, selectShownPlan } from './selectors.ts';

type Told = ReturnType<typeof describeBlocked>;
let last: { readonly at: XY; readonly region: LevelRegion; readonly told: Told } | null = null;

/** Why no detector may sit at a spot of the level in view, in words; worked out once for each spot, however many ask. */
export function selectWhyNotWords(state: AppState, at: XY): Told {
  const region = selectRegion(state);
  if (last?.at === at && last.region === region) return last.told;
  const [plan, model] = [selectShownPlan(state), selectModel(state)];
  const told = describeBlocked(blockingChecks(plan, model, selectProbe(state), at), region, plan, model, at);
  last = { at, region, told };
  return told;
}
