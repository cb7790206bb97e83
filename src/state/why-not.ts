import { blockingChecks } from '../../geometry/check/blocking-checks.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { describeBlocked } from '../../geometry/messages/index.ts';
import type { Plan, XY } from '../../geometry/plan/model.ts';
import { memoizeLatest } from '../../geometry/plane/memoize.ts';
import type { LevelRegion, Probe } from '../../geometry/region/types.ts';
import type { AppState } from './app-state.ts';
import { selectModel, selectProbe, selectRegion, selectShownPlan } from './selectors.ts';

type Words = ReturnType<typeof describeBlocked>;

let sunWords: (plan: Plan, model: LevelModel, probe: Probe, at: XY) => readonly string[] = () => [];

/** Sets the function that says when the sun is on a spot; its code is loaded after the start. */
export function setSunWords(words: typeof sunWords): void {
  sunWords = words;
}

const blockedWords = memoizeLatest(
  (plan: Plan, model: LevelModel, probe: Probe, region: LevelRegion, at: XY): Words => {
    const { head, lines } = describeBlocked(blockingChecks(plan, model, probe, at), region, plan, model, at);
    return { head, lines: [...lines, ...sunWords(plan, model, probe, at)] };
  },
);

/** Why no detector may be placed at a spot of the level in view, in words. */
export function selectWhyNotWords(state: AppState, at: XY): Words {
  return blockedWords(selectShownPlan(state), selectModel(state), selectProbe(state), selectRegion(state), at);
}
