import type { LevelModel } from '../level/types.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { wordCheck } from './measure.ts';
import type { Check } from './types.ts';

/** Whether a person has looked for the subjects of a rule on a level, and found none. */
export function wasLookedFor({ level }: LevelModel, { id }: EffectiveRule): boolean {
  return level.lookedFor?.includes(id) ?? false;
}

/**
 * The row of a rule of which nothing is drawn on the level: clear where somebody looked, else not run, since what nobody looked
 * for is not clear. Nothing for a rule that takes no such answer.
 */
export function checkAbsent(model: LevelModel, rule: EffectiveRule): Check[] {
  if (rule.absent === null) return [];
  const looked = wasLookedFor(model, rule);
  const row = looked
    ? wordCheck(rule, 'clear', `Looked for on this level: ${lower(rule.absent)}.`)
    : wordCheck(rule, 'unknown', 'Nothing of it is drawn on this level, and nobody has said that there is none.', true);
  return [{ ...row, required: rule.least }];
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
