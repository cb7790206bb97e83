import { memoize } from '../plane/memoize.ts';
import { sourceLine } from './profiles.ts';
import type { Rule, Source, SourceScope } from './types.ts';

/** The sources that a row of a report cites. */
export interface Citation {
  /** Every source, in one line. */
  readonly source: string;
  readonly sources: readonly Source[];
}

/** Citations cached by the list of sources, which a rule keeps when its distance is overridden. */
const citationsOf = memoize((_: readonly Source[]): Map<string | null, Citation> => new Map());

/**
 * Returns the sources of a rule for one part of what it covers: those named for that part, else those without a part.
 */
export function citationFor({ sources: all }: Pick<Rule, 'sources'>, what: SourceScope | string | null): Citation {
  const citations = citationsOf(all);
  let citation = citations.get(what);
  if (!citation) {
    const own = all.filter(({ of }) => of?.some((scope) => scope === what));
    const sources = own.length > 0 ? own : all.filter(({ of }) => !of);
    citation = { source: sourceLine({ sources }), sources };
    citations.set(what, citation);
  }
  return citation;
}
