import type { DetectorReport } from '../../../geometry/check/types.ts';
import type { LevelModel, Notice } from '../../../geometry/level/types.ts';
import type { Detector, Plan, XY } from '../../../geometry/plan/model.ts';
import { levelHeading } from '../../../geometry/plan/nouns.ts';
import type { TestStage } from '../../protocol/validity/test-stages.ts';
import type { QuestionId } from '../walk-round.ts';

/** A tool that a hint offers. */
export type HintTool = { readonly kind: 'wall' | 'room-box' | 'detector' };

/** A field of a selected thing: the height of its top, or the thickness of a wall. */
export type ItemField = 'top' | 'thickness';

/** What can be done about a hint with one press. If it names a level, that level is shown first. */
export type HintAction =
  | { readonly kind: 'tool'; readonly label: string; readonly levelId: string; readonly tool: HintTool }
  | {
      readonly kind: 'show';
      readonly label: string;
      readonly levelId: string;
      readonly ids: readonly string[];
      /** The point to show; null for the place of the things. */
      readonly at: XY | null;
      /** The field of the thing that the label asks for. */
      readonly field?: ItemField;
    }
  /** Moves a thing that reaches into a wall to the face of the wall. */
  | { readonly kind: 'out-of-wall'; readonly label: string; readonly levelId: string; readonly id: string }
  /** Merges two walls that overlap. */
  | {
      readonly kind: 'one-wall';
      readonly label: string;
      readonly levelId: string;
      readonly ids: readonly [string, string];
    }
  /** Joins two walls with a gap between them, or cuts one back to the other. */
  | { readonly kind: 'mend-gap'; readonly label: string; readonly levelId: string; readonly notice: Notice }
  /** Opens a question of the walk at its answer "none here" for a rule. */
  | {
      readonly kind: 'question';
      readonly label: string;
      readonly levelId: string;
      readonly question: QuestionId;
      readonly rule: string;
    }
  /** Unlocks detectors that are recorded as placed, so that they can be moved on the plan. */
  | { readonly kind: 'unlock'; readonly label: string; readonly levelId: string; readonly ids: readonly string[] }
  /** The next step with the picture that the level is traced from. */
  | {
      readonly kind: 'tracing';
      readonly label: string;
      readonly levelId: string;
      readonly next: 'straighten' | 'lock';
    }
  /** Asks what carries a detector. */
  | { readonly kind: 'support'; readonly label: string; readonly levelId: string; readonly detectorId: string }
  /** Asks whether people live on a level. */
  | { readonly kind: 'living'; readonly label: string; readonly levelId: string }
  | { readonly kind: 'name-room'; readonly label: string; readonly levelId: string; readonly at: XY }
  | { readonly kind: 'level'; readonly label: string; readonly levelId: string }
  /** Opens a stage of the job. */
  | { readonly kind: 'stage'; readonly label: string; readonly stage: TestStage }
  | { readonly kind: 'field'; readonly label: string; readonly field: 'title' | 'latitude' | 'north' | 'purpose' };

export interface Hint {
  readonly text: string;
  readonly action: HintAction | null;
  /** Whether the stage is incomplete without it; a hint that is not missing is a remark. */
  readonly missing: boolean;
  /** Sort key, lower first: see `WEIGHT`. */
  readonly weight: number;
}

/** By importance: conditions of the whole test, causes that prevent a verdict, errors, remarks. */
export const WEIGHT = {
  noLevelToTest: 0,
  notDrawn: 1,
  /** Notices on the drawing, 10 to 18 in their own order. */
  drawing: 10,
  /** Answers that the choice of the level depends on. */
  asked: 19,
  noDetector: 20,
  blocked: 21,
  unknown: 22,
  alone: 23,
  label: 24,
  tight: 25,
  lookedFor: 28,
  support: 29,
  notOnGround: 30,
  place: 31,
  inWall: 31,
  thickness: 31,
  notRun: 32,
  loosened: 33,
  title: 34,
  /** After the placement: a test that is not valid, then missing records. */
  timeBroken: 26,
  houseBroken: 27,
  time: 36,
  house: 37,
  result: 38,
  sheet: 40,
} as const;

/** A level model with the reports of its detectors. */
export interface CheckedLevel {
  readonly model: LevelModel;
  readonly reports: readonly DetectorReport[];
}

/** A checked level with the facts that guidance needs. */
export interface SeenLevel extends CheckedLevel {
  readonly plan: Plan;
  /** Whether it is the level to test, or one of several. */
  readonly toTest: boolean;
  readonly inView: boolean;
}

/** Returns a text about a level, with the name of the level in front if another one is in view. */
export function withLevelName({ model, inView }: SeenLevel, text: string): string {
  return inView ? text : `${levelHeading(model.level)}: ${text}`;
}

export function detectorName(detectors: readonly Detector[], id: string): string {
  return detectors.find((each) => each.id === id)?.label.trim() || 'A detector without a label';
}
