import type { Plan } from '../../../geometry/plan/model.ts';
import { notRecorded } from '../../protocol/required-items/not-recorded.ts';

/** The number of unrecorded items that published lists require of the report, beside the state of a valid test. */
export function NotRecorded({ plan, brief = false }: { readonly plan: Plan; readonly brief?: boolean }) {
  const words = notRecorded(plan);
  return brief ? words.brief : words.short && `${words.short} `;
}
