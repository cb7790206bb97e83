import { CAUTIONS, headlineOf } from '../../geometry/messages/index.ts';
import { sourceWords } from '../../geometry/messages/sources.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { judgeReadings } from '../protocol/results/judge.ts';
import { NEXT_STEP_SOURCES } from '../protocol/results/next-step-sources.ts';
import { saidIn } from '../protocol/results/radon.ts';
import { describeSet, RESULT_CAUTIONS, setDocument } from '../protocol/results/report.ts';
import { setName } from '../protocol/results/set-name.ts';
import { isSettled } from '../protocol/results/settled.ts';
import type { SetReport } from '../protocol/results/types.ts';
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
    const sets = judgeReadings(plan, state);
    const house = houseStep(plan, sets);
    const document = {
      sets: sets.map(setDocument),
      test: state.test,
      reasons: state.reasons.map(reasonText),
      notes: state.notes,
      placement: placementAsJson(placement),
      house: house.step,
      houseStep: house.says,
      cautions: [...RESULT_CAUTIONS, ...CAUTIONS],
    };
    const text = json ? `${JSON.stringify(document, null, 2)}\n` : asText(plan, sets, state, house, placement);
    const holds = state.test === 'holds' && house.step !== 'unknown' && sets.every(isSettled);
    return { text, code: holds ? 0 : 1 };
  },
};

function stepSources({ next }: SetReport): string[] {
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
  sets: readonly SetReport[],
  state: TestState,
  house: HouseStep,
  placement: readonly ComputedLevel[],
): string {
  const lines = sets.flatMap((report) => [
    setName(report),
    ...describeSet(plan, report).map((line) => `  ${line}`),
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
    `The house: ${saidIn(plan.display.radon, house.says)}`,
    '',
    ...RESULT_CAUTIONS,
    ...CAUTIONS,
  ].join('\n')}\n`;
}
