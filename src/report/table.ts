/** Tables: cells wrapped to their columns, a fine line under each row, the head repeated on every page. */
import { type Block, besides, paragraph, paragraphParts, ruling, space, stack, withRole } from './block.ts';
import type { FlowItem } from './flow.ts';
import { COLOR, LINE_MM, TYPE_MM } from './style.ts';
import { type TextStyle, wrapText } from './text.ts';

export interface Column {
  readonly heading: string;
  /** Share of the table's width. */
  readonly share: number;
}
/** A text, or a block. */
export type Cell = string | { readonly text: string; readonly bold?: boolean; readonly color?: string } | Block;

const CELL: TextStyle = { size: TYPE_MM.small };
const PAD = 0.56;
const GUTTER = 2;

/**
 * Returns the rows of a table for the flow, below its head in smaller type. Nothing of a long text is cut off.
 * @param again heading of the first column where the table continues on the next page
 * @param goesOn whether a row belongs to the row before it and stays on its page
 */
export function tableItems(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  width: number,
  style: TextStyle = CELL,
  again = columns[0]?.heading ?? '',
  goesOn: (row: readonly Cell[]) => boolean = () => false,
): readonly FlowItem[] {
  const headings = columns.map(({ heading }) => heading);
  const headStyle = { size: (style.size * TYPE_MM.fine) / TYPE_MM.small, color: COLOR.inkSoft };
  const [head, headAgain] = [headings, [again, ...headings.slice(1)]].map((cells) =>
    tableRow(columns, cells, width, headStyle, LINE_MM.box, 'columnheader'),
  ) as [Block, Block];
  const table = {};
  const all = rows.flatMap((cells) => rowParts(columns, cells, width, style));
  return [
    { block: head, above: 0, keepWithNext: true, table },
    ...all.map(({ cells, isLast }, i) => ({
      block: tableRow(columns, cells, width, style, isLast ? LINE_MM.rule : 0, 'cell'),
      above: 0,
      table,
      heading: headAgain,
      // The first two rows stay together, and the last two: a single row on a page is easily missed.
      keepWithNext: i === 0 || i === all.length - 2 || goesOn(all[i + 1]?.cells ?? []),
    })),
  ];
}

/** Returns the row, followed by rows for the rest of texts that are too long for one: a record is printed whole, across pages. */
function rowParts(
  columns: readonly Column[],
  cells: readonly Cell[],
  width: number,
  style: TextStyle,
): readonly { readonly cells: readonly Cell[]; readonly isLast: boolean }[] {
  const parts = columns.map(({ share }, i) => cellParts(cells[i] ?? '', share * width - GUTTER, style));
  const count = Math.max(...parts.map(({ length }) => length));
  return Array.from({ length: count }, (_, i) => ({
    cells: parts.map((part, k) => part[i] ?? (k === 0 ? continued(cells[0]) : '')),
    isLast: i === count - 1,
  }));
}

/** The first cell of the rest of a row, which may stand on a page of its own. */
function continued(name: Cell = ''): Cell {
  const text = typeof name === 'string' ? name : 'text' in name && name.text;
  return text ? `${text}, continued` : '';
}

function cellParts(cell: Cell, width: number, style: TextStyle): readonly Cell[] {
  if (typeof cell === 'string') return paragraphParts(cell, width, style);
  if ('draw' in cell) return [cell];
  const weight = cell.bold ? 'bold' : 'regular';
  return paragraphParts(cell.text, width, { ...style, weight }).map((text) => ({ ...cell, text }));
}

function tableRow(
  columns: readonly Column[],
  cells: readonly Cell[],
  width: number,
  style: TextStyle,
  weight: number,
  role: 'cell' | 'columnheader',
): Block {
  let left = 0;
  const blocks = columns.map(({ share }, i) => {
    const wide = share * width - GUTTER;
    const cell = { left, block: withRole(cellBlock(cells[i] ?? '', wide, style), role) };
    left += share * width;
    return cell;
  });
  return stack([
    space(PAD),
    withRole(besides(blocks), 'row'),
    ...(weight > 0 ? [space(PAD), ruling(width, weight)] : []),
  ]);
}

function cellBlock(cell: Cell, width: number, style: TextStyle): Block {
  if (typeof cell === 'string') return paragraph(cell, width, style);
  if ('draw' in cell) return cell;
  return paragraph(cell.text, width, {
    ...style,
    weight: cell.bold ? 'bold' : 'regular',
    ...(cell.color ? { color: cell.color } : {}),
  });
}

/** Returns the heading of a section, kept with the item after it. */
export function headingItem(text: string, width: number): FlowItem {
  return {
    block: stack([
      withRole(paragraph(text, width, { size: TYPE_MM.head, weight: 'bold' }), 'heading', { 'aria-level': 2 }),
      space(0.8),
    ]),
    above: 5,
    keepWithNext: true,
  };
}

/** Returns a paragraph as one item for each line, so that a long one breaks across pages. */
export function textItems(text: string, width: number, style: TextStyle = { size: TYPE_MM.body }): readonly FlowItem[] {
  return wrapText(text, width, style).map((line, i) => ({
    block: paragraph(line, width, style),
    above: i === 0 ? 0.8 : 0,
  }));
}
