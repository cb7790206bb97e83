import { STANDS_INSIDE } from '../check/distances.ts';
import { compareVerdicts } from '../check/measure.ts';
import { LIMIT_TOLERANCE } from '../check/subjects.ts';
import type { Check, DetectorReport } from '../check/types.ts';
import type { Level, Mm, Plan } from '../plan/model.ts';
import { capital, listed } from '../plan/nouns.ts';
import { ruleOf } from '../rules/profiles.ts';
import { formatLength, formatMeasured, formatRequired } from '../units/index.ts';
import { subjectName } from './subject.ts';

type PlanWords = Pick<Plan, 'display' | 'site' | 'protocol'>;

/** The figures of a check in words; empty where the check has none. */
export interface CheckFigures {
  readonly measured: string;
  readonly needed: string;
  /** "4 in to spare", "short by 1 ft", "over by 2 in". */
  readonly spare: string;
}

/**
 * Lengths rounded toward caution: a least distance is measured downward and needed upward, a greatest one the other way
 * round, what is spare downward, what is missing upward. A check that meets its limit within the 0.1 mm of the contract never reads as
 * short of it.
 */
export function checkFigures(check: Check, plan: PlanWords): CheckFigures {
  const unit = plan.display.length;
  const { measured, required, margin, bound } = check;
  if (measured === null || required === null || margin === null) return { measured: '', needed: '', spare: '' };
  if (isStream(check))
    return { measured: '', needed: '', spare: streamWords(measured, check.verdict === 'blocked', unit) };
  const least = bound === 'least';
  const met = check.verdict !== 'blocked' || margin >= -LIMIT_TOLERANCE;
  return {
    measured: formatMeasured(measured, unit, bound),
    needed: formatRequired(required, unit, bound),
    spare: met
      ? spareWords(check, margin, unit)
      : `${least ? 'short by' : 'over by'} ${formatLength(-margin, unit, 'up')}`,
  };
}

/** A row can be blocked with the distance kept: inside a body of a rule without a distance, a pair that does not stand together. */
function spareWords({ verdict, rule }: Check, margin: Mm, unit: Plan['display']['length']): string {
  if (verdict === 'blocked') return rule === 'companion' ? 'not together' : 'inside it';
  return `${formatLength(Math.max(0, margin), unit, 'down')} to spare`;
}

/** The figure on a measured line with what it is held against: "5 ft 2 in, needs 7 ft", "9 in, 8 in at most". */
export function figureWithLimit(check: Check, plan: PlanWords): string {
  const { measured, needed } = checkFigures(check, plan);
  return check.bound === 'least' ? `${measured}, needs ${needed}` : `${measured}, ${needed} at most`;
}

/** What a check is held against, as a sentence names it; empty for the room, the level and heights. */
export function checkSubject(check: Check, plan: PlanWords, level: Level): string {
  if (check.subject === null) return '';
  const bearing = check.witness && {
    from: check.witness.rim,
    to: check.witness.subject,
    north: plan.site.north,
  };
  return subjectName(level, check.subject, bearing, check.rule !== 'object');
}

/**
 * One check as a sentence without its verdict word: "5 ft 2 in from the sump pit, needs 7 ft."
 * Where no number decides, the engine's reason; the rule's own words where there is none.
 */
export function describeCheck(check: Check, plan: PlanWords, level: Level): string {
  const rule = ruleOf(plan.protocol, check.rule);
  const { measured, needed, spare } = checkFigures(check, plan);
  if (isStream(check)) return `${capital(spare)} of ${checkSubject(check, plan, level)}.`;
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
  if (check.reason === STANDS_INSIDE) return `Inside ${subject}. Set it clear of it.`;
  const where = check.measured === 0 ? `Touches or covers ${subject}` : `${measured} from ${subject}`;
  return `${where}, ${limit}.${check.reason ? ` ${sentence(check.reason)}` : ''}`;
}

/** Worst first: blocked, then unknown, tight, clear; within a verdict the least to spare for what is needed; "not run" last. */
export function inOrder(checks: readonly Check[]): readonly Check[] {
  return [...checks].sort((a, b) => compareChecks(a, b) || share(a) - share(b));
}

/**
 * The reason of a verdict in one or two sentences, without the verdict word. For blocked and unknown the worst check, then
 * the names of the other rules that fail; for tight and clear what there is to spare at the tightest.
 */
export function describeReport(report: DetectorReport, plan: PlanWords, level: Level): string {
  const ran = inOrder(report.checks.filter(({ notRun }) => !notRun));
  const [worst] = ran;
  if (!worst) return 'Nothing was checked: draw the walls around it first.';
  if (report.verdict === 'blocked' || report.verdict === 'unknown') {
    const failing = ran.filter(({ verdict }) => verdict === report.verdict && verdict !== 'clear');
    const others = new Set(failing.slice(1).map((check) => ruleOf(plan.protocol, check.rule).name.toLowerCase()));
    others.delete(ruleOf(plan.protocol, worst.rule).name.toLowerCase());
    const also = others.size > 0 ? ` Also ${report.verdict}: ${listed([...others])}.` : '';
    return describeCheck(worst, plan, level) + also;
  }
  const tightest = ran.find(({ margin }) => margin !== null);
  if (!tightest) return 'Every rule that ran is met.';
  const { spare } = checkFigures(tightest, plan);
  if (isStream(tightest)) {
    const words = describeCheck(tightest, plan, level);
    return report.verdict === 'tight' ? `Look again with the tape: ${words}` : `Every rule that ran is met. ${words}`;
  }
  const rule = ruleOf(plan.protocol, tightest.rule).name.toLowerCase();
  const subject = checkSubject(tightest, plan, level) || rule;
  return report.verdict === 'tight'
    ? `Look again with the tape: ${spare} at ${subject}.`
    : `Every rule that ran is met. The least is ${spare}, at ${subject}.`;
}

export interface NotRun {
  /** Name of the rule. */
  readonly rule: string;
  readonly reason: string;
}

/** What stands beside the verdict as not run. Empty when everything ran. */
export function notRunRules(report: DetectorReport, plan: PlanWords): readonly NotRun[] {
  return report.checks
    .filter(({ notRun }) => notRun)
    .map((check) => ({ rule: ruleOf(plan.protocol, check.rule).name, reason: check.reason || 'nothing to run on.' }));
}

/** The same, a line each: "Direct sun: …". */
export function describeNotRun(report: DetectorReport, plan: PlanWords): readonly string[] {
  return notRunRules(report, plan).map(({ rule, reason }) => `${rule}: ${reason}`);
}

/** A stream of air has no distance to keep, only an edge to stay outside of. */
function isStream(check: Check): boolean {
  return check.rule === 'moving-air' && check.required === 0 && check.measured !== null;
}

function streamWords(measured: Mm, inside: boolean, unit: Plan['display']['length']): string {
  if (!inside) return `${formatLength(Math.max(0, measured), unit, 'down')} clear of the stream of air`;
  return `${formatLength(Math.max(0, -measured), unit, 'up')} inside the stream of air`;
}

/** The worst first; what was not run comes last. */
function compareChecks(a: Check, b: Check): number {
  const notRun = Number(a.notRun) - Number(b.notRun);
  return notRun || (a.notRun ? 0 : compareVerdicts(a.verdict, b.verdict));
}

/** What is to spare as a share of what is needed: 2 in short of 4 in weighs more than 2 in short of 7 ft. */
function share(check: Check): number {
  if (check.margin === null || check.required === null) {
    return check.verdict === 'clear' ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  }
  return check.margin / Math.max(check.required, 1);
}

function sentence(text: string): string {
  const trimmed = capital(text.trim());
  return /[.!?]$/.test(trimmed) || !trimmed ? trimmed : `${trimmed}.`;
}
