import { CAUTIONS, counted, listed } from '../../geometry/messages/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { hoursAreKnown, leastExposure } from '../protocol/timing/exposure-limits.ts';
import { formatDuration } from '../protocol/timing/format-time.ts';
import { CLOSED_BEFORE, SHORT_TEST } from '../protocol/timing/limits.ts';
import { LOOK_UP_THE_FORECAST } from '../protocol/timing/weather-check.ts';
import { type AskedGroupId, occupantRequests, SAFETY } from '../report/documents/occupant-texts.ts';
import { gapWords } from '../state/side-by-side.ts';
import type { CardSpot, QuickCard } from './describe-card.ts';
import type { CardTimes } from './times.ts';

/** The texts of a card, the same on screen and on paper. */

/** A heading with its list. */
export interface CardSection {
  readonly title: string;
  readonly items: readonly string[];
}

/** A named time or place, the larger type of the card. */
export interface CardFact {
  readonly name: string;
  readonly text: string;
}

const kitsOf = ({ detectors }: CardSpot): string => (detectors.length > 1 ? 'both kits' : 'the kit');

/** The legend of the sketch. */
export const SKETCH_KEY =
  'White on the picture: a kit may stand there, by what you entered. Gray: too near to something.';

/** Returns the place of the kit: the tape distances and the height. */
export function placeFacts(spot: CardSpot): readonly CardFact[] {
  const tapes = spot.tapes.map(({ length, from }) => `${length} ${from}`).join(', ');
  const middle = spot.gap
    ? `the middle between the two. Side by side, ${spot.gap} ${spot.line}`
    : 'the middle of the kit.';
  return [
    { name: 'Put it here', text: `${tapes}: to ${middle}` },
    {
      name: 'At this height',
      text: spot.isMeasured
        ? `${spot.height} above the floor, ${carrierWords(spot)}. Allowed: ${spot.heights}.`
        : `As high as its top, ${carrierWords(spot)}: not measured. Allowed: ${spot.heights}.`,
    },
  ];
}

function carrierWords({ on }: CardSpot): string {
  if (on === 'table') return 'on a small table that you move there';
  return on === 'shelf' ? 'on the shelf' : 'on something firm (not entered on what)';
}

/** Returns the times of the test that are planned or recorded; empty while they are not known. */
export function timeFacts(times: CardTimes): readonly CardFact[] {
  if (!times.known) return [];
  const { isPlanned, fetched } = times;
  return [
    ...(isPlanned ? planFacts(times) : placedFacts(times)),
    ...(fetched ? fetchedFacts(times, fetched) : pickUpFacts(times)),
    ...(isPlanned && !fetched ? [laterFact(times)] : []),
  ];
}

type KnownTimes = Extract<CardTimes, { readonly known: true }>;

function planFacts(times: KnownTimes): readonly CardFact[] {
  const { close, closed, opened, start } = times;
  if (closed !== null && opened === null) return [closedFact(times), { name: 'Place it', text: start }];
  return [
    { name: 'Close the house', text: `${close}, or earlier` },
    { name: 'Place it', text: `${start}, not earlier` },
  ];
}

const placedFacts = (times: KnownTimes): readonly CardFact[] => [
  closedFact(times),
  { name: 'Placed', text: times.start },
];

function closedFact({ close, closed, opened, isLate }: KnownTimes): CardFact {
  const due = `It had to be by ${close}.`;
  const name = 'House closed since';
  if (closed === null) return { name, text: `Not recorded. ${due}` };
  const late = isLate ? `. ${due}` : '';
  return opened === null
    ? { name, text: `${closed}${late}` }
    : { name: 'House closed', text: `from ${closed} to ${opened}${late}` };
}

function pickUpFacts({ fetchFrom, fetchTo }: KnownTimes): readonly CardFact[] {
  const span = fetchFrom === fetchTo ? `at ${fetchTo}, to the minute` : `from ${fetchFrom} to ${fetchTo}`;
  return [
    { name: 'Pick it up', text: span },
    { name: 'Last moment', text: `${fetchTo}. After that the test is invalid.` },
  ];
}

/** The hours of the exposure count, not the planned clock times. */
const laterFact = ({ hours }: KnownTimes): CardFact => ({
  name: 'Placed later than that',
  text: `Count from the minute when you placed it: pick it up after ${hours}.`,
});

function fetchedFacts(
  { hours }: KnownTimes,
  { at, duration, isInvalid }: NonNullable<KnownTimes['fetched']>,
): readonly CardFact[] {
  const judged = isInvalid ? `That is outside the ${hours} that a test may take: it is invalid.` : `Allowed: ${hours}.`;
  return [
    { name: 'Picked up', text: at },
    { name: 'Exposed', text: `${duration}. ${judged}` },
  ];
}

/** Headings of the points that are open, and of those that were looked at. */
export const OPEN_TITLE = 'Still open: this is not a clear result';
export const LOOKED_TITLE = 'You have looked';

/** Number of open points that are named beside the verdict. */
const NAMED = 3;

/** Returns the sentences beside the verdict: loosened rules, further places needed, number and names of open points; null for none. */
export function openSentence({ open, places, loosened }: CardSpot): string | null {
  const said = [loosened, places, openWords(open)].filter((text) => text !== null);
  return said.length > 0 ? said.join(' ') : null;
}

function openWords(open: CardSpot['open']): string | null {
  if (open.length === 0) return null;
  const names = open.slice(0, NAMED).map(({ name }) => name.toLowerCase());
  const rest = open.length - names.length;
  const items = rest > 0 ? `${names.join(', ')} and ${rest} more` : listed(names);
  const are = open.length > 1 ? 'are' : 'is';
  return `Not a clear result: ${counted(open.length, 'point')} ${are} still open: ${items}.`;
}

/** Returns the sections below the sketch: what is open, what to measure, what to do and what not to do. */
export function cardSections(card: QuickCard): readonly CardSection[] {
  const { spot, plan } = card;
  if (!spot) return [];
  const open = spot.open.map(({ words }) => words);
  const computed = spot.points.filter(({ isOpen, says }) => !isOpen && says === null).map(({ words }) => words);
  return [
    ...(open.length > 0 ? [{ title: OPEN_TITLE, items: open }] : []),
    {
      title: 'Before you set it down, measure with a tape',
      items: spot.measure,
    },
    ...(computed.length > 0 ? [{ title: 'Worked out from the drawing', items: computed }] : []),
    {
      title: 'Do',
      items: [
        ...(isShort(plan) ? [LOOK_UP_THE_FORECAST] : []),
        `Close the house ${formatDuration(CLOSED_BEFORE.duration)} before you place ${kitsOf(spot)}, and keep it closed until you pick it up.`,
        'Write down the minute when you place it, and the minute when you pick it up.',
        ...asked(plan, 'do'),
        ...companyWords(card),
      ],
    },
    { title: 'Do not: leave off, use little, leave alone', items: asked(plan, 'do-not') },
    { title: 'When you have picked it up', items: afterwards(card) },
  ];
}

/** Whether the test may be shorter than `SHORT_TEST`, so that it needs a forecast. */
const isShort = (plan: Plan): boolean => !hoursAreKnown(plan) || leastExposure(plan.kit) < SHORT_TEST.duration;

/** The list that has the requests of each group. */
const LIST_OF: Readonly<Record<AskedGroupId, 'do' | 'do-not'>> = {
  closed: 'do',
  'as-it-is': 'do',
  off: 'do-not',
  alone: 'do-not',
};

function asked(plan: Plan, list: 'do' | 'do-not'): readonly string[] {
  return occupantRequests(plan)
    .filter(({ id }) => LIST_OF[id] === list)
    .flatMap(({ asks }) => asks);
}

function companyWords({ answers: { company } }: QuickCard): readonly string[] {
  if (company === false) return [];
  const who = company === null ? 'Pets or small children in the house? ' : '';
  return [
    `${who}Keep pets and small children away from it: in a room that can be closed, or where nobody can reach or tip it.`,
  ];
}

function afterwards({ answers, times }: QuickCard): readonly string[] {
  const { labDays } = answers.leaflet;
  const due = times.known ? times.fetched?.laboratoryBy : null;
  return [
    'Seal it at once, as the leaflet shows.',
    sendWords(labDays, due ?? null),
    'Write the times and the serial number on its form.',
  ];
}

function sendWords(labDays: number | null, due: string | null): string {
  if (labDays === null) return 'Mail it the same day. Look up in the leaflet by when the laboratory must have it.';
  const by = due ? ` The laboratory must have it by ${due}.` : '';
  if (labDays < 1) return `The leaflet leaves no day for the mail: take it to the laboratory at once.${by}`;
  return `Mail it the same day.${by || ` The laboratory must have it within ${counted(labDays, 'day')} of the pick-up.`}`;
}

/** Returns why two kits are better than one; null if there are two, or no spot. */
export function twoKits({ plan, spot }: QuickCard): string | null {
  if (!spot || spot.detectors.length > 1) return null;
  return `Better: two kits side by side, ${gapWords(plan)} Where the two agree, the result is more certain; where they do not, something went wrong with one of them. One kit alone cannot show that.`;
}

/** Returns the cautions of every card. */
export function cardCautions(): readonly string[] {
  return [...CAUTIONS, SAFETY];
}
