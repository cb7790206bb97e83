import { STANDS_INSIDE } from '../check/distances.ts';
import { compareVerdicts } from '../check/measure.ts';
import type { Check, DetectorReport } from '../check/types.ts';
import type { Level, Mm, Plan } from '../plan/model.ts';
import { capital, listed } from '../plan/nouns.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import { ruleOf } from '../rules/profiles.ts';
import { formatLength, formatMeasured, formatRequired } from '../units/index.ts';
import { openingMiddle, subjectName } from './subject.ts';

type PlanContext = Pick<Plan, 'display' | 'site' | 'protocol'>;

/** The measurements of a check in words; "" where the check has none. */
export interface CheckFigures {
  readonly measured: string;
  readonly needed: string;
  /** "4 in to spare", "short by 1 ft", "over by 2 in". */
  readonly spare: string;
}

/**
 * Returns lengths rounded to the safe side. For a minimum, the measured distance is rounded down and the required one
 * up; for a maximum, the reverse. A margin is rounded down, a shortfall up. A check that meets its limit within the
 * limit tolerance (0.1 mm) never reads as short of it.
 */
export function checkFigures(check: Check, plan: PlanContext): CheckFigures {
  const unit = plan.display.length;
  const { measured, required, margin, bound } = check;
  if (measured === null || required === null || margin === null) return { measured: '', needed: '', spare: '' };
  if (isKeepOut(check)) return { measured: '', needed: '', spare: keepOutWords(check, measured, unit) };
  const least = bound === 'least';
  const met = check.verdict !== 'blocked' || margin >= -LIMIT_TOLERANCE;
  return {
    measured: formatMeasured(measured, unit, bound),
    needed: formatRequired(required, unit, bound),
    spare: met
      ? describeMargin(check, margin, unit)
      : `${least ? 'short by' : 'over by'} ${formatLength(-margin, unit, 'up')}`,
  };
}

/**
 * Describes a margin. A row can be blocked without a shortfall: inside the body of a rule without a distance, or a pair
 * that is not together.
 */
function describeMargin({ verdict, rule }: Check, margin: Mm, unit: Plan['display']['length']): string {
  if (verdict === 'blocked') return rule === 'companion' ? 'not together' : 'inside it';
  return `${formatLength(Math.max(0, margin), unit, 'down')} to spare`;
}

/** Returns a measurement with its limit: "5 ft 2 in, needs 7 ft", "9 in, 8 in at most". */
export function figureWithLimit(check: Check, plan: PlanContext): string {
  const { measured, needed } = checkFigures(check, plan);
  return check.bound === 'least' ? `${measured}, needs ${needed}` : `${measured}, ${needed} at most`;
}

/** Returns the subject of a check as a noun phrase; "" for the room, the level and heights. */
export function checkSubject(check: Check, plan: PlanContext, level: Level): string {
  if (check.subject === null) return '';
  const isSun = check.rule === 'direct-sun' && level.openings.some(({ id }) => id === check.subject);
  const bearing = check.witness && {
    from: check.witness.rim,
    to: (isSun && openingMiddle(level, check.subject)) || check.witness.subject,
    north: plan.site,
  };
  if (isSun) return `the sun through ${subjectName(level, check.subject, bearing)}`;
  return subjectName(level, check.subject, bearing, check.rule !== 'object');
}

/**
 * Returns one check as a sentence without its verdict: "5 ft 2 in from the sump pit, needs 7 ft."
 * If no number decides, the check's reason, or the rule's own text.
 */
export function describeCheck(check: Check, plan: PlanContext, level: Level): string {
  const rule = ruleOf(plan.protocol, check.rule);
  const { measured, needed, spare } = checkFigures(check, plan);
  if (isKeepOut(check)) return `${capital(spare)} of ${checkSubject(check, plan, level)}.`;
  if (!measured) return sentence(check.reason || rule.says);
  const limit = check.bound === 'least' ? `needs ${needed}` : `${needed} at the most`;
  const subject = checkSubject(check, plan, level);
  if (check.rule === 'height-band') {
    return check.bound === 'least'
      ? `${measured} above the floor, needs ${needed}.`
      : `Its top is ${measured} above the floor, ${needed} at the most.`;
  }
  if (check.rule === 'ceiling') return `${measured} below the ceiling, ${limit}.`;
  if (check.rule === 'companion' && check.reason) return sentence(check.reason);
  if (check.rule === 'companion') return `${measured} from rim to rim with ${subject}, ${limit}.`;
  if (check.reason === STANDS_INSIDE) return `Inside ${subject}. Move it clear of it.`;
  const touches = check.rule === 'direct-sun' ? 'In' : 'Touches or covers';
  const where = check.measured === 0 ? `${touches} ${subject}` : `${measured} from ${subject}`;
  return `${where}, ${limit}.${check.reason ? ` ${sentence(check.reason)}` : ''}`;
}

/** Returns the checks from worst to best verdict, then by relative margin; those not run last. */
export function checksInOrder(checks: readonly Check[]): readonly Check[] {
  return [...checks].sort((a, b) => compareChecks(a, b) || relativeMargin(a) - relativeMargin(b));
}

/**
 * Returns the reason of a verdict in one or two sentences, without the verdict. Blocked and unknown: the worst check and
 * the names of the other failing rules. Tight: the tightest check. Clear: the smallest margin.
 */
export function describeReport(report: DetectorReport, plan: PlanContext, level: Level): string {
  const ran = checksInOrder(report.checks.filter(({ notRun }) => !notRun));
  const [worst] = ran;
  if (!worst) return 'Nothing was checked: draw the walls around it first.';
  if (report.verdict === 'blocked' || report.verdict === 'unknown') {
    const failing = ran.filter(({ verdict }) => verdict === report.verdict && verdict !== 'clear');
    const others = new Set(failing.slice(1).map((check) => ruleOf(plan.protocol, check.rule).name.toLowerCase()));
    others.delete(ruleOf(plan.protocol, worst.rule).name.toLowerCase());
    const also = others.size > 0 ? ` Also ${report.verdict}: ${listed([...others])}.` : '';
    return describeCheck(worst, plan, level) + also;
  }
  const measured = ran.filter(({ margin }) => margin !== null);
  if (report.verdict === 'tight') return measuredAgain(measured, plan, level);
  return ['Every rule that ran is met.', leastAround(measured, plan, level)].filter(Boolean).join(' ');
}

function measuredAgain([tightest]: readonly Check[], plan: PlanContext, level: Level): string {
  if (!tightest) return 'Every rule that ran is met.';
  if (isKeepOut(tightest)) return `Measure again: ${describeCheck(tightest, plan, level)}`;
  const subject = checkSubject(tightest, plan, level) || ruleOf(plan.protocol, tightest.rule).name.toLowerCase();
  return `Measure again: ${checkFigures(tightest, plan).spare} at ${subject}.`;
}

/**
 * Describes the smallest margin as a length, not relative to the limit, which is how the rows are sorted. Prefers items around the
 * detector, because its height stays the same wherever it is moved.
 */
function leastAround(measured: readonly Check[], plan: PlanContext, level: Level): string {
  const byLength = [...measured].sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0));
  const least = byLength.find(({ subject }) => subject !== null) ?? byLength[0];
  if (!least) return '';
  if (isKeepOut(least)) return describeCheck(least, plan, level);
  const { spare } = checkFigures(least, plan);
  const subject = checkSubject(least, plan, level);
  if (!subject) return `${ruleOf(plan.protocol, least.rule).name}: ${spare}.`;
  return `The least around it is ${spare}, at ${subject}.`;
}

export interface NotRun {
  /** Name of the rule. */
  readonly rule: string;
  /** The item that the reason is about, as a noun phrase; "" for none. */
  readonly subject: string;
  readonly reason: string;
}

/** Returns the checks that were not run. */
export function notRunRules(report: DetectorReport, plan: PlanContext, level: Level): readonly NotRun[] {
  return report.checks
    .filter(({ notRun }) => notRun)
    .map((check) => ({
      rule: ruleOf(plan.protocol, check.rule).name,
      subject: check.subject === null ? '' : subjectName(level, check.subject),
      reason: check.reason || 'nothing to run on.',
    }));
}

/** Returns the checks that were not run, one line each: "Direct sun: …", "Objects and interior walls, the shelf: …". */
export function describeNotRun(report: DetectorReport, plan: PlanContext, level: Level): readonly string[] {
  return notRunRules(report, plan, level).map(
    ({ rule, subject, reason }) => `${[rule, subject].filter(Boolean).join(', ')}: ${reason}`,
  );
}

/** Returns whether the detector must only stay outside of an edge: an air stream, or sun under a rule without a distance. */
function isKeepOut(check: Check): boolean {
  const { rule, required, measured } = check;
  return (rule === 'moving-air' || rule === 'direct-sun') && required === 0 && measured !== null;
}

function keepOutWords({ rule, verdict }: Check, measured: Mm, unit: Plan['display']['length']): string {
  const inside = verdict === 'blocked';
  if (rule === 'direct-sun')
    return inside
      ? `${formatLength(Math.max(0, -measured), unit, 'up')} inside`
      : `${formatLength(Math.max(0, measured), unit, 'down')} clear`;
  if (!inside) return `${formatLength(Math.max(0, measured), unit, 'down')} clear of the airflow`;
  return `${formatLength(Math.max(0, -measured), unit, 'up')} inside the airflow`;
}

/** Sorts the worst first, and those not run last. */
function compareChecks(a: Check, b: Check): number {
  const notRun = Number(a.notRun) - Number(b.notRun);
  return notRun || (a.notRun ? 0 : compareVerdicts(a.verdict, b.verdict));
}

/** Returns the margin relative to the limit: 2 in short of 4 in is worse than 2 in short of 7 ft. */
function relativeMargin(check: Check): number {
  if (check.margin === null || check.required === null) {
    return check.verdict === 'clear' ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  }
  return check.margin / Math.max(check.required, 1);
}

function sentence(text: string): string {
  const trimmed = capital(text.trim());
  return /[.!?]$/.test(trimmed) || !trimmed ? trimmed : `${trimmed}.`;
}
