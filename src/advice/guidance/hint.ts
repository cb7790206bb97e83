import type { DetectorReport } from '../../../geometry/check/types.ts';
import type { LevelModel, Notice } from '../../../geometry/level/types.ts';
import type { Detector, Plan, XY } from '../../../geometry/plan/model.ts';
import { levelHeading } from '../../../geometry/plan/nouns.ts';
import type { TestStage } from '../../protocol/validity/validity.ts';
import type { QuestionId } from '../walk-round.ts';

/** A tool that a hint offers. */
export type HintTool = { readonly kind: 'wall' | 'room-box' | 'detector' };

/** What can be done about a hint with one press. Where it names a level, that level comes into view first. */
export type HintAction =
  | { readonly kind: 'tool'; readonly label: string; readonly levelId: string; readonly tool: HintTool }
  | {
      readonly kind: 'show';
      readonly label: string;
      readonly levelId: string;
      readonly ids: readonly string[];
      /** Where to look; null for where the things are. */
      readonly at: XY | null;
    }
  /** Sets a thing that reaches into a wall at its face. */
  | { readonly kind: 'out-of-wall'; readonly label: string; readonly levelId: string; readonly id: string }
  /** Makes one of two walls that lie on one another. */
  | {
      readonly kind: 'one-wall';
      readonly label: string;
      readonly levelId: string;
      readonly ids: readonly [string, string];
    }
  /** Joins two walls that miss one another, or cuts one back to the other. */
  | { readonly kind: 'mend-gap'; readonly label: string; readonly levelId: string; readonly notice: Notice }
  /** A question of the walk round, at its answer "none here" for a rule. */
  | {
      readonly kind: 'question';
      readonly label: string;
      readonly levelId: string;
      readonly question: QuestionId;
      readonly rule: string;
    }
  /** Detectors that are placed in the house may be moved on the plan again. */
  | { readonly kind: 'unlock'; readonly label: string; readonly levelId: string; readonly ids: readonly string[] }
  /** The step after this one with the picture under the level. */
  | {
      readonly kind: 'tracing';
      readonly label: string;
      readonly levelId: string;
      readonly next: 'straighten' | 'lock';
    }
  /** What carries a detector. */
  | { readonly kind: 'support'; readonly label: string; readonly levelId: string; readonly detectorId: string }
  /** Whether people live on a level. */
  | { readonly kind: 'living'; readonly label: string; readonly levelId: string }
  | { readonly kind: 'name-room'; readonly label: string; readonly levelId: string; readonly at: XY }
  | { readonly kind: 'level'; readonly label: string; readonly levelId: string }
  /** Opens a stage of the job. */
  | { readonly kind: 'stage'; readonly label: string; readonly stage: TestStage }
  | { readonly kind: 'field'; readonly label: string; readonly field: 'title' | 'latitude' | 'north' | 'purpose' };

export interface Hint {
  readonly text: string;
  readonly action: HintAction | null;
  /** Missing: the stage is not done without it. A remark may stay. */
  readonly missing: boolean;
  /** Of two hints the one that weighs less comes first: see `WEIGHT`. */
  readonly weight: number;
}

/** By importance: what the whole test depends on, what keeps a verdict from being given, what is wrong, what should only be looked at. */
export const WEIGHT = {
  noLevelToTest: 0,
  notDrawn: 1,
  /** Notices on the drawing, 10 to 18 in their own order. */
  drawing: 10,
  /** What the choice of the level depends on. */
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
  /** After the placing: a test that does not hold, then what is not written down. */
  timeBroken: 26,
  houseBroken: 27,
  time: 36,
  house: 37,
  result: 38,
  sheet: 40,
} as const;

/** A level made ready and its detectors checked. */
export interface CheckedLevel {
  readonly model: LevelModel;
  readonly reports: readonly DetectorReport[];
}

/** A level of the plan with what guidance needs to know of it. */
export interface SeenLevel extends CheckedLevel {
  readonly plan: Plan;
  /** Whether it is the level to test, or one of several. */
  readonly toTest: boolean;
  readonly inView: boolean;
}

/** Returns a text about a level, with the level's name in front where another one is in view. */
export function withLevelName({ model, inView }: SeenLevel, text: string): string {
  return inView ? text : `${levelHeading(model.level)}: ${text}`;
}

export function detectorName(detectors: readonly Detector[], id: string): string {
  return detectors.find((each) => each.id === id)?.label.trim() || 'A detector without a label';
}
