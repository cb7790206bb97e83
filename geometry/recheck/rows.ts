import type { Detector, Level, Mm, Plan } from '../plan/model.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import type { House } from './house.ts';
import type { Row, Verdict } from './types.ts';

/** One detector with everything that it is held against. */
export interface Case {
  readonly plan: Plan;
  readonly level: Level;
  readonly house: House;
  readonly detector: Detector;
}

/** A limit is met to this much, mm. */
const FORGIVEN = 0.1;

/** A row of a rule that measures nothing. */
export function wordRow(rule: EffectiveRule, verdict: Verdict, subject: string | null = null): Row {
  return { rule: rule.id, subject, measured: null, required: null, verdict, notRun: false };
}

export function notRunRow(rule: EffectiveRule): Row {
  return { rule: rule.id, subject: null, measured: null, required: rule.least, verdict: 'unknown', notRun: true };
}

/** A row of a rule with a least distance; `entered`: the detector is inside the body, which no limit allows. */
export function leastRow(
  { plan }: Case,
  rule: EffectiveRule,
  subject: string | null,
  measured: Mm,
  { required = rule.least as Mm, entered = false } = {},
): Row {
  const verdict = entered ? 'blocked' : spareVerdict(measured - required, plan);
  return { rule: rule.id, subject, measured, required, verdict, notRun: false };
}

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

/** A millionth of a millimeter is rounding: 5 in less 4 in has the whole inch of the tape to spare. */
const ROUNDING = 1e-6;

function spareVerdict(spare: Mm, { tapeTolerance }: Plan): Verdict {
  if (spare < -FORGIVEN) return 'blocked';
  return spare < tapeTolerance - ROUNDING ? 'tight' : 'clear';
}
