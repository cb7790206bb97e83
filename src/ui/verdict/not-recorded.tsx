import type { Plan } from '../../../geometry/plan/model.ts';
import { notRecorded } from '../../protocol/required-items/not-recorded.ts';

/** How much of what published lists require of the report is not recorded, beside the state of a valid test. */
export function NotRecorded({ plan }: { readonly plan: Plan }) {
  const { short } = notRecorded(plan);
  return short && `${short} `;
}
