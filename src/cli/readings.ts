import { CAUTIONS, type Plan } from '../../geometry/index.ts';
import { sourceWords } from '../../geometry/words/sources.ts';
import { judgeReadings, type SetReport } from '../job/readings/judge.ts';
import { NEXT_STEP_SOURCES } from '../job/readings/next-step-sources.ts';
import { saidIn } from '../job/readings/radon.ts';
import { describeSet, RESULT_CAUTIONS, setDocument } from '../job/readings/report.ts';
import { setName } from '../job/readings/set-name.ts';
import { isSettled } from '../job/readings/settled.ts';
import { type HouseStep, houseStep } from '../job/standing/house-step.ts';
import { testState } from '../job/standing/test-state.ts';
import { reasonText, STANDING_HEAD, STANDING_WORDS, type TestState } from '../job/standing/types.ts';
import type { Command } from './call.ts';

/** `readings FILE`: the results by location, whether the test holds, whether pairs agree, and what comes next. */
export const readings: Command = {
  name: 'readings',
  form: 'FILE',
  does: 'the results by location, whether the test holds, whether pairs agree, and what comes next',
  options: [],
  run: ({ plan, json }) => {
    const state = testState(plan);
    const sets = judgeReadings(plan, state);
    const house = houseStep(plan, sets);
    const document = {
      sets: sets.map(setDocument),
      test: state.test,
      reasons: state.reasons.map(reasonText),
      notes: state.notes,
      house: house.step,
      houseStep: house.says,
      cautions: [...RESULT_CAUTIONS, ...CAUTIONS],
    };
    const text = json ? `${JSON.stringify(document, null, 2)}\n` : asText(plan, sets, state, house);
    const holds = state.test === 'holds' && house.step !== 'unknown' && sets.every(isSettled);
    return { text, code: holds ? 0 : 1 };
  },
};

function stepSources({ next }: SetReport): string[] {
  const { sources } = NEXT_STEP_SOURCES[next.id];
  return sources.length > 0 ? [`  Source: ${sourceWords(sources)}`] : [];
}

function asText(plan: Plan, sets: readonly SetReport[], state: TestState, house: HouseStep): string {
  const why = state.reasons.map((reason) => `  ${reasonText(reason)}`);
  const doubt = STANDING_WORDS[state.test] ? [STANDING_WORDS[state.test]] : [];
  const lines = sets.flatMap((report) => [
    setName(report),
    ...describeSet(plan, report).map((line) => `  ${line}`),
    ...stepSources(report),
    '',
  ]);
  return `${[
    plan.title || 'Plan without a title',
    '',
    `The test: ${STANDING_HEAD[state.test].toLowerCase()}.`,
    ...doubt,
    ...why,
    ...state.notes.map((note) => `  ${note}`),
    '',
    ...lines,
    `The house: ${saidIn(plan.display.radon, house.says)}`,
    '',
    ...RESULT_CAUTIONS,
    ...CAUTIONS,
  ].join('\n')}\n`;
}
