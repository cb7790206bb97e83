import { counted } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { lowerFirst } from '../../../geometry/plan/nouns.ts';
import { fewNames } from '../custody/missing-records.ts';
import { type ItemReport, requiredItems } from './item-states.ts';
import type { RequiredItemId } from './items.ts';

/** Required items that are not recorded, as text. A test is valid without them, but its report is not complete. */
export interface NotRecorded {
  /** "16 required items are not recorded."; empty for none. */
  readonly short: string;
  /** "16 items not recorded", for a small page; empty for none. */
  readonly brief: string;
  /** "Not recorded: …": the first items by name, who requires them, and the consequence of a missing serial number; empty for none. */
  readonly named: string;
}

/** Items that tie a result to its device and to people are named first, the others in the order of the report. */
const FIRST: readonly RequiredItemId[] = ['serial-numbers', 'placed-by', 'picked-up-by', 'device', 'weather'];
const MOST_NAMED = 3;

/** Returns the required items of the report of a plan that are not recorded, as text. */
export function notRecorded(plan: Plan, items: readonly ItemReport[] = requiredItems(plan)): NotRecorded {
  const missing = items.filter(({ state }) => state === 'missing').toSorted((a, b) => rank(a) - rank(b));
  if (missing.length === 0) return { short: '', brief: '', named: '' };
  const verb = missing.length === 1 ? 'is' : 'are';
  const named = missing.slice(0, MOST_NAMED).map(({ item }) => lowerFirst(item.name));
  const rest = missing.length - named.length;
  const names = [...named, ...(rest > 0 ? [`and ${rest} more`] : [])].join('; ');
  return {
    short: `${counted(missing.length, 'required item')} ${verb} not recorded.`,
    brief: `${counted(missing.length, 'item')} not recorded`,
    named: `Not recorded: ${names}. Published lists require ${missing.length === 1 ? 'it' : 'them'} of the report.${withoutSerial(plan, missing)}`,
  };
}

const rank = ({ item: { id } }: ItemReport): number => {
  const at = FIRST.indexOf(id);
  return at < 0 ? FIRST.length : at;
};

function withoutSerial({ levels }: Plan, missing: readonly ItemReport[]): string {
  const serials = missing.find(({ item }) => item.id === 'serial-numbers');
  return serials && levels.some(({ detectors }) => detectors.length > 0)
    ? ` Without its serial number a result cannot be tied to a device: ${fewNames(serials.lacking)}.`
    : '';
}
