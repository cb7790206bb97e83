import type { Plan } from '../../../geometry/plan/model.ts';
import { notRecorded } from '../../protocol/required-items/not-recorded.ts';

/** How much of what published lists require of the report is not recorded, beside the state of a valid test. */
export function NotRecorded({ plan, brief = false }: { readonly plan: Plan; readonly brief?: boolean }) {
  const words = notRecorded(plan);
  return brief ? words.brief : words.short && `${words.short} `;
}
