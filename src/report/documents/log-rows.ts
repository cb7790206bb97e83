/** Rows of the log's tables. Unknown values are blank cells, high enough to write in. */

import { markedCite } from '../../../geometry/messages/sources.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { ConditionState } from '../../../geometry/plan/test-record.ts';
import type { ConditionRow } from '../../protocol/conditions/condition-row.ts';
import { conditionTexts } from '../../protocol/conditions/condition-texts.ts';
import { logEntryOf } from '../../protocol/custody/log-entries.ts';
import { recordedStart } from '../../protocol/custody/placed.ts';
import { msOf } from '../../protocol/timing/clock.ts';
import { type Block, besides, space } from '../block.ts';
import { COLOR, LINE_MM } from '../style.ts';
import { line } from '../svg.ts';
import type { Cell, Column } from '../table.ts';
import { type PlacedDetector, placedDetectors } from './detector-places.ts';
import { checkBox, clipped, isLong } from './document-blocks.ts';
import { formatShortAt } from './format-times.ts';

/** Height of a row to write in, mm. */
const WRITING_ROW = 7;
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
export const DEPLOYMENT_COLUMNS = [
  column('Detector', 0.09),
  column('Placed', 0.17),
  column('By', 0.12),
  column('Picked up', 0.17),
  column('By', 0.12),
  column('Sealed', 0.17),
  column('Evidence of tampering', 0.16),
];
export const CUSTODY_COLUMNS = [
  column('Detectors', 0.17),
  column('When', 0.17),
  column('From', 0.18),
  column('To', 0.18),
  column('Note, signature', 0.3),
];
export const CONDITION_COLUMNS = [
  column('Condition', 0.24),
  column('Met?', 0.17),
  column('Verified by', 0.13),
  column('When', 0.19),
  column('Meaning, note', 0.2),
  column('Source', 0.07),
];

/** Returns the row, with room to write where a cell is blank. */
function row(cells: Row): Row {
  const open = cells.indexOf('');
  return open < 0 ? cells : cells.map((cell, i) => (i === open ? space(WRITING_ROW) : cell));
}

/** Returns blank rows to write in. */
export function emptyRows(columns: readonly Column[], count: number): readonly Row[] {
  const cell: Block = {
    height: WRITING_ROW,
    draw: (x, y) => line(x - 1.2, y, x - 1.2, y + WRITING_ROW, { stroke: COLOR.inkSoft, 'stroke-width': LINE_MM.rule }),
  };
  return Array.from({ length: count }, () => columns.map((_, i) => (i === 0 ? space(WRITING_ROW) : cell)));
}

export const placeRow = (plan: Plan, placed: PlacedDetector): Row => row(placeCells(plan, placed));

/** Returns the cells of `PLACE_COLUMNS`; an empty cell is not known. */
export function placeCells(
  plan: Plan,
  { detector, name, level, room, fromWalls, height, carrier }: PlacedDetector,
): Row {
  const beside = detector.pair === null ? '' : `. Side by side, pair ${detector.pair}`;
  return [
    { text: clipped(name), bold: true },
    clipped(logEntryOf(plan, detector.id).serial.trim()),
    clipped(level),
    clipped(room),
    (fromWalls || 'No wall near by') + beside,
    `${height}${carrier}`,
  ];
}

export function deploymentRow(plan: Plan, { detector, name }: PlacedDetector): Row {
  const { placedBy, fetchedBy, sealed, tampering } = logEntryOf(plan, detector.id);
  return row([
    { text: clipped(name), bold: true },
    formatShortAt(recordedStart(plan.visit), plan),
    clipped(placedBy.trim()),
    formatShortAt(plan.visit.end, plan),
    clipped(fetchedBy.trim()),
    formatShortAt(sealed, plan),
    tampering === 'unknown'
      ? boxes(['none', 'found'])
      : { text: tampering === 'seen' ? 'FOUND' : 'none found', bold: tampering === 'seen' },
  ]);
}

/** Returns the recorded hand-overs, then blank rows. */
export function custodyRows(plan: Plan): readonly Row[] {
  return [...handOvers(plan).map(row), ...emptyRows(CUSTODY_COLUMNS, EMPTY_ROWS)];
}

/** Returns the cells of `CUSTODY_COLUMNS` for the recorded hand-overs in order of time; equal hand-overs of detectors share a row. */
export function handOvers(plan: Plan): readonly Row[] {
  const steps = new Map<string, { at: number; names: string[]; cells: readonly [string, string, string, string] }>();
  for (const { detector, name } of placedDetectors(plan)) {
    for (const { at, from, to, note } of logEntryOf(plan, detector.id).custody) {
      const cells = [formatShortAt(at, plan), from.trim(), to.trim(), note.trim()] as const;
      const key = JSON.stringify([at, ...cells]);
      const known = steps.get(key);
      if (known) known.names.push(name);
      else steps.set(key, { at: msOf(at) ?? Number.POSITIVE_INFINITY, names: [name], cells });
    }
  }
  return [...steps.values()]
    .sort((a, b) => (a.at === b.at ? 0 : a.at - b.at))
    .map(
      ({ names, cells: [at, from, to, note] }): Row => [
        names.map(clipped).join(', '),
        at,
        clipped(from),
        clipped(to),
        clipped(note),
      ],
    );
}

/** Returns a row for a condition, and one for each further answer to it on record. `all`: the conditions whose sources are numbered. */
export function conditionRows(plan: Plan, condition: ConditionRow, all: readonly ConditionRow[]): readonly Row[] {
  const { item, state, by, at, note, further, text, beforePickUp } = condition;
  const words = [state === 'broken' ? text : '', clipped(note)].filter(Boolean).join(' ');
  const list = citesOf(all);
  return [
    row([
      item.name,
      state === 'unknown' ? boxes(['yes', 'no', 'n/a']) : stateCell(state, beforePickUp),
      clipped(by),
      formatShortAt(at, plan),
      words || space(0),
      conditionTexts(item)
        .sources.map((each) => list.indexOf(markedCite(each)) + 1)
        .sort((a, b) => a - b)
        .join(', ') || '–',
    ]),
    ...further.map((each): Row => {
      const cells = [clipped(each.by?.trim() ?? ''), formatShortAt(each.at, plan), clipped(each.note.trim()), ''];
      return [ALSO, stateCell(each.state, false), ...cells.map((cell) => cell || space(0))];
    }),
  ];
}

/** Replaces the name of a condition in the row of a further answer to it, e.g. of an earlier inspection. */
export const ALSO = 'also on record';
export const isFurtherAnswer = ([name]: readonly Cell[]): boolean => name === ALSO;

function stateCell(state: ConditionState, beforePickUp: boolean): Cell {
  const words = {
    kept: beforePickUp ? 'met so far' : 'met',
    broken: 'DEVIATION',
    'not-applicable': 'not applicable',
    unknown: '',
  };
  return { text: words[state], bold: state === 'broken' };
}

/** Returns every source once; its number is its position. */
function citesOf(rows: readonly ConditionRow[]): readonly string[] {
  return [...new Set(rows.flatMap(({ item }) => conditionTexts(item).sources.map(markedCite)))];
}

/** Returns the legend of the source numbers. */
export function sourceKey(rows: readonly ConditionRow[]): string {
  return citesOf(rows)
    .map((cite, i) => `${i + 1} ${cite}`)
    .join('; ');
}

/** Returns small check boxes side by side. */
function boxes(words: readonly string[]) {
  const left = 14.5;
  return besides(words.map((text, i) => ({ left: i * left, block: checkBox(text, left, { size: 2.75 }) })));
}

/** Returns the full text of every cell that the log's tables clip. */
export function clippedTexts(plan: Plan): readonly string[] {
  return longOf([...textsOfDetectors(plan), ...plan.conditions.flatMap(({ by = '', note }) => [by, note])]);
}

/** Returns the full text of every cell that the report's tables clip. */
export function clippedInReport(plan: Plan): readonly string[] {
  const notes = placedDetectors(plan).map(({ detector }) => logEntryOf(plan, detector.id).note);
  return longOf([...textsOfDetectors(plan), ...notes]);
}

const longOf = (texts: readonly string[]): readonly string[] => [
  ...new Set(texts.map((text) => text.trim()).filter(isLong)),
];

function textsOfDetectors(plan: Plan): readonly string[] {
  return placedDetectors(plan).flatMap(({ detector, name, level, room }) => {
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
}
