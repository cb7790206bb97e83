import { CAUTIONS, headlineOf } from '../../geometry/messages/index.ts';
import { describeSources } from '../../geometry/messages/sources.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { notRecorded } from '../protocol/required-items/not-recorded.ts';
import { describeLocation, locationJson, RESULT_CAUTIONS } from '../protocol/results/describe-location.ts';
import { evaluateResults } from '../protocol/results/evaluate-results.ts';
import { isConclusive, type LocationReport } from '../protocol/results/location-report.ts';
import { locationName } from '../protocol/results/locations.ts';
import { NEXT_STEP_SOURCES } from '../protocol/results/next-step-sources.ts';
import { amountsInUnit } from '../protocol/results/radon.ts';
import { describeIssuesToFix } from '../protocol/validity/headline.ts';
import { headlineSentence } from '../protocol/validity/headline-sentence.ts';
import { type HomeStep, homeStep } from '../protocol/validity/home-step.ts';
import { testState } from '../protocol/validity/test-state.ts';
import { issueText, type TestState } from '../protocol/validity/validity.ts';
import {
  describePlacement,
  describeVerification,
  type VerifiedLevel,
} from '../protocol/validity/verified-placement.ts';
import type { CliCommand } from './call.ts';
import { verificationJson } from './computed-json.ts';
import { verifiedPlacement } from './verified-placement.ts';

/** `readings FILE`: the results by location, the validity of the test, the agreement of pairs, and the next step. */
export const readings: CliCommand = {
  name: 'readings',
  synopsis: 'FILE',
  summary: 'the results by location, whether the test is valid, whether pairs agree, and what comes next',
  options: [],
  run: ({ plan, json }) => {
    const placement = verifiedPlacement(plan);
    const state = testState(plan, placement);
    const sets = evaluateResults(plan, state);
    const house = homeStep(plan, sets);
    const document = {
      sets: sets.map(locationJson),
      test: state.validity,
      reasons: state.issues.map(issueText),
      notes: state.notes,
      placement: placementAsJson(placement),
      house: house.step,
      houseStep: house.text,
      cautions: [...RESULT_CAUTIONS, ...CAUTIONS],
    };
    const text = json ? `${JSON.stringify(document, null, 2)}\n` : asText(plan, sets, state, house, placement);
    const holds = state.validity === 'holds' && house.step !== 'unknown' && sets.every(isConclusive);
    return { text, code: holds ? 0 : 1 };
  },
};

function stepSources({ next }: LocationReport): string[] {
  const { sources } = NEXT_STEP_SOURCES[next.id];
  return sources.length > 0 ? [`  Source: ${describeSources(sources)}`] : [];
}

/** Returns the placement of each detector: verdict, how it was computed, rules that were not run. */
const placementAsJson = (levels: readonly VerifiedLevel[]) =>
  levels.flatMap(({ detectors }) =>
    detectors.map(({ computed, ...report }) => ({
      detector: report.id,
      verdict: report.verdict,
      ...verificationJson(computed),
      open: headlineOf(report).open,
    })),
  );

function asText(
  plan: Plan,
  sets: readonly LocationReport[],
  state: TestState,
  house: HomeStep,
  placement: readonly VerifiedLevel[],
): string {
  const lines = sets.flatMap((report) => [
    locationName(report),
    ...describeLocation(plan, report).map((line) => `  ${line}`),
    ...stepSources(report),
    '',
  ]);
  const { named } = notRecorded(plan);
  const gaps = state.validity === 'holds' && named ? [named] : [];
  return `${[
    plan.title || 'Plan without a title',
    '',
    headlineSentence(plan, state),
    ...[...describeIssuesToFix(plan, state), ...gaps].map((words) => `  ${words}`),
    '',
    'Where the detectors are',
    ...[...describePlacement(plan, placement), ...describeVerification(plan, placement)].map((words) => `  ${words}`),
    '',
    ...lines,
    `The house: ${amountsInUnit(plan.display.radon, house.text)}`,
    '',
    ...RESULT_CAUTIONS,
    ...CAUTIONS,
  ].join('\n')}\n`;
}
