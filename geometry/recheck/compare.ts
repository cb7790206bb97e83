import type { Mm } from '../plan/model.ts';
import type { SecondOpinion } from './recheck.ts';
import { type DetectorOpinion, type Opinion, type Row, type Verdict, worst } from './types.ts';

/** Two measurements of one distance agree within this, mm. */
const AGREEMENT_TOLERANCE = 0.5;

/** Where the measurements agree within this, mm, and are at a limit, rounding decides the verdict, and either verdict is right. */
const ROUNDING = 1e-6;
/** Limit tolerance, mm. */
const LIMIT_TOLERANCE = 0.1;

/** The result of one computation for a rule: the worst verdict, and the least distance in mm. */
export interface ComputedFigure {
  readonly verdict: Verdict | 'not run' | 'no such row';
  readonly measured: Mm | null;
}
export interface Difference {
  readonly rule: string;
  readonly first: ComputedFigure;
  readonly second: ComputedFigure;
}

/** How the verdict of a detector was computed: twice with agreement, twice with differences, or once. */
export type Computed =
  | { readonly how: 'twice' }
  | { readonly how: 'once'; readonly cause: string }
  | {
      readonly how: 'differs';
      readonly first: Verdict;
      readonly second: Verdict;
      readonly rules: readonly Difference[];
    };

interface ComparedDetector {
  readonly id: string;
  readonly computed: Computed;
}
export interface ComparedLevel {
  readonly id: string;
  readonly detectors: readonly ComparedDetector[];
}

/**
 * Compares, for every detector of the first opinion, the overall verdict and every rule's least distance with the
 * second. `tape` is the plan's tape tolerance, mm.
 */
export function compareOpinions(first: Opinion, second: SecondOpinion, tape: Mm = 0): ComparedLevel[] {
  return first.levels.map(({ id, detectors }, i) => ({
    id,
    detectors: detectors.map((detector, k) => ({
      id: detector.id,
      computed: second.ok
        ? compared(detector, second.levels[i]?.detectors[k], tape)
        : { how: 'once', cause: second.cause },
    })),
  }));
}

function compared(first: DetectorOpinion, second: DetectorOpinion | undefined, tape: Mm): Computed {
  if (second?.id !== first.id) return { how: 'once', cause: 'it did not look at this detector' };
  const names = new Set([...first.checks, ...second.checks].map(limitOf));
  const rules = [...names].flatMap((name) => {
    const [one, two] = [first, second].map(({ checks }) => checks.filter((row) => limitOf(row) === name));
    return one && two ? differenceOf(one, two, first, tape) : [];
  });
  const [one, two] = [first.verdict, withAgreedSun(first, second).verdict];
  const alike = one === two || first.checks.some((row) => isAt(row, changeOf(one, two, tape)));
  return rules.length === 0 && alike ? { how: 'twice' } : { how: 'differs', first: one, second: two, rules };
}

/** The rule whose area is deliberately too large in the first computation. The second only looks for light outside that area. */
const LARGER = 'direct-sun';

/** Returns the second opinion with the sun rows of the first, if the second found no light nearer than the first. */
function withAgreedSun(first: DetectorOpinion, second: DetectorOpinion): DetectorOpinion {
  const isSun = ({ rule }: Row) => rule === LARGER;
  const [one, two] = [first, second].map(({ checks }) => figureOf(checks.filter(isSun)));
  if (!one || !two || !isNoNearer(one, two)) return second;
  const checks = [...second.checks.filter((row) => !isSun(row)), ...first.checks.filter(isSun)];
  return { ...second, checks, verdict: worst(checks.filter(({ notRun }) => !notRun).map(({ verdict }) => verdict)) };
}

/** Returns whether both computations have run and the second has found nothing nearer than the first. */
function isNoNearer(one: ComputedFigure, two: ComputedFigure): boolean {
  const ran = one.verdict !== 'not run' && two.verdict !== 'not run' && two.verdict !== 'no such row';
  if (!ran || one.measured === null || two.verdict === 'unknown') return false;
  return two.measured === null || two.measured >= one.measured - AGREEMENT_TOLERANCE;
}

/** Rules that measure nothing; the distances in their rows are for information. */
const MEASURES_NOTHING = ['room-use'];

/** Rules with two limits on the distance from each of their subjects. */
const EACH_SUBJECT = ['companion'];

/** Returns the key of a limit: rows of one rule and one kind of limit are compared (minimum, maximum, stream). */
function limitOf({ rule, required, subject }: Row): string {
  if (MEASURES_NOTHING.includes(rule)) return rule;
  return EACH_SUBJECT.includes(rule) ? `${rule} ${required} ${subject}` : `${rule} ${required}`;
}

function differenceOf(one: readonly Row[], two: readonly Row[], first: DetectorOpinion, tape: Mm): Difference[] {
  const [row] = [...one, ...two];
  const [a, b] = [figureOf(one), figureOf(two)];
  const isOnTurn = [...one, ...two].some((each) => isAt(each, changeOf(a.verdict, b.verdict, tape)));
  if (!row || agree(a, b, isOnTurn) || (row.rule === LARGER && isNoNearer(a, b))) return [];
  // The first computation may report only the one of two limits of a rule with the smaller margin, and only the blocked
  // rows of a blocked rule.
  const reported = worst(
    first.checks.filter(({ rule, notRun }) => rule === row.rule && !notRun).map(({ verdict }) => verdict),
  );
  const isLeftOut =
    one.length === 0 &&
    two.every(({ notRun, verdict }) => (notRun ? reported === 'blocked' : worst([verdict, reported]) === reported));
  return isLeftOut && first.checks.some(({ rule }) => rule === row.rule)
    ? []
    : [{ rule: row.rule, first: a, second: b }];
}

function figureOf(rows: readonly Row[]): ComputedFigure {
  const run = rows.filter(({ notRun }) => !notRun);
  const lengths = run.flatMap(({ rule, measured }) =>
    measured === null || MEASURES_NOTHING.includes(rule) ? [] : [measured],
  );
  const none = rows.length === 0 ? 'no such row' : 'not run';
  return {
    verdict: run.length > 0 ? worst(run.map(({ verdict }) => verdict)) : none,
    measured: lengths.length > 0 ? Math.min(...lengths) : null,
  };
}

function agree(one: ComputedFigure, two: ComputedFigure, onTurn: boolean): boolean {
  if (one.measured === null || two.measured === null)
    return one.verdict === two.verdict && one.measured === two.measured;
  const apart = Math.abs(one.measured - two.measured);
  return apart <= AGREEMENT_TOLERANCE && (one.verdict === two.verdict || (onTurn && apart <= ROUNDING));
}

const MET: readonly string[] = ['clear', 'tight'];

/**
 * Returns the distance from its limit at which a length changes from one of these verdicts to the other, mm: the limit
 * tolerance, or the tape tolerance.
 */
const changeOf = (one: string, two: string, tape: Mm): Mm =>
  MET.includes(one) && MET.includes(two) ? tape : LIMIT_TOLERANCE;

/** Returns whether a length is at that distance from its limit. */
function isAt({ measured, required, notRun }: Row, change: Mm): boolean {
  if (measured === null || required === null || notRun) return false;
  return Math.abs(Math.abs(measured - required) - change) <= ROUNDING;
}
