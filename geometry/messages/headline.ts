import { openChecks } from '../check/looked-for.ts';
import type { DetectorReport, Verdict } from '../check/types.ts';
import { capital } from '../plan/nouns.ts';
import type { RuleId } from '../rules/types.ts';

/** The headline of a detector. `open` holds the rules that were not run, which the headline then mentions. */
export type Headline =
  | { readonly kind: 'closed'; readonly verdict: Verdict; readonly open: readonly []; readonly word: string }
  | { readonly kind: 'open'; readonly verdict: Verdict; readonly open: readonly RuleId[]; readonly word: string };

/** The headline for each verdict when rules were not run. Blocked and unknown are unchanged, because an open rule cannot improve them. */
const OPEN_WORD: Readonly<Record<Verdict, string>> = {
  clear: 'Clear of what is drawn',
  tight: 'Tight to what is drawn',
  blocked: 'Blocked',
  unknown: 'Unknown',
};

/** Returns the headline of a report: never a bare "Clear" while any check was not run. */
export function headlineOf(report: DetectorReport): Headline {
  const { verdict } = report;
  const open = [...new Set(openChecks(report).map(({ rule }) => rule))];
  if (open.length === 0) return { kind: 'closed', verdict, open: [], word: capital(verdict) };
  return { kind: 'open', verdict, open, word: OPEN_WORD[verdict] };
}

/** Shown next to every verdict, on screen, in files and on paper. */
export const CAUTIONS: readonly string[] = [
  'Drawn distances are as good as the tape that took them.',
  'Local codes and the instructions of the kit come first.',
  'A certified or licensed professional decides whether a result may be used, in your own home too.',
  'Long-term risk needs more than one short test.',
];
