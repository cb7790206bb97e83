/** Parts of every sheet: the frame, the cautions, and the title block at the foot in the order of ISO 7200. */
import { CAUTIONS } from '../../geometry/messages/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { msOf } from '../protocol/timing/clock.ts';
import { formatDate } from '../protocol/timing/format-time.ts';
import { type Area, frameOf, isPortrait, type PageSize } from './paper.ts';
import { COLOR, LINE_MM, TYPE_MM } from './style.ts';
import { element, escapeXml, line, num, rectElement } from './svg.ts';
import {
  balancedText,
  drawText,
  lineHeight,
  SET_AS_MEASURED,
  shortened,
  type TextStyle,
  textWidth,
  wrapText,
} from './text.ts';

export interface PageFacts {
  readonly page: PageSize;
  readonly plan: Plan;
  readonly levelName: string;
  /** As it is to be printed, e.g. "2026-11-25". */
  readonly date: string;
  /** As it is to be printed; empty if nothing is drawn to scale. */
  readonly scale: string;
  readonly sheet: number;
  readonly sheets: number;
  /** Whether the drawing is a page of a document, not one of the plan's own sheets. */
  readonly inDocument?: boolean;
  /** Whether it is a page of text for people in the house: no scale, larger cautions. */
  readonly words?: boolean;
}

/** Heights of a row of the title block, and of the cautions in one line and in two, mm. A portrait page has two of each. */
const ROW_HEIGHT = 14;
const CAUTION_HEIGHT = [5.6, 8.8] as const;

/** Returns the area within the frame above the cautions and the title block. */
export function contentArea(page: PageSize): Area {
  const frame = frameOf(page);
  return { ...frame, height: frame.height - titleHeight(page) - cautionHeight(page) };
}

const titleHeight = (page: PageSize) => (isPortrait(page) ? 2 : 1) * ROW_HEIGHT;
const cautionHeight = (page: PageSize) => CAUTION_HEIGHT[isPortrait(page) ? 1 : 0];

/** Returns the whole sheet as an SVG document. `definitions` and `content` are SVG; `content` is drawn within the frame. */
export function drawPage(facts: PageFacts, definitions: string, content: string): string {
  const { width, height } = facts.page;
  const frame = frameOf(facts.page);
  const box = { fill: 'none', stroke: COLOR.ink, 'stroke-width': LINE_MM.frame };
  return pageDocument(
    { width, height },
    escapedTitle(facts),
    definitions ? element('defs', {}, definitions) : '',
    content,
    drawCautions(facts.page, facts.words ? TYPE_MM.lead : TYPE_MM.small),
    drawTitleBlock(facts),
    rectElement(frame.x, frame.y, frame.width, frame.height, box),
  );
}

/** Returns a page of paper as an SVG document, mm. `title` must be escaped already. */
export function pageDocument({ width, height }: PageSize, title: string, ...parts: readonly string[]): string {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `0 0 ${num(width)} ${num(height)}`,
      ...SET_AS_MEASURED,
      role: 'document',
    },
    element('title', {}, title),
    rectElement(0, 0, width, height, { fill: COLOR.paper }),
    ...parts,
  );
}

function escapedTitle({ plan, levelName, sheet, words, inDocument = words }: PageFacts): string {
  const text = `${plan.title || 'Plan without a title'}, ${levelName}, ${inDocument ? 'page' : 'sheet'} ${sheet}`;
  return escapeXml(text);
}

/** One line in landscape, two in portrait, in the largest type that fits. */
function drawCautions(page: PageSize, most: number): string {
  const { x, y, width, height } = frameOf(page);
  const tall = cautionHeight(page);
  const top = y + height - titleHeight(page) - tall;
  const rows = isPortrait(page) ? 2 : 1;
  const { lines, size } = fittingLines(CAUTIONS.join('  '), width - 6, rows, most);
  const step = lineHeight({ size });
  const first = top + tall / 2 + size * 0.33 - ((lines.length - 1) * step) / 2;
  return (
    line(x, top, x + width, top, { stroke: COLOR.ink, 'stroke-width': LINE_MM.box }) +
    lines.map((text, i) => drawText(x + width / 2, first + i * step, text, { size, anchor: 'middle' })).join('')
  );
}

function fittingLines(text: string, width: number, rows: number, most: number) {
  if (rows === 1) return { lines: [text], size: Math.min(most, (most * width) / textWidth(text, { size: most })) };
  let size = most;
  while (wrapText(text, width, { size }).length > rows) size -= 0.05;
  return { lines: balancedText(text, width, { size }), size };
}

interface Cell {
  readonly heading: string;
  readonly text: string;
  readonly second?: string;
  /** Width, mm; a cell of 0 takes the rest of the row. */
  readonly width: number;
  readonly bold?: boolean;
}

function drawTitleBlock(facts: PageFacts): string {
  const { x, y, width, height } = frameOf(facts.page);
  const top = y + height - titleHeight(facts.page);
  const rows = titleRows(facts);
  return rows.map((cells, i) => drawRow(cells, { x, y: top + i * ROW_HEIGHT, width, height: ROW_HEIGHT }, i)).join('');
}

function drawRow(cells: readonly Cell[], { x, y, width, height }: Area, index: number): string {
  const free = width - cells.reduce((sum, cell) => sum + cell.width, 0);
  let left = x;
  const weight = index === 0 ? LINE_MM.frame : LINE_MM.box;
  const parts = [line(x, y, x + width, y, { stroke: COLOR.ink, 'stroke-width': weight })];
  for (const cell of cells) {
    const wide = cell.width || free;
    if (left > x) parts.push(line(left, y, left, y + height, { stroke: COLOR.ink, 'stroke-width': LINE_MM.box }));
    parts.push(drawCell(cell, left + 2, y, wide - 4));
    left += wide;
  }
  return parts.join('');
}

/** Title, owner, date, sheet: ISO 7200. Scale and author are between owner and date; in portrait they begin the second row. */
function titleRows({
  page,
  plan,
  levelName,
  date,
  scale,
  sheet,
  sheets,
  words,
  inDocument = words,
}: PageFacts): readonly (readonly Cell[])[] {
  const first: readonly Cell[] = [
    { heading: 'Title', text: plan.title || 'Plan without a title', second: levelName, width: 0, bold: true },
    { heading: 'Owner, property', text: plan.site.label || 'not given', width: words || isPortrait(page) ? 72 : 62 },
  ];
  const second: readonly Cell[] = [
    ...(words ? [] : [{ heading: 'Scale on paper', text: scale || 'no drawing', width: 34 }, drawnCell(plan)]),
    { heading: words ? 'Date' : 'Date of printing', text: date, width: isPortrait(page) ? 0 : 36 },
    { heading: inDocument ? 'Page' : 'Sheet', text: `${sheet} of ${sheets}`, width: 18 },
  ];
  return isPortrait(page) ? [first, second] : [[...first, ...second]];
}

/** Who drew the plan, and when, as recorded; never the person who prints it. */
function drawnCell(plan: Plan): Cell {
  const { by = '', at = null } = plan.report?.drawing ?? {};
  const drawn = msOf(at);
  const zone = plan.site.timeZone;
  const day = drawn === null ? '' : formatDate(drawn, zone, { year: true });
  return { heading: 'Drawn by', text: by.trim() || 'not recorded', ...(day ? { second: day } : {}), width: 40 };
}

function drawCell({ heading, text, second, bold = false }: Cell, x: number, top: number, width: number): string {
  const weight = bold ? 'bold' : 'regular';
  const head = drawText(x, top + 3.2, heading, { size: TYPE_MM.fine, color: COLOR.inkSoft });
  const rows = second ? 1 : 2;
  const { lines, style } = fitted(text, width, rows, { size: bold ? TYPE_MM.title : TYPE_MM.lead, weight });
  const body = lines.map((one, i) => drawText(x, top + 7.8 + i * lineHeight(style), one, style)).join('');
  const under = second
    ? drawText(x, top + 12.2, shortened(second, width, { size: TYPE_MM.lead }), { size: TYPE_MM.lead })
    : '';
  return head + body + under;
}

/** In the largest type that fits in `rows` lines; shortened at the least size, because the sheet with the tables has the whole text. */
function fitted(
  text: string,
  width: number,
  rows: number,
  style: TextStyle,
): { lines: readonly string[]; style: TextStyle } {
  for (let size = style.size; size > TYPE_MM.small; size -= 0.2) {
    const tried = { ...style, size };
    const lines = wrapText(text, width, tried);
    if (lines.length <= (size > TYPE_MM.lead ? 1 : rows)) return { lines, style: tried };
  }
  const least = { ...style, size: TYPE_MM.small };
  const lines = wrapText(text, width, least);
  const last = lines.slice(rows - 1).join(' ');
  return { lines: [...lines.slice(0, rows - 1), shortened(last, width, least)], style: least };
}
