import type { Plan } from '../../geometry/plan/model.ts';
import { capital, PURPOSE_PHRASE } from '../../geometry/words.ts';
import { levelBar } from '../engine.ts';
import type { Ms } from '../job/timing/clock.ts';
import { drawHints, drawnInWords } from './guidance/draw.ts';
import type { Hint, SeenLevel } from './guidance/hint.ts';
import { houseHints, houseInWords } from './guidance/house.ts';
import { logHints, logInWords } from './guidance/log.ts';
import { placedInWords, placeHints } from './guidance/place.ts';
import { readHints, readInWords } from './guidance/read.ts';
import { sheetHints } from './guidance/sheet.ts';
import { siteHints } from './guidance/site.ts';
import { isFetched, timedInWords, timeHints } from './guidance/time.ts';
import type { JudgedLevel } from './selectors.ts';

export type { Hint, HintAct } from './guidance/hint.ts';

/** The stages of a job that this version works on, in their order. */
const STAGES = ['site', 'draw', 'place', 'time', 'house', 'log', 'read', 'sheet'] as const;
export type Stage = (typeof STAGES)[number];

export interface StageState {
  readonly stage: Stage;
  /** What is there already; empty for nothing. */
  readonly done: string;
  /** Whether its time has come and gone: what is planned, or still under way, is never done. */
  readonly finished: boolean;
  /** The most important first. */
  readonly hints: readonly Hint[];
}

/**
 * For each stage what is done and what is missing, over all levels of the plan, in the order in which it matters.
 * @param now what is overdue, or not over yet, is told by it
 */
export function guidance(
  plan: Plan,
  levels: readonly JudgedLevel[],
  inViewId: string,
  now: Ms = Number.NEGATIVE_INFINITY,
): readonly StageState[] {
  const seen = levels.map(
    ({ model, reports }): SeenLevel => ({
      plan,
      model,
      reports,
      toTest: levelBar(plan, model.level) === '',
      inView: model.level.id === inViewId,
    }),
  );
  const sheet = sheetHints(seen);
  const stages: readonly Omit<StageState, 'finished'>[] = [
    { stage: 'site', done: `${capital(PURPOSE_PHRASE[plan.site.purpose])}.`, hints: siteHints(plan, seen) },
    { stage: 'draw', done: drawnInWords(seen), hints: drawHints(plan, seen) },
    { stage: 'place', done: placedInWords(seen), hints: placeHints(plan, seen) },
    { stage: 'time', done: timedInWords(plan), hints: timeHints(plan, seen, now) },
    { stage: 'house', done: houseInWords(plan), hints: houseHints(plan, seen) },
    { stage: 'log', done: logInWords(plan), hints: logHints(plan, seen) },
    { stage: 'read', done: readInWords(plan), hints: readHints(plan) },
    { stage: 'sheet', done: sheet.length === 0 ? 'Ready to be saved as a picture.' : '', hints: sheet },
  ];
  return stages.map((each) => ({ ...each, finished: each.stage !== 'time' || isFetched(plan, now) }));
}

/** All hints of all stages: what is missing before what is only remarked, and of each the one that matters most first. */
export function stillToDo(stages: readonly StageState[]): readonly Hint[] {
  return stages
    .flatMap(({ hints }) => hints)
    .sort((a, b) => Number(b.missing) - Number(a.missing) || a.weight - b.weight);
}
