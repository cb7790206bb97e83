import type { Plan } from '../plan/model.ts';
import { counted, listed } from '../plan/nouns.ts';
import { pointerTo } from './problem.ts';
import { PlanSchema } from './schema/plan.ts';
import { unknownKeys } from './schema/walk.ts';

/** At most this many keys are named in a sentence. */
const MOST_NAMED = 3;

/** At most this many characters of a pointer are shown, from its end, where the key is. */
const LONGEST = 100;

const shownPointer = (pointer: string): string =>
  `"${pointer.length > LONGEST ? `…${pointer.slice(-LONGEST)}` : pointer}"`;

/**
 * Returns a sentence about the keys of a plan that the format does not define: they are kept, but not used. "" if there
 * are none.
 */
export function describeUnknownKeys(plan: Plan): string {
  const pointers = unknownKeys(PlanSchema, plan).map(({ path, key }) => shownPointer(pointerTo([...path, key])));
  if (pointers.length === 0) return '';
  const more = pointers.length - MOST_NAMED;
  const named = listed([...pointers.slice(0, MOST_NAMED), ...(more > 0 ? [`${more} more`] : [])]);
  const [one, is] = pointers.length === 1 ? ['a key', 'It is'] : [counted(pointers.length, 'key'), 'They are'];
  return `The file has ${one} that Stillspot does not know: ${named}. ${is} kept and not used.`;
}
