import { openChecks } from '../check/looked-for.ts';
import type { DetectorReport, Verdict } from '../check/types.ts';
import { capital } from '../plan/nouns.ts';
import type { RuleId } from '../rules/types.ts';
import { VERDICT_WORD } from './verdict-word.ts';

/** What stands largest over a detector. `open`: the rules that were not run; the word then says so in the same breath. */
export type Headline =
  | { readonly kind: 'closed'; readonly verdict: Verdict; readonly open: readonly []; readonly word: string }
  | { readonly kind: 'open'; readonly verdict: Verdict; readonly open: readonly RuleId[]; readonly word: string };

/** The verdict where rules were not run. Blocked and unknown promise nothing that an open rule could take back. */
const OPEN_WORD: Readonly<Record<Verdict, string>> = {
  clear: 'Clear of what is drawn',
  tight: 'Tight to what is drawn',
  blocked: capital(VERDICT_WORD.blocked),
  unknown: capital(VERDICT_WORD.unknown),
};

/** The headline of a report: never the bare word "Clear" while any row is not run. */
export function headlineOf(report: DetectorReport): Headline {
  const { verdict } = report;
  const open = [...new Set(openChecks(report).map(({ rule }) => rule))];
  if (open.length === 0) return { kind: 'closed', verdict, open: [], word: capital(VERDICT_WORD[verdict]) };
  return { kind: 'open', verdict, open, word: OPEN_WORD[verdict] };
}
