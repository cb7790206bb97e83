import { counted, listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { Condition } from '../../../geometry/plan/test-record.ts';
import type { Source } from '../../../geometry/rules/types.ts';
import { ILLINOIS_COPY, MAH, source } from '../sources.ts';
import { msOf } from '../timing/clock.ts';
import { isLongTerm } from '../timing/exposure-limits.ts';
import { formatInstant } from '../timing/format-time.ts';
import { CLOSED_BEFORE, limitWords } from '../timing/limits.ts';
import { hasMitigation } from '../timing/mitigation.ts';
import { AIR_ITEMS } from './air-items.ts';
import type { ConditionItem, ConditionRow, ConditionsReport, DeviationEffect } from './condition-row.ts';
import { machinesNearby } from './nearby-machines.ts';
import { OTHER_ITEMS } from './other-items.ts';

/** Items in order of distance from the detector: the spot, its room, its level, the other levels, outdoors. The order is ours. */
const WALK = [
  'not-disturbed',
  'room-machines-off',
  'window-air-conditioner-recirculating',
  'fireplaces-off',
  'heating-cooling-normal',
  'air-handler-not-continuous',
  'combustion-air-open',
  'mitigation-running',
  'exhausts-moderate',
  'windows-closed',
  'doors-closed',
  'whole-house-fan-off',
  'outdoor-air-lowest',
  'heat-recovery-as-usual',
  'attic-fan-as-usual',
  'no-severe-weather',
];

/** The closed-building checklist, in the order of a walk from the detector outward. */
export const CONDITION_ITEMS: readonly ConditionItem[] = [...AIR_ITEMS, ...OTHER_ITEMS].toSorted(
  (a, b) => WALK.indexOf(a.id) - WALK.indexOf(b.id),
);

export const WHY_DEVIATIONS_COUNT =
  'Every deviation is recorded with the result and may make it invalid. What each deviation means for the test is sorted here by common practice.';
/** Sources of `WHY_DEVIATIONS_COUNT`. */
export const DEVIATION_SOURCES: readonly Source[] = [
  MAH('6.1.1 and Exh. 2'),
  ILLINOIS_COPY('(o)(1)(I)'),
  source('common-practice', 'common practice, no published source'),
];

const EFFECT_TEXT: Readonly<Record<DeviationEffect, string>> = {
  'not-evaluated': 'This test is invalid: do not use the result. Keep the record and test again.',
  'professional-review':
    'Review required: a certified or licensed professional decides whether the result may be used.',
};

/** Returns the state of each checklist item and the validity of the test that follows. */
export function conditionsReport(plan: Plan): ConditionsReport {
  const rows = [...CONDITION_ITEMS.filter((item) => applies(plan, item)), ...unlistedItems(plan)].map((item) =>
    rowOf(plan, item),
  );
  return { rows, ...overallValidity(rows) };
}

/** Whether an item is asked. One that was answered always is; a long-term test needs no closed-building conditions. */
function applies(plan: Plan, { id, onlyWith, anyTerm }: ConditionItem): boolean {
  if (!anyTerm && isLongTerm(plan)) return false;
  if (onlyWith === undefined) return true;
  return hasMitigation(plan) || plan.conditions.some(({ item }) => item === id);
}

/** Returns items for answers in the file that are not on the checklist; a deviation from one has the worst effect, since none is known. */
function unlistedItems({ conditions }: Plan): readonly ConditionItem[] {
  const known = new Set(CONDITION_ITEMS.map(({ id }) => id));
  return [...new Set(conditions.map(({ item }) => item))]
    .filter((id) => !known.has(id))
    .map((id) => ({
      id,
      name: id.replaceAll('-', ' '),
      deviationEffect: 'not-evaluated',
      correction: 'See the instructions that it comes from.',
    }));
}

const RANK = { broken: 0, unknown: 1, kept: 2, 'not-applicable': 3 } as const;

/**
 * Returns the answer to an item that counts: the worst of several, because a deviation that was observed once has happened; of equal
 * answers the latest.
 */
export function recordedCondition({ conditions }: Plan, id: string): Condition | undefined {
  return conditions
    .filter(({ item }) => item === id)
    .reduce<Condition | undefined>((counts, each) => (!counts || outweighs(each, counts) ? each : counts), undefined);
}

function outweighs(a: Condition, b: Condition): boolean {
  if (a.state !== b.state) return RANK[a.state] < RANK[b.state];
  return (msOf(a.at) ?? Number.NEGATIVE_INFINITY) > (msOf(b.at) ?? Number.NEGATIVE_INFINITY);
}

/** Returns the other answers to an item that are on record, in order of time. */
export function furtherAnswers(plan: Plan, id: string): readonly Condition[] {
  const counts = recordedCondition(plan, id);
  return plan.conditions
    .filter((each) => each.item === id && each !== counts && each.state !== 'unknown')
    .toSorted((a, b) => (msOf(a.at) ?? 0) - (msOf(b.at) ?? 0));
}

function rowOf(plan: Plan, item: ConditionItem): ConditionRow {
  const answer = recordedCondition(plan, item.id);
  const answered = answer?.state ?? 'unknown';
  const mayBeNone = !item.everyHouse && !isDrawn(plan, item) && !(item.onlyWith && hasMitigation(plan));
  const touched = item.id === 'not-disturbed' ? tamperedDetectors(plan) : [];
  const drawnItems = drawnNearby(plan, item);
  const drawn = drawnItems !== '';
  const resolved = answered === 'not-applicable' && (!mayBeNone || drawn) ? 'unknown' : answered;
  const state = touched.length > 0 ? 'broken' : resolved;
  const found = touched.length > 0 ? `The log has evidence of tampering at ${listed(touched)}. ` : '';
  const doubted =
    answered === 'not-applicable' && state === 'unknown'
      ? 'Not applicable does not fit this house: inspect again. '
      : '';
  return {
    item,
    state,
    answered,
    canBeAbsent: mayBeNone && !drawn,
    drawnItems,
    by: state === answered ? (answer?.by?.trim() ?? '') : '',
    at: state === answered ? (answer?.at ?? null) : null,
    note: answer?.note.trim() ?? '',
    further: [...overruled(answer, state), ...furtherAnswers(plan, item.id)],
    beforePickUp: state === 'kept' && isBeforePickUp(answer?.at ?? null, plan.visit.end),
    effect: state === 'broken' ? item.deviationEffect : null,
    beforeStart: state === 'broken' && touched.length === 0 && isBeforeStart(plan, answer?.at ?? null),
    text: found + doubted + rowText(plan, state, item, answer?.at ?? null),
  };
}

/** The answer if the log or the drawing contradicts it: it stays on record, without its note, which is shown with the accepted state. */
const overruled = (answer: Condition | undefined, state: Condition['state']): readonly Condition[] =>
  answer && answer.state !== 'unknown' && answer.state !== state ? [{ ...answer, note: '' }] : [];

function rowText(plan: Plan, state: Condition['state'], item: ConditionItem, at: string | null): string {
  switch (state) {
    case 'kept':
      return 'Met.';
    case 'not-applicable':
      return 'Not applicable: the house has none.';
    case 'unknown':
      return 'Not known yet. The test is not valid without it.';
    case 'broken':
      return isBeforeStart(plan, at) ? describeBeforeStart(plan, item, at) : describeDeviation(item);
  }
}

/** Whether a deviation was observed before the start, until the pick-up: it is corrected, and no measurement is repeated. */
function isBeforeStart({ visit }: Plan, at: string | null): boolean {
  const [seen, start] = [msOf(at), msOf(visit.start)];
  if (visit.end !== null) return false;
  return start === null || (seen !== null && seen < start);
}

function describeBeforeStart(
  { site }: Plan,
  { deviationEffect, correction }: ConditionItem,
  at: string | null,
): string {
  const seen = msOf(at);
  const lead = CLOSED_BEFORE.duration;
  const soonest =
    seen === null
      ? `once it has been met for ${limitWords(CLOSED_BEFORE)}`
      : `not before ${formatInstant(seen + lead, site.timeZone)}`;
  const later = deviationEffect === 'not-evaluated' ? ` Start later: ${soonest}.` : '';
  return `Found before the start. ${correction}${later} Answer again once it is corrected.`;
}

const isDrawn = ({ levels }: Plan, { shownBy = [] }: ConditionItem): boolean =>
  levels.some(({ fixtures }) => fixtures.some(({ kind }) => shownBy.includes(kind)));

/** Returns a sentence with the drawn machines that an item is about; empty for none. */
function drawnNearby(plan: Plan, { id }: ConditionItem): string {
  const near = machinesNearby(plan).filter(({ question }) => question === id);
  return near.length > 0 ? `Drawn within 20 ft (6.1 m): ${listed(near.map(({ description }) => description))}.` : '';
}

/** Returns what a deviation from an item means for the test, and the correction. */
export const describeDeviation = ({ deviationEffect, correction }: ConditionItem): string =>
  `${EFFECT_TEXT[deviationEffect]} ${correction}`;

/** Returns the labels of the detectors with tampering in the log. */
function tamperedDetectors({ log = [], levels }: Plan): readonly string[] {
  const seen = new Set(log.filter(({ tampering }) => tampering === 'seen').map(({ detector }) => detector));
  return levels.flatMap(({ detectors }) =>
    detectors.filter(({ id }) => seen.has(id)).map(({ id, label }) => label.trim() || id),
  );
}

/** Whether an answer was given before the pick-up: it does not cover the time from then to the pick-up. */
const isBeforePickUp = (at: string | null, pickUp: string | null): boolean => {
  const [seen, end] = [msOf(at), msOf(pickUp)];
  return seen !== null && end !== null && seen < end;
};

/** Returns a sentence on answers given before the pick-up; empty for none. */
export const describeEarlyAnswers = (count: number): string =>
  count === 0
    ? ''
    : `${counted(count, 'answer')} from before the pick-up: inspect again at the pick-up and answer again.`;

/** At most this many open items are named. */
const NAMED = 3;

/** Returns the names of the items in quotes: "A", "B" and "C". */
export const namedItems = (rows: readonly ConditionRow[]): string => listed(rows.map(({ item }) => `"${item.name}"`));

/** Returns how many items are not known, with their names where they are few; empty for none. */
export function describeUnknown(open: readonly ConditionRow[], one: string, many: string): string {
  if (open.length === 0) return '';
  const names = open.length <= NAMED ? `: ${namedItems(open)}` : '';
  return `${counted(open.length, one, many)} not known yet${names}.`;
}

function overallValidity(rows: readonly ConditionRow[]): Pick<ConditionsReport, 'validity' | 'text'> {
  const lost = rows.filter(({ effect }) => effect === 'not-evaluated');
  if (lost.length > 0) {
    return {
      validity: 'not-evaluated',
      text: `Deviation: ${namedItems(lost)}. ${lost.every(({ beforeStart }) => beforeStart) ? 'Found before the start: correct it and start later.' : 'This test is invalid: do not use the result. Keep the record and test again.'}`,
    };
  }
  const doubtful = rows.filter(({ effect }) => effect === 'professional-review');
  const open = rows.filter(({ state }) => state === 'unknown');
  const asked = [
    describeUnknown(open, 'item', 'items'),
    describeEarlyAnswers(rows.filter(({ beforePickUp }) => beforePickUp).length),
  ]
    .filter(Boolean)
    .join(' ');
  if (doubtful.length > 0) {
    const text = `Deviation: ${namedItems(doubtful)}. A certified or licensed professional decides whether the result may be used.`;
    return { validity: 'unknown', text: [text, asked].filter(Boolean).join(' ') };
  }
  if (asked) return { validity: 'unknown', text: asked };
  return { validity: 'holds', text: 'Every item that applies is met.' };
}
