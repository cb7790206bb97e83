import type { Mm } from '../plan/model.ts';
import type { SecondOpinion } from './recheck.ts';
import { type DetectorOpinion, type Opinion, type Row, type Verdict, worst } from './types.ts';

/** Two figures for one distance agree within this, mm. */
export const AGREES = 0.5;

/** What one computation makes of a rule: the worst verdict, and the least distance in mm. */
export interface Figure {
  readonly verdict: Verdict | 'not run' | 'no such row';
  readonly measured: Mm | null;
}
export interface Difference {
  readonly rule: string;
  readonly first: Figure;
  readonly second: Figure;
}

/** How the verdict of a detector was come by. */
export type Computed =
  | { readonly how: 'twice' }
  | { readonly how: 'once'; readonly cause: string }
  | {
      readonly how: 'differs';
      readonly first: Verdict;
      readonly second: Verdict;
      readonly rules: readonly Difference[];
    };

export interface ComparedDetector {
  readonly id: string;
  readonly computed: Computed;
}
export interface ComparedLevel {
  readonly id: string;
  readonly detectors: readonly ComparedDetector[];
}

/** For every detector of the first opinion, whether the second agrees: on the verdict, and on every rule's least distance. */
export function compareOpinions(first: Opinion, second: SecondOpinion): ComparedLevel[] {
  return first.levels.map(({ id, detectors }, i) => ({
    id,
    detectors: detectors.map((detector, k) => ({
      id: detector.id,
      computed: second.ok ? compared(detector, second.levels[i]?.detectors[k]) : { how: 'once', cause: second.cause },
    })),
  }));
}

/** The report with the verdict that may leave the tool: unknown where the two computations differ. */
export function settled<Report extends { readonly verdict: Verdict }>(
  report: Report,
  computed: Computed | null,
): Report {
  return computed?.how === 'differs' ? { ...report, verdict: 'unknown' } : report;
}

function compared(first: DetectorOpinion, second: DetectorOpinion | undefined): Computed {
  if (second?.id !== first.id) return { how: 'once', cause: 'it did not look at this detector' };
  const names = new Set([...first.checks, ...second.checks].map(limitOf));
  const rules = [...names].flatMap((name) => {
    const [one, two] = [first, second].map(({ checks }) => checks.filter((row) => limitOf(row) === name));
    return one && two ? differenceOf(one, two, first) : [];
  });
  const [one, two] = [first.verdict, second.verdict];
  return rules.length === 0 && one === two ? { how: 'twice' } : { how: 'differs', first: one, second: two, rules };
}

/** Rows of one rule and one limit are held against one another: at least so much, at most so much, out of a stream. */
const limitOf = ({ rule, required }: Row) => `${rule} ${required}`;

function differenceOf(one: readonly Row[], two: readonly Row[], first: DetectorOpinion): Difference[] {
  const [row] = [...one, ...two];
  const [a, b] = [figureOf(one), figureOf(two)];
  if (!row || agree(a, b)) return [];
  // Of two limits of a rule the first computation tells the nearer one alone while both are clear.
  const isLeftOut = one.length === 0 && b.verdict === 'clear' && first.checks.some(({ rule }) => rule === row.rule);
  return isLeftOut ? [] : [{ rule: row.rule, first: a, second: b }];
}

function figureOf(rows: readonly Row[]): Figure {
  const run = rows.filter(({ notRun }) => !notRun);
  const lengths = run.flatMap(({ measured }) => (measured === null ? [] : [measured]));
  const none = rows.length === 0 ? 'no such row' : 'not run';
  return {
    verdict: run.length > 0 ? worst(run.map(({ verdict }) => verdict)) : none,
    measured: lengths.length > 0 ? Math.min(...lengths) : null,
  };
}

function agree(one: Figure, two: Figure): boolean {
  if (one.verdict !== two.verdict) return false;
  if (one.measured === null || two.measured === null) return one.measured === two.measured;
  return Math.abs(one.measured - two.measured) <= AGREES;
}
