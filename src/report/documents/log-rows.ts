/** The rows of the log's tables. What is not known is left white, high enough to be written in by hand. */

import { markedCite } from '../../../geometry/messages/sources.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { ConditionRow } from '../../protocol/conditions/condition-row.ts';
import { logEntryOf } from '../../protocol/custody/log-entries.ts';
import { msOf } from '../../protocol/timing/clock.ts';
import { type Block, besides, space } from '../block.ts';
import { COLOUR, LINE_MM } from '../style.ts';
import { line } from '../svg.ts';
import type { Cell, Column } from '../table.ts';
import { clipped, isLong, ticked } from './parts.ts';
import { type PlacedDetector, placedDetectors } from './places.ts';
import { shortAt } from './times.ts';

/** Height of a row that is written by hand, mm. */
const HAND = 7;
/** Empty rows after the hand-overs on record. */
const EMPTY_ROWS = 4;

type Row = readonly Cell[];
const column = (heading: string, share: number): Column => ({ heading, share });

export const PLACE_COLUMNS = [
  column('Detector', 0.1),
  column('Serial', 0.17),
  column('Level', 0.15),
  column('Room', 0.17),
  column('From the walls', 0.27),
  column('Above the floor', 0.14),
];
export const TURN_COLUMNS = [
  column('Detector', 0.1),
  column('Set out', 0.16),
  column('By', 0.13),
  column('Fetched', 0.16),
  column('By', 0.13),
  column('Sealed', 0.16),
  column('Tampering', 0.16),
];
export const CUSTODY_COLUMNS = [
  column('Detectors', 0.17),
  column('When', 0.17),
  column('From', 0.18),
  column('To', 0.18),
  column('Note, signature', 0.3),
];
export const CONDITION_COLUMNS = [
  column('What was asked', 0.23),
  column('Kept?', 0.18),
  column('Who says so', 0.13),
  column('When', 0.14),
  column('What it means, note', 0.26),
  column('Source', 0.06),
];

/** An empty cell of any text is one to write in: its row gets room for a hand. */
function row(cells: Row): Row {
  const open = cells.indexOf('');
  return open < 0 ? cells : cells.map((cell, i) => (i === open ? space(HAND) : cell));
}

/** Rows to be filled by hand, a fine line between their cells. */
export function emptyRows(columns: readonly Column[], count: number): readonly Row[] {
  const cell: Block = {
    height: HAND,
    draw: (x, y) => line(x - 1.2, y, x - 1.2, y + HAND, { stroke: COLOUR.inkSoft, 'stroke-width': LINE_MM.rule }),
  };
  return Array.from({ length: count }, () => columns.map((_, i) => (i === 0 ? space(HAND) : cell)));
}

export function placeRow(plan: Plan, { detector, name, level, room, fromWalls, height }: PlacedDetector): Row {
  const beside = detector.pair === null ? '' : `. Side by side, pair ${detector.pair}`;
  return row([
    { text: clipped(name), bold: true },
    clipped(logEntryOf(plan, detector.id).serial.trim()),
    clipped(level),
    clipped(room),
    (fromWalls || 'No wall near by') + beside,
    height,
  ]);
}

export function turnRow(plan: Plan, { detector, name }: PlacedDetector): Row {
  const { placedBy, fetchedBy, sealed, tampering } = logEntryOf(plan, detector.id);
  return row([
    { text: clipped(name), bold: true },
    shortAt(plan.visit.start, plan),
    clipped(placedBy.trim()),
    shortAt(plan.visit.end, plan),
    clipped(fetchedBy.trim()),
    shortAt(sealed, plan),
    tampering === 'unknown'
      ? boxes(['none', 'seen'])
      : { text: tampering === 'seen' ? 'SEEN' : 'none seen', bold: tampering === 'seen' },
  ]);
}

/** What is on record, those that went together in one row, the earliest first; then empty rows. */
export function custodyRows(plan: Plan): readonly Row[] {
  const steps = new Map<string, { at: number; names: string[]; cells: readonly [string, string, string, string] }>();
  for (const { detector, name } of placedDetectors(plan)) {
    for (const { at, from, to, note } of logEntryOf(plan, detector.id).custody) {
      const cells = [shortAt(at, plan), from.trim(), to.trim(), note.trim()] as const;
      const key = JSON.stringify([at, ...cells]);
      const known = steps.get(key);
      if (known) known.names.push(name);
      else steps.set(key, { at: msOf(at) ?? Number.POSITIVE_INFINITY, names: [name], cells });
    }
  }
  const rows = [...steps.values()]
    .sort((a, b) => (a.at === b.at ? 0 : a.at - b.at))
    .map(
      ({ names, cells: [at, from, to, note] }): Row =>
        row([names.map(clipped).join(', '), at, clipped(from), clipped(to), clipped(note)]),
    );
  return [...rows, ...emptyRows(CUSTODY_COLUMNS, EMPTY_ROWS)];
}

export function conditionRow(
  plan: Plan,
  { item, state, by, at, note, text, beforePickUp }: ConditionRow,
  all: readonly ConditionRow[],
): Row {
  const kept = {
    kept: beforePickUp ? 'kept so far' : 'kept',
    broken: 'BROKEN',
    'not-applicable': 'none here',
  } as const;
  const words = [state === 'broken' ? text : '', clipped(note)].filter(Boolean).join(' ');
  const list = citesOf(all);
  return row([
    item.name,
    state === 'unknown' ? boxes(['kept', 'broken', 'none']) : { text: kept[state], bold: state === 'broken' },
    clipped(by),
    shortAt(at, plan),
    words || space(0),
    item.sources
      .map((each) => list.indexOf(markedCite(each)) + 1)
      .sort((a, b) => a - b)
      .join(', ') || '–',
  ]);
}

/** Every source once; its number is its place in the list. */
function citesOf(rows: readonly ConditionRow[]): readonly string[] {
  return [...new Set(rows.flatMap(({ item }) => item.sources.map(markedCite)))];
}

/** What the numbers of the last column stand for. */
export function sourceKey(rows: readonly ConditionRow[]): string {
  return citesOf(rows)
    .map((cite, i) => `${i + 1} ${cite}`)
    .join('; ');
}

/** To be ticked by hand. */
function boxes(words: readonly string[]) {
  const left = 14.5;
  return besides(words.map((text, i) => ({ left: i * left, block: ticked(text, left, { size: 2.75 }) })));
}

/** Every text that a table shows clipped, whole. */
export function clippedTexts(plan: Plan): readonly string[] {
  const placed = placedDetectors(plan).flatMap(({ detector, name, level, room }) => {
    const { serial, placedBy, fetchedBy, custody } = logEntryOf(plan, detector.id);
    return [
      name,
      level,
      room,
      serial,
      placedBy,
      fetchedBy,
      ...custody.flatMap(({ from, to, note }) => [from, to, note]),
    ];
  });
  const answers = plan.conditions.flatMap(({ by = '', note }) => [by, note]);
  return [...new Set([...placed, ...answers].map((text) => text.trim()).filter(isLong))];
}
