import { openChecks } from '../../../geometry/check/open-checks.ts';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { describeNotRun, describeReport, listed } from '../../../geometry/messages/index.ts';
import type { Detector, Level, Plan } from '../../../geometry/plan/model.ts';
import { ruleOf } from '../../../geometry/rules/profiles.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { detectorLabel } from '../detector-label.ts';
import type { StandingReason, StandingStage } from './types.ts';

/** What the checks said of the detectors of each level. */
export interface LevelPlacement {
  readonly id: string;
  readonly detectors: readonly PlacementReport[];
}
/** A report; `doubt` says in words what the two computations differ on, where they do. */
type PlacementReport = DetectorReport & { readonly doubt?: string | undefined };

/** What placement takes from a test, and what it only has to say. */
export interface PlacementCauses {
  readonly reasons: readonly StandingReason[];
  readonly notes: readonly string[];
}

/**
 * A detector with a result that is blocked takes that result; without one it leaves the test open, as does one that cannot be
 * decided, and every check that was not run.
 */
export function placementCauses(plan: Plan, placement: readonly LevelPlacement[]): PlacementCauses {
  const levels = plan.levels.map((level) =>
    causesOn(
      plan,
      level,
      placement.find(({ id }) => id === level.id),
    ),
  );
  return { reasons: levels.flatMap(({ reasons }) => reasons), notes: levels.flatMap(({ notes }) => notes) };
}

function causesOn(plan: Plan, level: Level, placement: LevelPlacement | undefined): PlacementCauses {
  const pairs = level.detectors.flatMap((detector) => {
    const report = placement?.detectors.find(({ id }) => id === detector.id);
    return report ? [{ detector, report }] : [];
  });
  return {
    reasons: [
      ...pairs.flatMap(({ detector, report }) => verdictReasons(plan, level, detector, report)),
      ...notRunReasons(plan, pairs),
    ],
    notes: pairs
      .filter(({ report }) => report.verdict === 'tight')
      .map(({ detector, report }) => `${detectorLabel(detector)} is tight. ${describeReport(report, plan, level)}`),
  };
}

function verdictReasons(plan: Plan, level: Level, detector: Detector, report: PlacementReport): StandingReason[] {
  const { verdict, doubt } = report;
  if (doubt) {
    const says = `${detectorLabel(detector)} is unknown. ${doubt}`;
    return [{ standing: 'unknown', stage: 'place', says, detectors: [detector.id] }];
  }
  if (verdict !== 'blocked' && verdict !== 'unknown') return [];
  const hasResult = plan.readings.some((reading) => reading.detector === detector.id);
  const says = `${detectorLabel(detector)} is ${verdict}: ${describeReport(report, plan, level)}`;
  const standing = verdict === 'blocked' && hasResult ? 'not-evaluated' : 'unknown';
  return [{ standing, stage: 'place', says, detectors: [detector.id] }];
}

/** Where the checks that were not run are answered; the others under Draw. */
const STAGE_OF: Partial<Readonly<Record<RuleId, StandingStage>>> = {
  level: 'site',
  'direct-sun': 'place',
  'running-machine': 'house',
  companion: 'place',
  support: 'place',
};

interface Placed {
  readonly detector: Detector;
  readonly report: DetectorReport;
}

/** One for each rule of a level that was not run, with the detectors that it was not run for. */
function notRunReasons(plan: Plan, placed: readonly Placed[]): readonly StandingReason[] {
  const open = new Map<RuleId, Placed[]>();
  for (const one of placed) {
    for (const rule of new Set(openChecks(one.report).map(({ rule }) => rule))) {
      open.set(rule, [...(open.get(rule) ?? []), one]);
    }
  }
  return [...open].map(([rule, of]): StandingReason => {
    const names = listed(of.map(({ detector }) => detectorLabel(detector)));
    const [line = ''] = of.flatMap(({ report }) =>
      describeNotRun({ ...report, checks: report.checks.filter((check) => check.rule === rule) }, plan),
    );
    const says = `Not run for ${names}: ${line || ruleOf(plan.protocol, rule).name}`;
    const stage = STAGE_OF[rule] ?? 'draw';
    return { standing: 'unknown', stage, says: stopped(says), detectors: of.map(({ detector }) => detector.id) };
  });
}

const stopped = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);
