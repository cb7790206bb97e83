import type { DetectorReport } from '../../../geometry/check/types.ts';
import { describeComputed, describeOpenRules, describeReport, headlineText } from '../../../geometry/messages/index.ts';
import { mergeSentences } from '../../../geometry/messages/merge-sentences.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { Computed } from '../../../geometry/recheck/compare.ts';
import { withAgreedVerdict } from '../../../geometry/recheck/published-report.ts';
import { detectorLabel } from '../detector-label.ts';

/** A placement report with the outcome of the second computation. */
export interface VerifiedReport extends DetectorReport {
  readonly computed: Computed;
  /** Description of the difference between the two computations; undefined if they agree. */
  readonly discrepancy: string | undefined;
}
export interface VerifiedLevel {
  readonly id: string;
  readonly detectors: readonly VerifiedReport[];
}

const ONCE: Computed = { how: 'once', cause: 'it was not asked' };

/**
 * Returns the reports with the verdicts to publish: unknown where the two computations differ.
 * @param computed outcome of the second computation by detector id; a detector that is missing was computed once
 */
export function verifiedLevels(
  plan: Plan,
  levels: readonly { readonly id: string; readonly detectors: readonly DetectorReport[] }[],
  computed: ReadonlyMap<string, Computed>,
): readonly VerifiedLevel[] {
  return levels.map(({ id, detectors }) => ({
    id,
    detectors: detectors.map((report) => {
      const how = computed.get(report.id) ?? ONCE;
      const discrepancy = how.how === 'differs' ? describeComputed(how, plan) : undefined;
      return { ...withAgreedVerdict(report, how), computed: how, discrepancy };
    }),
  }));
}

/** Returns a line for each detector: verdict, reason, and rules not looked for or not run: "A1: clear. Every rule …". */
export function describePlacement(plan: Plan, levels: readonly VerifiedLevel[]): readonly string[] {
  return plan.levels.flatMap((level) =>
    level.detectors.flatMap((detector) => {
      const report = levels.find(({ id }) => id === level.id)?.detectors.find(({ id }) => id === detector.id);
      if (!report) return [];
      const open = describeOpenRules(report, plan);
      const words = [`${headlineText(report)}.`, describeReport(report, plan, level), open].filter(Boolean).join(' ');
      return [`${detectorLabel(detector)}: ${words}`];
    }),
  );
}

/** Returns how the verdicts were computed: each sentence once, with its detectors unless all share it. */
export function describeVerification(plan: Plan, levels: readonly VerifiedLevel[]): readonly string[] {
  const reports = levels.flatMap(({ detectors }) => detectors);
  return mergeSentences(
    plan.levels
      .flatMap(({ detectors }) => detectors)
      .flatMap((detector) => {
        const report = reports.find(({ id }) => id === detector.id);
        return report ? [[detector, [describeComputed(report.computed, plan)]] as const] : [];
      }),
  );
}
