import { openChecks } from '../../../geometry/check/looked-for.ts';
import { missingSunData } from '../../../geometry/check/sun.ts';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { describeNotRun, describeReport, listed } from '../../../geometry/messages/index.ts';
import type { Detector, Level, Plan } from '../../../geometry/plan/model.ts';
import { isOverridable, ruleOf } from '../../../geometry/rules/profiles.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { detectorLabel } from '../detector-label.ts';
import type { TestStage } from './test-stages.ts';
import type { ValidityIssue } from './validity.ts';

/** Placement reports of one level. */
export interface LevelPlacement {
  readonly id: string;
  readonly detectors: readonly PlacementReport[];
}
/** A report; `discrepancy` describes a difference between the two computations. */
type PlacementReport = DetectorReport & { readonly discrepancy?: string | undefined };

/** The effect of placement on a test: issues, and notes that do not affect its validity. */
export interface PlacementIssues {
  readonly issues: readonly ValidityIssue[];
  readonly notes: readonly string[];
}

/**
 * Returns the issues of placement. A blocked detector with a result makes that result invalid. A blocked detector without a result, an
 * unknown verdict, and every check that was not run leave the validity unknown.
 */
export function placementIssues(plan: Plan, placement: readonly LevelPlacement[]): PlacementIssues {
  const levels = plan.levels.map((level) =>
    issuesOnLevel(
      plan,
      level,
      placement.find(({ id }) => id === level.id),
    ),
  );
  return { issues: levels.flatMap(({ issues }) => issues), notes: levels.flatMap(({ notes }) => notes) };
}

function issuesOnLevel(plan: Plan, level: Level, placement: LevelPlacement | undefined): PlacementIssues {
  const pairs = level.detectors.flatMap((detector) => {
    const report = placement?.detectors.find(({ id }) => id === detector.id);
    return report ? [{ detector, report }] : [];
  });
  return {
    issues: [
      ...pairs.flatMap(({ detector, report }) => verdictIssues(plan, level, detector, report)),
      ...notRunIssues(plan, level, pairs),
    ],
    notes: pairs
      .filter(({ report }) => report.verdict === 'tight')
      .map(({ detector, report }) => `${detectorLabel(detector)} is tight. ${describeReport(report, plan, level)}`),
  };
}

function verdictIssues(plan: Plan, level: Level, detector: Detector, report: PlacementReport): ValidityIssue[] {
  const { verdict, discrepancy } = report;
  if (discrepancy) {
    const text = `${detectorLabel(detector)} is unknown. ${discrepancy}`;
    return [{ validity: 'unknown', stage: 'place', text, detectors: [detector.id] }];
  }
  if (verdict !== 'blocked' && verdict !== 'unknown') return [];
  const hasResult = plan.readings.some((reading) => reading.detector === detector.id);
  const text = `${detectorLabel(detector)} is ${verdict}: ${describeReport(report, plan, level)}`;
  const validity = verdict === 'blocked' && hasResult ? 'not-evaluated' : 'unknown';
  return [{ validity, stage: 'place', text, detectors: [detector.id] }];
}

/** Stage in which a rule that was not run can be answered; "draw" for all others. */
const STAGE_OF: Partial<Readonly<Record<RuleId, TestStage>>> = {
  level: 'site',
  'running-machine': 'house',
  companion: 'place',
  support: 'place',
};

/** Returns the stage in which what the sun rule lacks is recorded. `isDrawn`: the sill or head of an opening is not measured. */
function sunStage(plan: Plan, isDrawn: boolean): TestStage {
  if (isDrawn) return 'draw';
  const [first] = missingSunData(plan, false);
  if (first) return first === 'location' ? 'site' : 'time';
  return plan.site.northAnswered === false ? 'site' : 'place';
}

/** Returns "site" if the profile has no distance for a drawn subject: it is entered with the profile. */
function drawnStage(plan: Plan, id: RuleId, isDrawn: boolean): TestStage {
  const rule = ruleOf(plan.protocol, id);
  return isDrawn && rule.least === null && isOverridable(rule) ? 'site' : 'draw';
}

interface Placed {
  readonly detector: Detector;
  readonly report: DetectorReport;
}

/** Returns one issue per rule of a level that was not run, with its detectors. */
function notRunIssues(plan: Plan, level: Level, placed: readonly Placed[]): readonly ValidityIssue[] {
  const open = new Map<RuleId, Placed[]>();
  for (const one of placed) {
    for (const rule of new Set(openChecks(one.report).map(({ rule }) => rule))) {
      open.set(rule, [...(open.get(rule) ?? []), one]);
    }
  }
  return [...open].map(([rule, of]): ValidityIssue => {
    const names = listed(of.map(({ detector }) => detectorLabel(detector)));
    const [line = ''] = of.flatMap(({ report }) =>
      describeNotRun({ ...report, checks: report.checks.filter((check) => check.rule === rule) }, plan, level),
    );
    const text = `Not run for ${names}: ${line || ruleOf(plan.protocol, rule).name}`;
    // A subject is drawn, and lacks a figure.
    const isDrawn = of.some(({ report }) => openChecks(report).some((check) => check.rule === rule && check.subject));
    const stage = STAGE_OF[rule] ?? (rule === 'direct-sun' ? sunStage(plan, isDrawn) : drawnStage(plan, rule, isDrawn));
    return { validity: 'unknown', stage, text: withFullStop(text), detectors: of.map(({ detector }) => detector.id) };
  });
}

const withFullStop = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);
