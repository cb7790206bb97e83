import { levelBar } from '../../geometry/check/level.ts';
import { openChecks } from '../../geometry/check/looked-for.ts';
import { capital, PURPOSE_PHRASE } from '../../geometry/messages/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { lacksObserverOrTime } from '../protocol/conditions/condition-row.ts';
import { conditionsReport } from '../protocol/conditions/conditions-report.ts';
import { missingRecords } from '../protocol/custody/missing-records.ts';
import { asKnownAt } from '../protocol/timing/ahead.ts';
import type { Ms } from '../protocol/timing/clock.ts';
import type { TestState } from '../protocol/validity/validity.ts';
import { drawHints, drawnInWords } from './guidance/draw.ts';
import type { CheckedLevel, Hint, SeenLevel } from './guidance/hint.ts';
import { houseHints, houseInWords } from './guidance/house.ts';
import { logHints, logInWords } from './guidance/log.ts';
import { placedInWords, placeHints } from './guidance/place.ts';
import { readHints, readInWords } from './guidance/read.ts';
import { sheetHints } from './guidance/sheet.ts';
import { siteHints } from './guidance/site.ts';
import { areTimesWhole, timedInWords, timeHints } from './guidance/time.ts';
import type { Stage, StageState } from './stages.ts';
import { looksOf } from './walk-round.ts';

/**
 * Returns what is done and what is missing in each stage, over all levels of the plan, in the order of the stages.
 * @param levels lowest first
 * @param test state of the test of this plan
 * @param now ms: decides what is overdue, planned or running; left out, all recorded events have happened and nothing is overdue
 */
export function guidance(
  recorded: Plan,
  levels: readonly CheckedLevel[],
  test: TestState,
  inViewId: string,
  now: Ms = Number.POSITIVE_INFINITY,
): readonly StageState[] {
  const plan = asKnownAt(recorded, now);
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
  const purpose = plan.site.purposeAnswered === false ? '' : `${capital(PURPOSE_PHRASE[plan.site.purpose])}.`;
  const stage = (name: Stage, done: string, hints: readonly Hint[], whole = true): StageState => {
    return { stage: name, done, hints, whole: whole && done !== '' && !hints.some(({ missing }) => missing) };
  };
  return [
    stage('site', purpose, siteHints(plan, seen)),
    stage('draw', drawnInWords(seen), drawHints(plan, seen), seen.every(isWalkWhole)),
    stage('place', placedInWords(seen), placeHints(plan, seen), seen.every(isAllRun)),
    stage('time', timedInWords(plan, now), timeHints(plan, seen, now), areTimesWhole(plan)),
    stage('house', houseInWords(plan), houseHints(plan, seen), isHouseWhole(plan)),
    stage('log', logInWords(plan), logHints(plan, seen), missingRecords(plan).length === 0),
    stage('read', readInWords(plan), readHints(plan, test)),
    stage('sheet', sheet.length === 0 ? 'Ready to be saved as a picture.' : '', sheet),
  ];
}

/** Returns whether every condition is met, with its observer and time. */
function isHouseWhole(plan: Plan): boolean {
  const { validity, rows } = conditionsReport(plan);
  return validity === 'holds' && !rows.some(lacksObserverOrTime);
}

/** Returns whether all subjects of the profile, direct sun too, were looked for; true for a level that is not to be tested and has no detector. */
const isWalkWhole = ({ plan, model, reports, toTest }: SeenLevel): boolean =>
  (!toTest && model.level.detectors.length === 0) ||
  !looksOf(plan, model, reports).some(({ state }) => state === 'open');

const isAllRun = ({ reports }: SeenLevel): boolean => reports.every((report) => openChecks(report).length === 0);
