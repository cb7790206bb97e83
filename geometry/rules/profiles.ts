import type { Mm, Plan } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { HOME_SHORT_TERM } from './home-short-term.ts';
import { HEALTH_CANADA, ILLINOIS, OHIO, PENNSYLVANIA } from './published.ts';
import type { Profile, Rule, RuleId } from './types.ts';

/** The profile of a new plan. */
export const HOME_SHORT_TERM_ID = HOME_SHORT_TERM.id;

export const PROFILES: readonly Profile[] = [HOME_SHORT_TERM, PENNSYLVANIA, ILLINOIS, OHIO, HEALTH_CANADA];

/** A rule as the plan wants it: the published row with the plan's override put in. */
export interface EffectiveRule extends Rule {
  readonly override: { readonly published: Mm; readonly loosened: boolean; readonly note: string } | null;
}

/** The profile with this id, or null. */
export function profileById(id: string): Profile | null {
  return PROFILES.find((profile) => profile.id === id) ?? null;
}

/** Whether an override may replace the limit of this rule: it has one single least distance. */
export function isOverridable(rule: Rule): boolean {
  return rule.least !== null && rule.most === null;
}

/**
 * The one least distance that a profile publishes for a rule, mm.
 * Null when the profile or the rule is not known, or the rule has no single distance (and so takes no override).
 */
export function publishedDistance(profileId: string, ruleId: string): Mm | null {
  const rule = profileById(profileId)?.rules.find(({ id }) => id === ruleId);
  return rule && isOverridable(rule) ? rule.least : null;
}

/** The profile of a plan. The reader guarantees that it is known. */
export function profileOf(protocol: Plan['protocol']): Profile {
  const profile = profileById(protocol.profile);
  assert(profile !== null, `profile "${protocol.profile}" is not one of ${PROFILES.map(({ id }) => id).join(', ')}`);
  return profile;
}

const cache = new WeakMap<Plan['protocol'], readonly EffectiveRule[]>();

/** The rules of the plan's profile with its overrides, in the order of the profile. The reader guarantees that the profile is known. */
export function effectiveRules(protocol: Plan['protocol']): readonly EffectiveRule[] {
  const known = cache.get(protocol);
  if (known) return known;
  const profile = profileOf(protocol);
  const rules = profile.rules.map((rule): EffectiveRule => {
    const override = protocol.overrides.find((one) => one.rule === rule.id);
    if (!override || rule.least === null || !isOverridable(rule)) return { ...rule, override: null };
    const { least } = rule;
    return {
      ...rule,
      least: override.distance,
      override: { published: least, loosened: override.distance < least, note: override.note },
    };
  });
  cache.set(protocol, rules);
  return rules;
}

/** The rule of this id, with overrides; asserts that the profile has it. */
export function ruleOf(protocol: Plan['protocol'], id: RuleId): EffectiveRule {
  const rule = effectiveRules(protocol).find((one) => one.id === id);
  if (!rule) throw new Error(`the profile ${protocol.profile} has no rule ${id}`);
  return rule;
}

/** Every source of a rule in one line: "25 Pa. Code 240.310(a)(1); …". */
export function sourceLine({ sources }: Pick<Rule, 'sources'>): string {
  return sources.map(({ cite }) => cite).join('; ');
}
