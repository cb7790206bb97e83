import type { Level, Plan } from '../plan/model.ts';
import { levelName, listed } from '../plan/nouns.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import type { LevelChoice } from '../rules/types.ts';
import { reasonCheck } from './measure.ts';
import type { Check } from './types.ts';

/**
 * Checks whether this level is to be tested. Not run while the result depends on defaults of a new plan that nobody has
 * confirmed.
 */
export function checkLevel(plan: Plan, level: Level, rule: EffectiveRule): Check {
  const bar = levelBarOf(plan, level, rule);
  if (bar) return reasonCheck(rule, 'blocked', bar);
  const open = unansweredQuestions(plan, level, rule);
  return open ? reasonCheck(rule, 'unknown', open, true) : reasonCheck(rule, 'clear', '');
}

/** Returns the unanswered questions on which the choice of the level depends, in words; "" when there are none. */
function unansweredQuestions({ levels, site }: Plan, level: Level, { subject }: EffectiveRule): string {
  const choice = choiceOf(subject);
  const itself = choice === 'each-on-the-ground' && level.ground !== 'none';
  const relevant = itself ? [level] : levels.filter(({ order }) => order <= level.order);
  const unknown = relevant.filter(({ livingAnswered }) => livingAnswered === false);
  const names = unknown.map(levelName);
  const living = names.length > 0 ? `whether people live on ${listed(names)}` : '';
  const ground = choice === 'each-on-the-ground' ? groundOpen(itself ? [level] : levels) : '';
  const purpose = choice === 'lowest' && site.purposeAnswered === false ? 'why the house is tested' : '';
  const open = [purpose, living, ground].filter(Boolean);
  return open.length > 0 ? `Not answered yet: ${listed(open)}.` : '';
}

/** Returns "what is under the floor of Basement" for the levels where this is not answered; "" for none. */
function groundOpen(levels: readonly Level[]): string {
  const names = levels.filter(({ groundAnswered }) => groundAnswered === false).map(levelName);
  return names.length > 0 ? `what is under the floor of ${listed(names)}` : '';
}

/**
 * Returns the levels that would also have to be tested if they touch the ground, where that question is not answered. Empty if the profile
 * does not test each level on the ground.
 */
export function levelsMaybeOnGround(plan: Plan): readonly Level[] {
  const rule = effectiveRules(plan.protocol).find(({ subject }) => subject.of === 'level');
  if (!rule || choiceOf(rule.subject) !== 'each-on-the-ground') return [];
  return plan.levels.filter(
    ({ ground, groundAnswered, living }) => groundAnswered === false && ground === 'none' && living !== 'no',
  );
}

/** Returns why this level is not to be tested for the plan's purpose under its profile; "" when it is. */
export function levelBar(plan: Plan, level: Level): string {
  const rule = effectiveRules(plan.protocol).find(({ subject }) => subject.of === 'level');
  return rule ? levelBarOf(plan, level, rule) : '';
}

const choiceOf = (subject: EffectiveRule['subject']): LevelChoice =>
  subject.of === 'level' ? subject.choice : 'lowest';

/**
 * Returns why a level is not to be tested; "" when it is. The level to test is the lowest of the levels that count. With
 * "each-on-the-ground" it is every one that is on the ground (basement, slab or crawl space), because it is the lowest of its part of the
 * house; if no level is on the ground, the lowest again. Levels with the same order are equally low.
 */
function levelBarOf({ levels, site }: Plan, level: Level, { subject }: EffectiveRule): string {
  const choice = choiceOf(subject);
  const each = choice === 'each-on-the-ground';
  const orCouldBe = each || (choice === 'lowest' && site.purpose === 'property-transfer');
  const counts = ({ living }: Level) => living === 'lived-in' || (orCouldBe && living === 'could-be');
  if (!counts(level)) return orCouldBe ? 'Nobody could live on this level.' : 'This level is not lived in.';
  const candidates = levels.filter(counts);
  if (each && candidates.some(({ ground }) => ground !== 'none')) {
    return level.ground === 'none'
      ? 'This level does not stand on the ground: test the lowest level of each part of the house that does.'
      : '';
  }
  const [lowest] = candidates.filter(({ order }) => order < level.order).sort((a, b) => a.order - b.order);
  if (!lowest) return '';
  return `${lowest.name || 'A level'} is lower and ${orCouldBe ? 'could be lived in' : 'is lived in'}: test there.`;
}
