/** What every sheet has: the frame, the cautions, and the title block at the foot in the order of ISO 7200. */
import { CAUTIONS } from '../../geometry/messages/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { type Area, frameOf, PAPERS, type PaperName } from './paper.ts';
import { COLOR, LINE_MM, TYPE_MM } from './style.ts';
import { element, escapeXml, line, num, rectElement } from './svg.ts';
import { drawText, lineHeight, shortened, type TextStyle, textWidth, wrapText } from './text.ts';

export interface PageFacts {
  readonly paper: PaperName;
  readonly plan: Plan;
  readonly levelName: string;
  /** As it shall be read, e.g. "2026-11-25". */
  readonly date: string;
  /** As it shall be read; empty where nothing is drawn to scale. */
  readonly scale: string;
  readonly sheet: number;
  readonly sheets: number;
  /** A page of words, read by people in the house: no scale, larger cautions. */
  readonly words?: boolean;
}

const TITLE_HEIGHT = 14;
const CAUTION_HEIGHT = 5.6;
export const FONT_FAMILY = `'Atkinson Hyperlegible Next', sans-serif`;

/** What is left for the sheet's own matter, mm. */
export function contentArea(paper: PaperName): Area {
  const frame = frameOf(paper);
  return { ...frame, height: frame.height - TITLE_HEIGHT - CAUTION_HEIGHT };
}

/** The whole sheet as an SVG document. `content` is drawn within the frame. */
export function drawPage(facts: PageFacts, definitions: string, content: string): string {
  const { width, height } = PAPERS[facts.paper];
  const frame = frameOf(facts.paper);
  const box = { fill: 'none', stroke: COLOR.ink, 'stroke-width': LINE_MM.frame };
  return pageDocument(
    { width, height },
    escapedTitle(facts),
    definitions ? element('defs', {}, definitions) : '',
    content,
    drawCautions(frame, facts.words ? TYPE_MM.lead : TYPE_MM.small),
    drawTitleBlock(facts, frame),
    rectElement(frame.x, frame.y, frame.width, frame.height, box),
  );
}

/** A page of paper as an SVG document, mm; `title` is escaped. */
export function pageDocument(
  { width, height }: Pick<Area, 'width' | 'height'>,
  title: string,
  ...parts: readonly string[]
): string {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `0 0 ${num(width)} ${num(height)}`,
      'font-family': FONT_FAMILY,
      // Widths are summed letter by letter, so letters must not be moved together or joined.
      style: 'font-kerning:none;font-variant-ligatures:none',
      role: 'document',
    },
    element('title', {}, title),
    rectElement(0, 0, width, height, { fill: COLOR.paper }),
    ...parts,
  );
}

function escapedTitle({ plan, levelName, sheet }: PageFacts): string {
  const text = `${plan.title || 'Plan without a title'}, ${levelName}, sheet ${sheet}`;
  return escapeXml(text);
}

/** One line across, in type that is made smaller until it fits. */
function drawCautions({ x, y, width, height }: Area, most: number): string {
  const top = y + height - TITLE_HEIGHT - CAUTION_HEIGHT;
  const text = CAUTIONS.join('  ');
  const size = Math.min(most, (most * (width - 6)) / textWidth(text, { size: most }));
  return (
    line(x, top, x + width, top, { stroke: COLOR.ink, 'stroke-width': LINE_MM.box }) +
    drawText(x + width / 2, top + CAUTION_HEIGHT / 2 + size * 0.33, text, { size, anchor: 'middle' })
  );
}

interface Cell {
  readonly heading: string;
  readonly text: string;
  readonly second?: string;
  /** Share of the width, mm; 0 takes what is left. */
  readonly width: number;
  readonly bold?: boolean;
}

function drawTitleBlock(facts: PageFacts, { x, y, width, height }: Area): string {
  const top = y + height - TITLE_HEIGHT;
  const cells = titleCells(facts);
  const free = width - cells.reduce((sum, cell) => sum + cell.width, 0);
  let left = x;
  const parts = [line(x, top, x + width, top, { stroke: COLOR.ink, 'stroke-width': LINE_MM.frame })];
  for (const cell of cells) {
    const wide = cell.width || free;
    if (left > x)
      parts.push(line(left, top, left, top + TITLE_HEIGHT, { stroke: COLOR.ink, 'stroke-width': LINE_MM.box }));
    parts.push(drawCell(cell, left + 2, top, wide - 4));
    left += wide;
  }
  return parts.join('');
}

/** Title, owner, date, sheet: ISO 7200. The scale stands between owner and date. */
function titleCells({ plan, levelName, date, scale, sheet, sheets, words }: PageFacts): readonly Cell[] {
  return [
    { heading: 'Title', text: plan.title || 'Plan without a title', second: levelName, width: 0, bold: true },
    { heading: 'Owner, property', text: plan.site.label || 'not given', width: 72 },
    ...(words ? [] : [{ heading: 'Scale on paper', text: scale || 'no drawing', width: 40 }]),
    { heading: 'Date', text: date, width: words ? 40 : 34 },
    { heading: words ? 'Page' : 'Sheet', text: `${sheet} of ${sheets}`, width: 20 },
  ];
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

/** As large as fits in so many lines; at the least size shortened, for the whole stands on the sheet with the tables. */
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
