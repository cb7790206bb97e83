import type { Level, Living, LookedForBy, Plan, Purpose } from '../plan/model.ts';
import { changedLevel } from './level.ts';

/** Who looks, and when (RFC 3339); either may be missing. */
export interface Look {
  readonly by: string;
  readonly at: string | null;
}

/** The plan with "none here" answered for a rule on a level, by whoever looked. An answer that stood before is renewed. */
export function withNoneHere(plan: Plan, levelId: string, rule: string, { by, at }: Look): Plan {
  const answer: LookedForBy = { rule, by: by.trim(), at };
  return changedLevel(plan, levelId, (level) => ({
    ...level,
    lookedFor: [...(level.lookedFor ?? []).filter((each) => each !== rule), rule],
    lookedForBy: [...(level.lookedForBy ?? []).filter((each) => each.rule !== rule), answer],
  }));
}

/** The plan without the answers "none here" for these rules on a level; the plan itself where none of them was given. */
export function withAnswersWithdrawn(plan: Plan, levelId: string, rules: readonly string[]): Plan {
  return changedLevel(plan, levelId, (level) => withoutAnswers(level, rules));
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

/** The plan with who and when of a look put on the "none here" answers of a level that lack them. What is written down stays. */
export function withLooksSigned(plan: Plan, levelId: string, { by, at }: Look): Plan {
  return changedLevel(plan, levelId, (level) => {
    const { lookedFor = [], lookedForBy = [] } = level;
    const signed = lookedFor.map((rule): LookedForBy => {
      const before = lookedForBy.find((each) => each.rule === rule);
      return { ...before, rule, by: before?.by.trim() || by.trim(), at: before?.at ?? at };
    });
    const others = lookedForBy.filter(({ rule }) => !lookedFor.includes(rule));
    return { ...level, lookedForBy: [...signed, ...others] };
  });
}

/** The plan with the reason for the test answered. */
export function withPurpose(plan: Plan, purpose: Purpose): Plan {
  const { purposeAnswered: _, ...site } = plan.site;
  return { ...plan, site: { ...site, purpose } };
}

/** The plan with the answer whether people live on a level. */
export function withLiving(plan: Plan, levelId: string, living: Living): Plan {
  return changedLevel(plan, levelId, ({ livingAnswered: _, ...level }) => ({ ...level, living }));
}
