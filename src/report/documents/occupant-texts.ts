/** Texts of the documents for occupants, who may never have heard of radon. */
import { listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { conditionTexts } from '../../protocol/conditions/condition-texts.ts';
import { conditionsReport } from '../../protocol/conditions/conditions-report.ts';
import { isLongTerm } from '../../protocol/timing/exposure-limits.ts';

/** Checklist items by what the occupant does. Every item with a notice is in exactly one group. */
export const SENTENCE_GROUPS = [
  { id: 'closed', title: 'Keep closed', items: ['windows-closed', 'doors-closed'] },
  {
    id: 'off',
    title: 'Leave off, or turn down',
    items: [
      'whole-house-fan-off',
      'outdoor-air-lowest',
      'air-handler-not-continuous',
      'exhausts-moderate',
      'window-air-conditioner-recirculating',
      'fireplaces-off',
      'room-machines-off',
    ],
  },
  {
    id: 'as-it-is',
    title: 'Leave as it is',
    items: [
      'heating-cooling-normal',
      'mitigation-running',
      'combustion-air-open',
      'heat-recovery-as-usual',
      'attic-fan-as-usual',
    ],
  },
  { id: 'alone', title: 'Leave alone', items: ['not-disturbed'] },
] as const;

export type AskedGroupId = (typeof SENTENCE_GROUPS)[number]['id'];

export interface AskedGroup {
  readonly id: AskedGroupId;
  readonly title: string;
  /** One sentence each. */
  readonly asks: readonly string[];
}

/** Returns the requests to the people in the house, without those that do not apply to the house. */
export function occupantRequests(plan: Plan): readonly AskedGroup[] {
  const asked = conditionsReport(plan).rows.filter(
    ({ state, item }) => state !== 'not-applicable' && conditionTexts(item).notice !== '',
  );
  const grouped = SENTENCE_GROUPS.map(({ id: group, title, items }) => ({
    id: group,
    title,
    asks: [
      ...items.flatMap((id) =>
        asked.filter(({ item }) => item.id === id).map(({ item }) => conditionTexts(item).notice),
      ),
      ...(group === 'closed' ? coveredRequest(plan) : []),
    ],
  }));
  return grouped.filter(({ asks }) => asks.length > 0);
}

/** What ANSI/AARST MAH-2019, Exh. 4, has at the entrance beside windows, doors and the detectors themselves. */
const AT_THE_ENTRANCE = ['heating-cooling-normal', 'outdoor-air-lowest', 'whole-house-fan-off', 'fireplaces-off'];

/** Returns the requests of a notice at the entrance, beside windows and doors; none of a long-term test. */
export function entranceRequests(plan: Plan): readonly string[] {
  const rows = isLongTerm(plan) ? [] : conditionsReport(plan).rows;
  return AT_THE_ENTRANCE.flatMap((id) =>
    rows
      .filter(({ item, state }) => item.id === id && state !== 'not-applicable')
      .map(({ item }) => conditionTexts(item).notice),
  );
}

/** ANSI/AARST MAH-2019, Exh. 4. */
export const CLOSED_HOURS = 'Closed from 12 hours before the detectors are placed until they are picked up.';

/** Common practice, no published source. */
export const SAFE_AND_ALONE: readonly string[] = [
  'Keep pets and small children away from the detectors.',
  'Carbon-monoxide and smoke alarms stay in place and on.',
];

/** A covered window keeps direct sun off a detector only while its cover stays closed. */
function coveredRequest({ levels }: Plan): readonly string[] {
  const covered = levels.flatMap(({ name, openings }) =>
    openings.some(({ shade }) => shade === 'covered') ? [name.trim() || 'the level that is tested'] : [],
  );
  if (covered.length === 0) return [];
  return [`Keep the curtains and blinds that are closed now closed, day and night: ${listed(covered)}.`];
}

/** On the health effect: WHO Handbook on Indoor Radon, 2009 (from memory, unverified). */
export const WHAT_IT_IS =
  'Radon is a gas from the ground. You cannot see or smell it. Breathing it for years can cause lung cancer, so the air in this house is measured.';

const WHY_CLOSED =
  'The test is valid only while the house stays closed. Outdoor air dilutes the gas, and the result reads lower than it is.';

/** Safety comes before closed-building conditions: ANSI/AARST MAH-2019, 6.1.3 (read in part). */
export const SAFETY =
  'Fire, a smell of gas, someone ill: safety comes first. Open what you must, get out, call for help.';

/** The same for a test that a tester carries out. */
export const SAFETY_FIRST = `${SAFETY} Tell the tester later.`;

/** Returns why the building is kept closed; for a long-term test, that occupants are to live as usual. */
export const whyClosed = (plan: Plan): string =>
  isLongTerm(plan)
    ? 'The test measures the air as you live in it: live as usual, and leave the detectors alone.'
    : WHY_CLOSED;

const IF_OPENED =
  'A window or door was open, a fan or a fire was on: correct it at once, and write down what it was, when, and for how long.';

/** Returns what occupants do about a deviation. */
export const deviationInstructions = (plan: Plan): readonly string[] =>
  isLongTerm(plan) ? IF_TOUCHED : [IF_OPENED, ...IF_TOUCHED];

const IF_TOUCHED: readonly string[] = [
  'A detector fell or was moved: leave it where it is and call the tester.',
  'Report it to the tester promptly: the test may have to be repeated.',
];
