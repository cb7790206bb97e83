import { counted } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { evaluateResults } from '../../protocol/results/evaluate-results.ts';
import { disagreement, isConclusive } from '../../protocol/results/location-report.ts';
import { locationName } from '../../protocol/results/locations.ts';
import { isRetest } from '../../protocol/results/next-steps.ts';
import { amountsInUnit } from '../../protocol/results/radon.ts';
import { homeStep } from '../../protocol/validity/home-step.ts';
import type { TestState } from '../../protocol/validity/validity.ts';
import { STAGE_BUTTON, VALIDITY_TEXT } from '../../protocol/validity/validity.ts';
import { type Hint, WEIGHT } from './hint.ts';

/**
 * Returns hints about the results; none before the pick-up, when there is no result to enter. While the test is not known to be valid, no
 * step is derived from a value.
 */
export function readHints(plan: Plan, state: TestState): readonly Hint[] {
  const open = { kind: 'stage', label: 'Review the results', stage: 'read' } as const;
  if (plan.readings.length === 0) {
    if (plan.visit.end === null) return [];
    return [{ text: 'No result is entered yet.', action: open, missing: true, weight: WEIGHT.result }];
  }
  const [worst] = state.issues;
  if (worst) {
    const { stage } = worst;
    const action = { kind: 'stage', label: STAGE_BUTTON[stage], stage } as const;
    return [{ text: `${VALIDITY_TEXT[state.validity]} ${worst.text}`, action, missing: true, weight: WEIGHT.result }];
  }
  const reports = evaluateResults(plan, state);
  const steps = reports.map((report) => ({
    text: `${locationName(report)}: ${disagreement(report) || amountsInUnit(plan.display.radon, report.next.text)}`,
    missing: !isConclusive(report) || isRetest(report.next.id),
  }));
  const house = homeStep(plan, reports);
  const whole =
    house.step === 'unknown' ? [{ text: amountsInUnit(plan.display.radon, house.text), missing: true }] : [];
  return [...steps, ...whole].map((hint) => ({ ...hint, action: open, weight: WEIGHT.result }));
}

export function readInWords({ readings }: Plan): string {
  return readings.length === 0 ? '' : `${counted(readings.length, 'result')}.`;
}
