import type { Ground, Level, Living, LookedForBy, Mm, Plan, Purpose, SunWord } from '../plan/model.ts';
import { exposureEnd } from '../sun/times.ts';
import { uncheckedLevelEdit } from './level.ts';

/** Who looked, and when (RFC 3339); either may be missing. */
export interface Look {
  readonly by: string;
  readonly at: string | null;
  /** The days, place and north that the confirmation of no direct sun is given for. Missing: those of the plan now. */
  readonly sun?: SunWord;
}

/** The rule that a person's confirmation of no direct sun answers. */
export const DIRECT_SUN = 'direct-sun';

/** Returns the days, place and north of the plan, for which a confirmation of no direct sun is given now. */
export function sunWordOf({ site, visit }: Plan): SunWord {
  const { latitude, longitude, north, northAnswered } = site;
  return {
    start: visit.start,
    end: exposureEnd(visit),
    latitude,
    longitude,
    north: northAnswered === false ? null : north,
  };
}

/** Returns the plan with "none here" recorded for a rule on a level, and by whom. An earlier record is replaced. */
export function withNoneHere(plan: Plan, levelId: string, rule: string, { by, at, sun }: Look): Plan {
  const given = rule === DIRECT_SUN ? { sun: sun ?? sunWordOf(plan) } : {};
  const answer: LookedForBy = { rule, by: by.trim(), at, ...given };
  return uncheckedLevelEdit(plan, levelId, (level) => ({
    ...level,
    lookedFor: [...(level.lookedFor ?? []).filter((each) => each !== rule), rule],
    lookedForBy: [...(level.lookedForBy ?? []).filter((each) => each.rule !== rule), answer],
  }));
}

/** Returns the plan without the "none here" records of these rules on a level; the same plan if there are none. */
export function withoutNoneHere(plan: Plan, levelId: string, rules: readonly string[]): Plan {
  return uncheckedLevelEdit(plan, levelId, (level) => withoutAnswers(level, rules));
}

function withoutAnswers(level: Level, rules: readonly string[]): Level {
  const { lookedFor = [], lookedForBy = [], ...rest } = level;
  if (!rules.some((rule) => lookedFor.includes(rule))) return level;
  const stays = lookedFor.filter((rule) => !rules.includes(rule));
  const by = lookedForBy.filter(({ rule }) => !rules.includes(rule));
  return {
    ...rest,
    ...(stays.length > 0 ? { lookedFor: stays } : {}),
    ...(by.length > 0 ? { lookedForBy: by } : {}),
  };
}

/**
 * Returns the plan with person and time added to the "none here" records of a level that lack them. Existing values
 * stay.
 */
export function withLooksSigned(plan: Plan, levelId: string, { by, at }: Look): Plan {
  return uncheckedLevelEdit(plan, levelId, (level) => {
    const { lookedFor = [], lookedForBy = [] } = level;
    const signed = lookedFor.map((rule): LookedForBy => {
      const before = lookedForBy.find((each) => each.rule === rule);
      return { ...before, rule, by: before?.by.trim() || by.trim(), at: before?.at ?? at };
    });
    const others = lookedForBy.filter(({ rule }) => !lookedFor.includes(rule));
    return { ...level, lookedForBy: [...signed, ...others] };
  });
}

/** Returns the plan with the purpose of the test answered. */
export function withPurpose(plan: Plan, purpose: Purpose): Plan {
  const { purposeAnswered: _, ...site } = plan.site;
  return { ...plan, site: { ...site, purpose } };
}

/** Returns the plan with the measured ceiling height of a level, mm. */
export function withCeiling(plan: Plan, levelId: string, ceiling: Mm): Plan {
  return uncheckedLevelEdit(plan, levelId, ({ ceilingAnswered: _, ...level }) => ({ ...level, ceiling }));
}

/** Returns the plan with an answer to what is under the floor of a level. */
export function withGround(plan: Plan, levelId: string, ground: Ground): Plan {
  return uncheckedLevelEdit(plan, levelId, ({ groundAnswered: _, ...level }) => ({ ...level, ground }));
}

/** Returns the plan with an answer to whether people live on a level. */
export function withLiving(plan: Plan, levelId: string, living: Living): Plan {
  return uncheckedLevelEdit(plan, levelId, ({ livingAnswered: _, ...level }) => ({ ...level, living }));
}
