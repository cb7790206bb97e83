import type { LevelModel } from '../../geometry/level/types.ts';
import type { Detector, Plan } from '../../geometry/plan/model.ts';
import { lateStartSteps, lateStartWords } from '../advice/late-start.ts';
import { atLeisure } from './at-leisure.ts';

/** Resolves to what a later start would change for a detector, in words; empty if it is not known or no longer wanted. */
export async function lateStart(
  plan: Plan,
  model: LevelModel,
  detector: Detector,
  isWanted: () => boolean,
): Promise<string> {
  const late = await atLeisure(lateStartSteps(plan, model, detector), isWanted);
  return late ? lateStartWords(late) : '';
}
