import type { Level, Plan } from '../plan/model.ts';
import { levelName, listed } from '../plan/nouns.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
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
  const each = subject.of === 'level' && subject.choice === 'each-on-the-ground';
  const relevant = each ? [level] : levels.filter(({ order }) => order <= level.order);
  const unknown = relevant.filter(({ livingAnswered }) => livingAnswered === false);
  const names = unknown.map(levelName);
  const living = names.length > 0 ? `whether people live on ${listed(names)}` : '';
  const purpose = !each && site.purposeAnswered === false ? 'why the house is tested' : '';
  const open = [purpose, living].filter(Boolean);
  return open.length > 0 ? `Not answered yet: ${listed(open)}.` : '';
}

/** Returns why this level is not to be tested for the plan's purpose under its profile; "" when it is. */
export function levelBar(plan: Plan, level: Level): string {
  const rule = effectiveRules(plan.protocol).find(({ subject }) => subject.of === 'level');
  return rule ? levelBarOf(plan, level, rule) : '';
}

function levelBarOf(plan: Plan, level: Level, { subject }: EffectiveRule): string {
  return subject.of === 'level' && subject.choice === 'each-on-the-ground'
    ? groundBar(plan, level)
    : lowestBar(plan, level);
}

/**
 * The lowest level that is lived in or, in a property transfer, could be. Levels with the same order are equally low.
 */
function lowestBar({ levels, site: { purpose } }: Plan, level: Level): string {
  const inSale = purpose === 'property-transfer';
  const counts = (one: Level) => one.living === 'lived-in' || (inSale && one.living === 'could-be');
  if (!counts(level)) return inSale ? 'Nobody could live on this level.' : 'This level is not lived in.';
  const [lowest] = levels.filter((one) => counts(one) && one.order < level.order).sort((a, b) => a.order - b.order);
  if (!lowest) return '';
  return `${lowest.name || 'A level'} is lower and ${inSale ? 'could be lived in' : 'is lived in'}: test there.`;
}

/**
 * Any habitable level on the ground (basement, slab or crawl space), because it is the lowest of its part of the house.
 */
function groundBar({ levels }: Plan, level: Level): string {
  if (level.living === 'no') return 'Nobody could live on this level.';
  const grounded = levels.some((one) => one.living !== 'no' && one.ground !== 'none');
  if (level.ground !== 'none' || !grounded) return '';
  return 'This level does not stand on the ground: test the lowest level of each part of the house that does.';
}
