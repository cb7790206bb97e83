import { type DueStep, nextDue } from '../../protocol/timing/next-due.ts';
import { titleWords } from './described.ts';
import type { PlanSummary } from './records.ts';

/** Search and order of the library. */

/** Returns the text in a form for comparison: lower case, without accents, with single spaces between words. */
function folded(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

export type Finding = { readonly found: false } | { readonly found: true; readonly where: string };

/**
 * Returns whether every search word begins a word of the plan's title, its place, a room or a detector's label. `where` names the rooms and
 * labels that were found; it is empty if title and place contain all words. An empty search finds everything.
 */
export function findIn(summary: PlanSummary, looked: string): Finding {
  const words = folded(looked).split(' ').filter(Boolean);
  const head = folded(`${titleWords(summary)} ${summary.place}`);
  const rest = words.filter((word) => !hasWord(head, word));
  const where: string[] = [];
  for (const word of rest) {
    const room = summary.roomNames.find((name) => hasWord(folded(name), word));
    const label = summary.detectorLabels.find((name) => hasWord(folded(name), word));
    if (room === undefined && label === undefined) return { found: false };
    where.push(room ?? `detector ${label}`);
  }
  return { found: true, where: [...new Set(where)].join(', ') };
}

function hasWord(text: string, beginning: string): boolean {
  return ` ${text}`.includes(` ${beginning}`);
}

export const ORDERS = {
  changed: 'Last changed',
  due: 'Next due',
  house: 'By house',
  title: 'Title',
} as const;
export type Order = keyof typeof ORDERS;

/** A group of plans under a heading. */
export interface PlanGroup {
  readonly title: string;
  readonly summaries: readonly PlanSummary[];
}

/** Returns all plans, each once, grouped and sorted by `order`, without empty groups. `now` is in ms since 1970. */
export function groupPlans(summaries: readonly PlanSummary[], order: Order, now: number): readonly PlanGroup[] {
  const sorted = [...summaries].sort((a, b) => b.changedAt - a.changedAt);
  switch (order) {
    case 'changed':
      return inGroups(sorted, CHANGED, (summary) => changedGroup(summary, now));
    case 'due':
      return dueBoards(sorted, now);
    case 'house':
      return houses(sorted);
    case 'title':
      return inGroups([...sorted].sort(byTitle), ['By title'], () => 'By title');
  }
}

const CHANGED = ['Today', 'The last seven days', 'The last thirty days', 'Before'];
const DAY = 86_400_000;

function changedGroup({ changedAt }: PlanSummary, now: number): string {
  const midnight = new Date(now).setHours(0, 0, 0, 0);
  if (changedAt >= midnight) return 'Today';
  if (changedAt >= midnight - 6 * DAY) return 'The last seven days';
  return changedAt >= midnight - 29 * DAY ? 'The last thirty days' : 'Before';
}

/** Headings, the most urgent first. */
const DUE: Readonly<Record<DueStep, string>> = {
  overdue: 'Overdue',
  'test-again': 'To be tested again',
  measuring: 'Measuring now',
  'to-the-laboratory': 'To the laboratory',
  'to-be-started': 'To be started',
  'no-date': 'No date yet',
  measured: 'Measured',
};

/** Sorts plans by their next date within each group; plans without a date come last and keep their order. */
function dueBoards(summaries: readonly PlanSummary[], now: number): readonly PlanGroup[] {
  const due = new Map(summaries.map((summary) => [summary, nextDue(summary, now, 'UTC')]));
  const dateOf = (summary: PlanSummary) => due.get(summary)?.at ?? Number.MAX_SAFE_INTEGER;
  const sorted = [...summaries].sort((a, b) => dateOf(a) - dateOf(b));
  return inGroups(sorted, Object.values(DUE), (summary) => DUE[due.get(summary)?.step ?? 'no-date']);
}

function byTitle(a: PlanSummary, b: PlanSummary): number {
  return titleWords(a).localeCompare(titleWords(b), undefined, { numeric: true, sensitivity: 'base' });
}

const NO_PLACE = 'No address yet';

function houses(summaries: readonly PlanSummary[]): readonly PlanGroup[] {
  const houseOf = ({ place }: PlanSummary) => place || NO_PLACE;
  const names = [...new Set(summaries.map(houseOf))].filter((name) => name !== NO_PLACE);
  names.sort((a, b) => a.localeCompare(b, undefined, { numeric: true, sensitivity: 'base' }));
  return inGroups([...summaries].sort(byTitle), [...names, NO_PLACE], houseOf);
}

function inGroups(
  summaries: readonly PlanSummary[],
  titles: readonly string[],
  titleOf: (summary: PlanSummary) => string,
): readonly PlanGroup[] {
  const groups = new Map<string, PlanSummary[]>(titles.map((title) => [title, []]));
  for (const summary of summaries) groups.get(titleOf(summary))?.push(summary);
  return [...groups].map(([title, some]) => ({ title, summaries: some })).filter((group) => group.summaries.length > 0);
}
