import { CAUTIONS, headlineOf } from '../../geometry/messages/index.ts';
import { sourceWords } from '../../geometry/messages/sources.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { describeLocation, locationJson, RESULT_CAUTIONS } from '../protocol/results/describe-location.ts';
import { evaluateResults } from '../protocol/results/evaluate-results.ts';
import type { LocationReport } from '../protocol/results/location-report.ts';
import { isConclusive } from '../protocol/results/location-report.ts';
import { locationName } from '../protocol/results/locations.ts';
import { NEXT_STEP_SOURCES } from '../protocol/results/next-step-sources.ts';
import { amountsInUnit } from '../protocol/results/radon.ts';
import { type HouseStep, houseStep } from '../protocol/standing/house-step.ts';
import { type ComputedLevel, computedWords, placementWords } from '../protocol/standing/placed.ts';
import { testState } from '../protocol/standing/test-state.ts';
import { testCauses, testLead } from '../protocol/standing/told.ts';
import { reasonText, type TestState } from '../protocol/standing/types.ts';
import type { Command } from './call.ts';
import { checkedTwice } from './checked-twice.ts';
import { computedAsJson } from './computed-json.ts';

/** `readings FILE`: the results by location, whether the test holds, whether pairs agree, and what comes next. */
export const readings: Command = {
  name: 'readings',
  form: 'FILE',
  does: 'the results by location, whether the test holds, whether pairs agree, and what comes next',
  options: [],
  run: ({ plan, json }) => {
    const placement = checkedTwice(plan);
    const state = testState(plan, placement);
    const sets = evaluateResults(plan, state);
    const house = houseStep(plan, sets);
    const document = {
      sets: sets.map(locationJson),
      test: state.test,
      reasons: state.reasons.map(reasonText),
      notes: state.notes,
      placement: placementAsJson(placement),
      house: house.step,
      houseStep: house.says,
      cautions: [...RESULT_CAUTIONS, ...CAUTIONS],
    };
    const text = json ? `${JSON.stringify(document, null, 2)}\n` : asText(plan, sets, state, house, placement);
    const holds = state.test === 'holds' && house.step !== 'unknown' && sets.every(isConclusive);
    return { text, code: holds ? 0 : 1 };
  },
};

function stepSources({ next }: LocationReport): string[] {
  const { sources } = NEXT_STEP_SOURCES[next.id];
  return sources.length > 0 ? [`  Source: ${sourceWords(sources)}`] : [];
}

/** Where each detector stands, as far as its result rests on it: the verdict, how it was come by, and what was not run. */
const placementAsJson = (levels: readonly ComputedLevel[]) =>
  levels.flatMap(({ detectors }) =>
    detectors.map(({ computed, ...report }) => ({
      detector: report.id,
      verdict: report.verdict,
      ...computedAsJson(computed),
      open: headlineOf(report).open,
    })),
  );

function asText(
  plan: Plan,
  sets: readonly LocationReport[],
  state: TestState,
  house: HouseStep,
  placement: readonly ComputedLevel[],
): string {
  const lines = sets.flatMap((report) => [
    locationName(report),
    ...describeLocation(plan, report).map((line) => `  ${line}`),
    ...stepSources(report),
    '',
  ]);
  return `${[
    plan.title || 'Plan without a title',
    '',
    testLead(plan, state),
    ...testCauses(plan, state).map((words) => `  ${words}`),
    '',
    'Where they stand',
    ...[...placementWords(plan, placement), ...computedWords(plan, placement)].map((words) => `  ${words}`),
    '',
    ...lines,
    `The house: ${amountsInUnit(plan.display.radon, house.says)}`,
    '',
    ...RESULT_CAUTIONS,
    ...CAUTIONS,
  ].join('\n')}\n`;
}
