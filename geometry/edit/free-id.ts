import type { Plan } from '../plan/model.ts';
import { identifiedItems } from '../planfile/read/valid-parts.ts';

/** Returns the first id with this prefix that is not taken: "w3". */
export function freeId(taken: ReadonlySet<string>, prefix: string): string {
  let number = 1;
  while (taken.has(`${prefix}${number}`)) number += 1;
  return `${prefix}${number}`;
}

/** Returns the first unused id with this prefix in the plan. */
export function nextId(plan: Plan, prefix: string): string {
  return freeId(idsOf(plan), prefix);
}

/** Returns a generator of ids that neither the plan nor an earlier call has. */
export function freshIds(plan: Plan): (prefix: string) => string {
  const taken = idsOf(plan);
  return (prefix) => {
    const id = freeId(taken, prefix);
    taken.add(id);
    return id;
  };
}

const idsOf = (plan: Plan): Set<string> => new Set(identifiedItems(plan).map(({ id }) => id));
