import { CAUTIONS, counted, listed } from '../../geometry/messages/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { formatDuration } from '../protocol/timing/format-time.ts';
import { CLOSED_BEFORE } from '../protocol/timing/limits.ts';
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

/** What the two shades of the floor mean. */
export const SKETCH_KEY =
  'White on the picture: a kit may stand there, by what you entered. Gray: too near to something.';

/** Returns where it goes: the tape distances and the height. */
export function placeFacts(spot: CardSpot): readonly CardFact[] {
  const tapes = spot.tapes.map(({ length, from }) => `${length} ${from}`).join(', ');
  const middle = spot.detectors.length > 1 ? 'the middle between the two' : 'the middle of the kit';
  return [
    { name: 'Put it here', text: `${tapes}: to ${middle}.` },
    {
      name: 'At this height',
      text: `${spot.height} above the floor, ${carrierWords(spot)}. Allowed: ${spot.heights}.`,
    },
  ];
}

function carrierWords({ on }: CardSpot): string {
  if (on === 'table') return 'on a small table that you move there';
  return on === 'shelf' ? 'on the shelf' : 'on something firm (not entered on what)';
}

/** Returns the times of the test; none while they are not known. */
export function timeFacts(times: CardTimes): readonly CardFact[] {
  if (!times.known) return [];
  return [
    { name: 'Close the house', text: `${times.close}, or earlier` },
    { name: 'Place it', text: times.start },
    { name: 'Pick it up', text: `from ${times.fetchFrom} to ${times.fetchTo}` },
    { name: 'Last moment', text: `${times.fetchTo}. After that the test is invalid.` },
  ];
}

/** The headings of what somebody has to look at, and of what somebody has looked at. */
export const OPEN_TITLE = 'Still open: this is not a clear result';
export const LOOKED_TITLE = 'You have looked';

/** As many open points are named beside the verdict. */
const NAMED = 3;

/** Returns, for beside the verdict, how much is open and the first of it by name; null where nothing is. */
export function openSentence({ open }: CardSpot): string | null {
  if (open.length === 0) return null;
  const names = open.slice(0, NAMED).map(({ name }) => name.toLowerCase());
  const rest = open.length - names.length;
  const items = rest > 0 ? `${names.join(', ')} and ${rest} more` : listed(names);
  const are = open.length > 1 ? 'are' : 'is';
  return `Not a clear result: ${counted(open.length, 'point')} ${are} still open: ${items}.`;
}

/** Returns everything below the sketch: what to measure, what is open, what to do and what not to do. */
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

/** The list in which the requests of each group stand. */
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

function afterwards({ answers }: QuickCard): readonly string[] {
  const { labDays } = answers.leaflet;
  const by =
    labDays === null
      ? 'Look up in the leaflet by when the laboratory must have it.'
      : `The laboratory must have it within ${counted(labDays, 'day')}.`;
  return [
    'Seal it at once, as the leaflet shows.',
    `Mail it the same day. ${by}`,
    'Write the times and the serial number on its form.',
  ];
}

/** Why two kits are better than one; null where there are two. */
export function twoKits({ plan, spot }: QuickCard): string | null {
  if (spot && spot.detectors.length > 1) return null;
  return `Better: two kits side by side, ${gapWords(plan)} Where the two agree, the result is more certain; where they do not, something went wrong with one of them. One kit alone cannot show that.`;
}

/** Returns the cautions of every card. */
export function cardCautions(): readonly string[] {
  return [...CAUTIONS, SAFETY];
}
