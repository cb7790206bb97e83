import type { FixtureKind, Mm, Plan } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { memoize } from '../plane/memoize.ts';
import { HOME_SHORT_TERM } from './home-short-term.ts';
import { HEALTH_CANADA, ILLINOIS, OHIO, PENNSYLVANIA } from './published.ts';
import type { Profile, Rule, RuleId, RuleSubject } from './types.ts';

/** The profile of a new plan. */
export const HOME_SHORT_TERM_ID = HOME_SHORT_TERM.id;

export const PROFILES: readonly Profile[] = [HOME_SHORT_TERM, PENNSYLVANIA, ILLINOIS, OHIO, HEALTH_CANADA];

/** How a plan overrides a published limit. */
export interface RuleOverride {
  /** Null where the published text gives no figure. */
  readonly published: Mm | null;
  readonly loosened: boolean;
  readonly note: string;
}

/** Returns whether a distance needs a note: it is looser than the published one, or the text gives no figure and somebody decided it. */
export const needsNote = (published: Mm | null, distance: Mm): boolean => published === null || distance < published;

/** A rule of the plan: the published row with the plan's override applied. */
export interface EffectiveRule extends Rule {
  readonly override: RuleOverride | null;
}

/** Returns the profile with this id, or null. */
export function profileById(id: string): Profile | null {
  return PROFILES.find((profile) => profile.id === id) ?? null;
}

/** Subjects that a distance is measured to, even if the published text gives none. */
const TAPED: ReadonlySet<RuleSubject['of']> = new Set(['opening', 'outside-wall', 'inside-wall', 'fixture']);

/**
 * Returns whether an override may give the limit of this rule: only a rule with one minimum distance, or one whose text requires a distance
 * without giving a figure, which somebody else has to decide.
 */
export function isOverridable({ least, most, subject }: Rule): boolean {
  return most === null && (least !== null || TAPED.has(subject.of));
}

/**
 * Returns the minimum distance that a profile publishes for a rule, mm. Null when the profile or the rule does not
 * exist, or when the text gives no single distance.
 */
export function publishedDistance(profileId: string, ruleId: string): Mm | null {
  const rule = profileById(profileId)?.rules.find(({ id }) => id === ruleId);
  return rule && isOverridable(rule) ? rule.least : null;
}

/** Returns whether the heights of a kind of fixture count: only the rule of objects measures in space. */
export function countsByHeights(protocol: Plan['protocol'], kind: FixtureKind): boolean {
  return profileOf(protocol).rules.some(({ subject }) => subject.of === 'object' && subject.fixtures.includes(kind));
}

/** Returns the profile of a plan. The plan reader guarantees that it exists. */
export function profileOf(protocol: Plan['protocol']): Profile {
  const profile = profileById(protocol.profile);
  assert(profile !== null, `profile "${protocol.profile}" is not one of ${PROFILES.map(({ id }) => id).join(', ')}`);
  return profile;
}

/**
 * Returns the rules of the plan's profile with its overrides applied, in profile order. The plan reader guarantees that
 * the profile exists.
 */
export const effectiveRules = memoize((protocol: Plan['protocol']): readonly EffectiveRule[] =>
  profileOf(protocol).rules.map((rule): EffectiveRule => {
    const override = protocol.overrides.find((one) => one.rule === rule.id);
    if (!override || !isOverridable(rule)) return { ...rule, override: null };
    const { least } = rule;
    return {
      ...rule,
      least: override.distance,
      override: { published: least, loosened: least !== null && override.distance < least, note: override.note },
    };
  }),
);

/** Returns the rule with this id, with its override applied. Throws when the profile does not have it. */
export function ruleOf(protocol: Plan['protocol'], id: RuleId): EffectiveRule {
  const rule = effectiveRules(protocol).find((one) => one.id === id);
  if (!rule) throw new Error(`the profile ${protocol.profile} has no rule ${id}`);
  return rule;
}

/** Returns the sources of a rule in one line: "25 Pa. Code 240.310(a)(1); …". */
export function sourceLine({ sources }: Pick<Rule, 'sources'>): string {
  return sources.map(({ cite }) => cite).join('; ');
}
