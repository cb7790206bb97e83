import type { LevelModel } from '../level/types.ts';
import type { Plan } from '../plan/model.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { type Cylinder, type Subject, subjectsOf } from './subjects.ts';
import { sunSubjects } from './sun.ts';

/**
 * Returns the bodies that a distance rule keeps a detector away from, the same for verdicts, shading and search. Those of the sun
 * depend on place, times and the height of the detector as well. Memoized by identity.
 */
export function ruleSubjects(
  plan: Plan,
  model: LevelModel,
  rule: EffectiveRule,
  heights: Pick<Cylinder, 'base' | 'tall'>,
): readonly Subject[] {
  return rule.subject.of === 'sun' ? sunSubjects(plan, model, rule, heights) : subjectsOf(rule, model);
}
