import { counted } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { agreementOf, agreementState } from '../../protocol/conditions/agreement.ts';
import { lacksObserverOrTime } from '../../protocol/conditions/condition-row.ts';
import {
  conditionsReport,
  describeEarlyAnswers,
  describeUnknown,
  namedItems,
} from '../../protocol/conditions/conditions-report.ts';
import { type Hint, type SeenLevel, WEIGHT } from './hint.ts';
import { hasDetectors } from './time.ts';

/** Returns hints about house conditions that are broken, not answered, or lack observer or time; and about the agreement. */
export function houseHints(plan: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  const { rows, validity } = conditionsReport(plan);
  const open = { kind: 'stage', label: 'Review the house', stage: 'house' } as const;
  const hints: Hint[] = [];
  const broken = rows.filter(({ effect }) => effect !== null);
  if (broken.length > 0) {
    const so =
      validity === 'not-evaluated'
        ? 'The test is invalid.'
        : 'A certified or licensed professional decides whether the result may be used.';
    hints.push({
      text: `Deviation: ${namedItems(broken)}. ${so}`,
      action: open,
      missing: true,
      weight: WEIGHT.houseBroken,
    });
  }
  if (!hasDetectors(levels)) return hints;
  const started = plan.visit.start !== null;
  const asked = rows.filter(({ state }) => state === 'unknown');
  const remark = (text: string, missing = false) => hints.push({ text, action: open, missing, weight: WEIGHT.house });
  // Once one condition is answered, or the test has started, the others are missing.
  const begun = started || asked.length < rows.length;
  if (asked.length > 0) remark(describeUnknown(asked, 'condition of the house', 'conditions of the house'), begun);
  const unsigned = rows.filter(lacksObserverOrTime).length;
  if (unsigned > 0) remark(`${counted(unsigned, 'answer')} about the house without a name or a time.`);
  if (!started) return hints;
  const early = describeEarlyAnswers(rows.filter((row) => row.beforePickUp).length);
  if (early) remark(early);
  if (agreementState(agreementOf(plan)) === 'open') remark('The non-interference agreement is not signed yet.');
  return hints;
}

/** Returns the number of answered items, in a few words; empty for none. */
export function houseInWords(plan: Plan): string {
  const { rows, validity } = conditionsReport(plan);
  const answered = rows.filter(({ state }) => state !== 'unknown').length;
  if (answered === 0) return '';
  const count = `${answered} of ${rows.length} conditions answered`;
  return validity === 'not-evaluated' ? `${count}, invalid.` : `${count}.`;
}
