import { describeOpenRules, describeReport, headlineText } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { conditionsReport } from '../../protocol/conditions/conditions-report.ts';
import { evaluateResults } from '../../protocol/results/evaluate-results.ts';
import { locationName } from '../../protocol/results/locations.ts';
import { amountsInUnit } from '../../protocol/results/radon.ts';
import { asKnownAt } from '../../protocol/timing/ahead.ts';
import { TIMING_NAME } from '../../protocol/timing/timing-check.ts';
import { timingChecks } from '../../protocol/timing/timing-checks.ts';
import { selectLevel, selectShownPlan } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { testStateOf } from '../../state/test-state.ts';
import { WHOLE } from '../stages/house/state-words.ts';

/** Sentences by their subject. */
export type Verdicts = ReadonlyMap<string, string>;

/** A detector's verdict in words. */
interface SpokenVerdict {
  /** "A1: blocked." */
  readonly head: string;
  /** The deciding check, with its distance. */
  readonly why: string;
  /** The rules that were not run. */
  readonly open: string;
}
export type DetectorVerdicts = ReadonlyMap<string, SpokenVerdict>;

/** Returns the verdict of each detector of the level in view, by its id. */
export function detectorVerdicts(): DetectorVerdicts {
  const state = useAppStore.getState();
  const plan = selectShownPlan(state);
  const level = selectLevel(state);
  return new Map(
    shownReports(state).map((report) => {
      const label = level.detectors.find(({ id }) => id === report.id)?.label || 'Detector';
      const head = `${label}: ${headlineText(report)}.`;
      return [report.id, { head, why: describeReport(report, plan, level), open: describeOpenRules(report, plan) }];
    }),
  );
}

/** Returns the sentences of new and changed verdicts. If only the reason has changed, the rules that were not run are left out. */
export function detectorNews(before: DetectorVerdicts, now: DetectorVerdicts): readonly string[] {
  return [...now].flatMap(([id, { head, why, open }]) => {
    const was = before.get(id);
    if (was?.head === head) return was.why === why ? [] : `${head} ${why}`.trim();
    return `${head} ${why} ${open}`.trim();
  });
}

/** Returns the verdicts on times, house and results of a plan at rest, and on the whole test. */
export function testVerdicts(recorded: Plan): Verdicts {
  const plan = asKnownAt(recorded, Date.now());
  if (plan.levels.every(({ detectors }) => detectors.length === 0)) return new Map();
  const { validity, text } = conditionsReport(plan);
  const radon = (sentence: string) => amountsInUnit(plan.display.radon, sentence);
  const results = plan.readings.length > 0 ? evaluateResults(plan, testStateOf(recorded)) : [];
  return new Map([
    ...timingChecks(plan)
      .filter(({ verdict }) => verdict !== 'not-run')
      .map(({ rule, verdict, detail }) => [rule, `${TIMING_NAME[rule]}: ${verdict}. ${detail}`] as const),
    ['house', `The house: ${WHOLE[validity].word.toLowerCase()}. ${text}`],
    ...results.map(
      (report) => [`result ${locationName(report)}`, `${locationName(report)}: ${radon(report.next.text)}`] as const,
    ),
  ]);
}

/** Returns the new and changed sentences. */
export const testNews = (before: Verdicts, now: Verdicts): readonly string[] =>
  [...now].filter(([key, sentence]) => before.get(key) !== sentence).map(([, sentence]) => sentence);
