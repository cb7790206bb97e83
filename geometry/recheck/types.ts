import type { Mm } from '../plan/model.ts';

/** From best to worst: clear, tight, unknown, blocked. */
const VERDICTS = ['clear', 'tight', 'unknown', 'blocked'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** One rule checked against one subject. Lengths in mm. The first computation's rows have these keys and others. */
export interface Row {
  readonly rule: string;
  readonly subject: string | null;
  readonly measured: Mm | null;
  readonly required: Mm | null;
  readonly verdict: Verdict;
  readonly notRun: boolean;
}
export interface DetectorOpinion {
  readonly id: string;
  readonly verdict: Verdict;
  readonly checks: readonly Row[];
}
interface LevelOpinion {
  readonly id: string;
  readonly detectors: readonly DetectorOpinion[];
}
/** The result of one computation for a plan. */
export interface Opinion {
  readonly levels: readonly LevelOpinion[];
}

export const worst = (verdicts: readonly Verdict[]): Verdict =>
  VERDICTS[Math.max(0, ...verdicts.map((one) => VERDICTS.indexOf(one)))] as Verdict;
