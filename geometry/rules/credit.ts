import { memoize } from '../plane/memoize.ts';
import { sourceLine } from './profiles.ts';
import type { Rule, Source, SourceScope } from './types.ts';

/** Where a row of a report has its demand from. */
export interface Credit {
  /** Every source in one line. */
  readonly source: string;
  readonly sources: readonly Source[];
}

const creditsOf = memoize((_: Rule): Map<string | null, Credit> => new Map());

/** The sources of a rule for one thing that it is held against: its own where there are such, else those of the rule as a whole. */
export function creditFor(rule: Rule, what: SourceScope | string | null): Credit {
  const credits = creditsOf(rule);
  let credit = credits.get(what);
  if (!credit) {
    const own = rule.sources.filter(({ of }) => of?.some((scope) => scope === what));
    const sources = own.length > 0 ? own : rule.sources.filter(({ of }) => !of);
    credit = { source: sourceLine({ sources }), sources };
    credits.set(what, credit);
  }
  return credit;
}
