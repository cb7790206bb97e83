/** Pieces that the papers of a job share: type for reading at a door, rows with a box, lines to write on, pages in columns. */
import type { Plan } from '../../geometry/index.ts';
import { msOf, saidInstant, wallTime } from '../job/timing/clock.ts';
import { type Block, besides, indented, paragraph, space, stack } from '../sheet/block.ts';
import { drawFilled, fillColumns } from '../sheet/flow.ts';
import { contentArea, drawPage } from '../sheet/page-frame.ts';
import { type Area, inset, type PaperName } from '../sheet/paper.ts';
import { COLOUR, LINE_MM } from '../sheet/style.ts';
import { line, rectangle } from '../sheet/svg.ts';
import type { TextStyle } from '../sheet/text.ts';

/** What a paper is made of. */
export interface PaperOrder {
  readonly plan: Plan;
  readonly paper: PaperName;
  /** As it shall be read: this code has no clock. */
  readonly date: string;
}

/** Type sizes, mm: larger than on the drawing, for these are read standing. */
export const READ: TextStyle = { size: 3.7 };
export const READ_SOFT: TextStyle = { size: 3.2, colour: COLOUR.inkSoft };
export const READ_HEAD: TextStyle = { size: 4.6, weight: 'bold' };
export const READ_TITLE: TextStyle = { size: 8.6, weight: 'bold' };

const PAD = 7;
const GUTTER = 10;
/** Room to write by hand, mm. */
const HAND = 9;

/** "Saturday 7 March 2026, 18:00" by the clock of the site; `otherwise` where it is not known. */
export function saidAt(text: string | null | undefined, { site }: Plan, otherwise: string): string {
  const at = msOf(text);
  if (at === null) return otherwise;
  return saidInstant(at, site.timeZone).replace(',', ` ${wallTime(at, site.timeZone).year},`);
}

export function clockLine({ site }: Plan): string {
  return `Times by the clock of ${site.timeZone.replaceAll('_', ' ')}.`;
}

/** A sentence with an empty box before it, to be ticked. */
export function ticked(text: string, width: number, style: TextStyle = READ): Block {
  const side = style.size * 0.8;
  const words = indented(paragraph(text, width - side * 2, style), side * 2);
  return {
    height: words.height,
    draw: (x, y) =>
      rectangle(x + 0.2, y + style.size * 0.26, side, side, {
        fill: 'none',
        stroke: COLOUR.ink,
        'stroke-width': LINE_MM.box,
      }) + words.draw(x, y),
  };
}

/** A line to write on, what belongs there in small type under it. */
export function toWrite(label: string, width: number): Block {
  const words = paragraph(label, width, READ_SOFT);
  return {
    height: HAND + words.height + 1,
    draw: (x, y) =>
      line(x, y + HAND, x + width, y + HAND, { stroke: COLOUR.ink, 'stroke-width': LINE_MM.box }) +
      words.draw(x, y + HAND + 0.6),
  };
}

/** Lines to write on, next to one another. */
export function toWriteBeside(labels: readonly string[], width: number): Block {
  const each = (width - (labels.length - 1) * 5) / labels.length;
  return besides(labels.map((label, i) => ({ left: i * (each + 5), block: toWrite(label, each) })));
}

export const heading = (text: string, width: number): Block =>
  stack([space(1.6), paragraph(text, width, READ_HEAD), space(0.4)]);

/** Columns of one page, and how wide text in them may be. */
export function columnsOf(paper: PaperName, count: number): readonly Area[] {
  const { x, y, width, height } = inset(contentArea(paper), PAD);
  const each = (width - (count - 1) * GUTTER) / count;
  return Array.from({ length: count }, (_, i) => ({ x: x + i * (each + GUTTER), y, width: each, height }));
}

/** The blocks in columns, over as many pages as they need. */
export function pagesInColumns(blocks: readonly Block[], columns: readonly Area[], gap: number): readonly string[] {
  const pages: string[] = [];
  for (let rest = blocks; rest.length > 0; ) {
    const filled = fillColumns(rest, columns, gap);
    if (filled.placed.length === 0) throw new Error('A piece of the paper is higher than the paper.');
    pages.push(drawFilled(filled));
    rest = filled.rest;
  }
  return pages;
}

/** Each page in its frame, with the cautions and the title block at its foot. */
export function framed({ plan, paper, date }: PaperOrder, name: string, pages: readonly string[]): readonly string[] {
  return pages.map((content, i) =>
    drawPage({ paper, plan, levelName: name, date, scale: '', sheet: i + 1, sheets: pages.length }, '', content),
  );
}

/** A word in the middle of a width. */
export const centred = (text: string, width: number, style: TextStyle): Block =>
  paragraph(text, width, { ...style, anchor: 'middle' });
