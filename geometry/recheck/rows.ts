import type { Detector, Level, Mm, Plan } from '../plan/model.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import type { Row, Verdict } from './types.ts';
import type { WallLayout } from './wall-layout.ts';

/** One detector with everything that it is checked against. */
export interface Case {
  readonly plan: Plan;
  readonly level: Level;
  readonly layout: WallLayout;
  readonly detector: Detector;
}

/** Limit tolerance, mm. */
const LIMIT_TOLERANCE = 0.1;
/** Rounding error of the difference of two lengths, mm. */
const SUBTRACTION = 1e-9;

/** Returns a row of a rule that measures nothing. */
export function reasonRow(rule: EffectiveRule, verdict: Verdict, subject: string | null = null): Row {
  return { rule: rule.id, subject, measured: null, required: null, verdict, notRun: false };
}

/** Returns the row of a rule that is not run. */
export function notRunRow(rule: EffectiveRule): Row {
  return { rule: rule.id, subject: null, measured: null, required: rule.least, verdict: 'unknown', notRun: true };
}

/** Returns a row of a rule with a minimum distance. `intersects`: the detector intersects the body, which no limit allows. */
export function leastRow(
  { plan }: Case,
  rule: EffectiveRule,
  subject: string | null,
  measured: Mm,
  { required = rule.least as Mm, intersects = false } = {},
): Row {
  const verdict = intersects ? 'blocked' : spareVerdict(measured - required, plan);
  return { rule: rule.id, subject, measured, required, verdict, notRun: false };
}

/** Returns a row of a rule with a maximum distance, mm. */
export function mostRow({ plan }: Case, rule: EffectiveRule, subject: string | null, measured: Mm, required: Mm): Row {
  return {
    rule: rule.id,
    subject,
    measured,
    required,
    verdict: spareVerdict(required - measured, plan),
    notRun: false,
  };
}

/** Rounding, mm: 5 in minus 4 in has exactly the tape tolerance of 1 in to spare. */
const ROUNDING = 1e-6;

function spareVerdict(spare: Mm, { tapeTolerance }: Plan): Verdict {
  if (spare < -LIMIT_TOLERANCE - SUBTRACTION) return 'blocked';
  return spare < tapeTolerance - ROUNDING ? 'tight' : 'clear';
}
