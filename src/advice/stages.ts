import { listed } from '../../geometry/messages/index.ts';
import { TEST_STAGE_NAME, type TestStage } from '../protocol/validity/test-stages.ts';
import type { Hint, HintAction } from './guidance/hint.ts';

/** The stages of a plan: those of its test, then the plan sheet. */
export type Stage = TestStage | 'sheet';

export interface StageState {
  readonly stage: Stage;
  /** What is recorded already, in a few words; empty for nothing. */
  readonly done: string;
  /** The most important first. */
  readonly hints: readonly Hint[];
  /** Whether nothing of it is missing or still to come; a planned or running test is never complete. */
  readonly whole: boolean;
}

/** Names of the stages. */
export const STAGE_NAME: Readonly<Record<Stage, string>> = {
  ...TEST_STAGE_NAME,
  sheet: 'Plan sheet',
};

/** In the order in which they are worked through. */
export const STAGES = Object.keys(STAGE_NAME) as readonly Stage[];

/** Returns the next step on a plan, in words, with its action. It says that nothing is missing only if every stage is complete. */
export function nextStep(stages: readonly StageState[]): { readonly says: string; readonly action: HintAction | null } {
  const missing = stillToDo(stages).find((hint) => hint.missing);
  if (missing) return { says: `Next: ${missing.text}`, action: missing.action };
  const open = stages.filter(({ whole }) => !whole);
  if (open.length === 0) return { says: 'Nothing is missing for the verdict.', action: null };
  const says = `Still to come: ${listed(open.map(({ stage }) => STAGE_NAME[stage]))}.`;
  const action = open[0]?.hints.find((hint) => hint.action)?.action ?? null;
  return { says, action };
}

/** Returns the hints of all stages: missing items before remarks, the most important first. */
export function stillToDo(stages: readonly StageState[]): readonly Hint[] {
  return stages
    .flatMap(({ hints }) => hints)
    .sort((a, b) => Number(b.missing) - Number(a.missing) || a.weight - b.weight);
}
