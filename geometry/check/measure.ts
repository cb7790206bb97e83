import type { Mm, XY } from '../plan/model.ts';
import { type Body, bodyDistance, nearestOnBody, signedBodyDistance } from '../plane/body.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import { citationFor } from '../rules/citation.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { type Cylinder, heightBetween, ROUNDING, SUBTRACTION, type Subject, supportedDepth } from './subjects.ts';
import type { Check, Verdict, Witness } from './types.ts';

/**
 * Returns the measured distance between a detector and a subject, mm: from the rim, 0 inside the body; for rules
 * measured in space, combined with the vertical distance. For a stream it is signed: negative when the rim reaches
 * into it. Null when the subject does not count (it ends below the detector, or supports it).
 */
export function measureSubject(rule: EffectiveRule, subject: Subject, probe: Cylinder, x: Mm, y: Mm): Mm | null {
  if (subject.keepOut) return signedBodyDistance(subject.body, x, y) - probe.radius;
  const inPlan = Math.max(0, bodyDistance(subject.body, x, y) - probe.radius);
  if (rule.measured !== 'space') return inPlan;
  const height = heightBetween(subject, probe);
  if (height !== null && inPlan === 0 && isSupported(rule, subject, probe, x, y)) return null;
  return height === null ? null : Math.hypot(inPlan, height);
}

function isSupported(rule: EffectiveRule, subject: Subject, probe: Cylinder, x: Mm, y: Mm): boolean {
  const depth = supportedDepth(rule, subject, probe);
  return depth !== null && -signedBodyDistance(subject.body, x, y) >= depth - ROUNDING;
}

/** Returns the verdict for a margin: blocked, tight within the tape tolerance, or clear. */
function marginVerdict(margin: Mm, tapeTolerance: Mm): Verdict {
  if (margin < -LIMIT_TOLERANCE - SUBTRACTION) return 'blocked';
  return margin < tapeTolerance - ROUNDING ? 'tight' : 'clear';
}

/** Returns a check of a distance against a limit. */
export function distanceCheck(
  rule: EffectiveRule,
  subject: string | null,
  required: Mm,
  measured: Mm,
  tapeTolerance: Mm,
  bound: 'least' | 'most' = 'least',
): Check {
  const margin = bound === 'least' ? measured - required : required - measured;
  return {
    ...emptyCheck(rule, subject),
    required,
    measured,
    margin,
    bound,
    verdict: marginVerdict(margin, tapeTolerance),
  };
}

/** Returns a check without a distance; `what` selects the sources of the rule to cite. */
export function reasonCheck(
  rule: EffectiveRule,
  verdict: Verdict,
  reason: string,
  notRun = false,
  what: string | null = null,
): Check {
  return { ...emptyCheck(rule, null), ...citationFor(rule, what), verdict, reason, notRun };
}

/** A row without its verdict, which the caller sets. */
function emptyCheck(rule: EffectiveRule, subject: string | null): Omit<Check, 'verdict'> {
  return {
    rule: rule.id,
    subject,
    required: null,
    measured: null,
    margin: null,
    bound: 'least',
    notRun: false,
    ...citationFor(rule, null),
    override: rule.override,
    witness: null,
    reason: '',
  };
}

/** Returns the line along which a subject was measured; from the axis when the rim is inside the body. */
export function witnessTo(body: Body, probe: Cylinder, at: XY): Witness {
  const point = nearestOnBody(body, at);
  const d = Math.hypot(point[0] - at[0], point[1] - at[1]);
  if (d <= probe.radius) return { rim: at, subject: point };
  const t = probe.radius / d;
  return { rim: [at[0] + (point[0] - at[0]) * t, at[1] + (point[1] - at[1]) * t], subject: point };
}

const RANK: Record<Verdict, number> = { blocked: 0, unknown: 1, tight: 2, clear: 3 };

/** Compares verdicts, the worst first. */
export function compareVerdicts(a: Verdict, b: Verdict): number {
  return RANK[a] - RANK[b];
}

/** Returns the worst verdict of checks, ignoring those that were not run and may not lower it. */
export function worstVerdict(checks: readonly Check[]): Verdict {
  let worst: Verdict = 'clear';
  for (const { verdict, notRun } of checks) {
    if (!notRun && RANK[verdict] < RANK[worst]) worst = verdict;
  }
  return worst;
}

/**
 * Of several rows of one rule, returns the one with the smallest margin and every one that is not clear, the smallest
 * margin first. Ties are broken by id, so that the order of the file does not matter.
 */
export function nearestAndNotClear(rows: readonly Check[]): Check[] {
  return [...rows].sort(compareByMargin).filter((check, i) => i === 0 || check.verdict !== 'clear');
}

/** Compares by margin, then by id. */
export function compareByMargin(a: Check, b: Check): number {
  return Math.round((a.margin ?? 0) / ROUNDING) - Math.round((b.margin ?? 0) / ROUNDING) || byId(a, b);
}

function byId(a: Check, b: Check): number {
  const [p, q] = [a.subject ?? '', b.subject ?? ''];
  if (p === q) return 0;
  return p < q ? -1 : 1;
}
