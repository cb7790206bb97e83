/** Blocks that the documents of a test share: check boxes, blank lines to write on, pages in columns. */

import type { Plan } from '../../../geometry/plan/model.ts';
import type { Computed } from '../../../geometry/recheck/compare.ts';
import type { Ms } from '../../protocol/timing/clock.ts';
import { type Block, besides, indented, paragraph, space, stack, withRole } from '../block.ts';
import { drawFilled, fillColumns } from '../flow.ts';
import { contentArea, drawPage } from '../page-frame.ts';
import { type Area, inset, type PageChoice, type PageSize, pageSize } from '../paper.ts';
import { COLOR, LINE_MM } from '../style.ts';
import { element, line, rectElement } from '../svg.ts';
import { drawText, shortened, type TextStyle, textWidth } from '../text.ts';
import { formatPrinted, type Printing, type TestTime } from './format-times.ts';

/** Input of a document. */
export interface DocumentOrder extends PageChoice, Printing {
  readonly plan: Plan;
  /** Outcome of the second computation by detector id; left out, the document states that verdicts were computed once. */
  readonly computed?: ReadonlyMap<string, Computed>;
  /** Time of printing, ms: events recorded for later have not happened yet. Left out, all recorded events have. */
  readonly now?: Ms;
}

/** Returns the size of the document's pages: landscape unless the order names another orientation. */
export const pageOf = ({ paper, orientation = 'landscape' }: PageChoice): PageSize => pageSize(paper, orientation);

/** Type sizes, mm: larger than on the plan, for reading at a distance. */
export const READ_TEXT: TextStyle = { size: 3.7 };
export const READ_SOFT: TextStyle = { size: 3.1, color: COLOR.inkSoft };
const READ_HEAD: TextStyle = { size: 4.6, weight: 'bold' };
const READ_TITLE: TextStyle = { size: 9, weight: 'bold' };

const PAD = 7;
const GUTTER = 10;
/** Least type size of text that is filled in, mm. */
const LEAST_WRITTEN = 2.75;
/** Height of a line to write on, mm. */
const WRITING_LINE = 9;
const BOX = { fill: 'none', stroke: COLOR.ink, 'stroke-width': LINE_MM.box } as const;

/** Returns a sentence with a check box, crossed where `crossed`. */
export function checkBox(text: string, width: number, style: TextStyle = READ_TEXT, crossed = false): Block {
  const side = style.size * 0.8;
  return marked(text, width, style, (x, y) => {
    const top = y + style.size * 0.26;
    const cross = { stroke: COLOR.ink, 'stroke-width': LINE_MM.frame };
    return (
      rectElement(x + 0.2, top, side, side, BOX) +
      (crossed
        ? line(x + 0.2, top, x + 0.2 + side, top + side, cross) + line(x + 0.2 + side, top, x + 0.2, top + side, cross)
        : '')
    );
  });
}

/** Returns a sentence with a bullet. */
export function bullet(text: string, width: number, style: TextStyle = READ_TEXT): Block {
  return marked(text, width, style, (x, y) =>
    element('circle', { cx: x + style.size * 0.5, cy: y + style.size * 0.66, r: style.size * 0.16, fill: COLOR.ink }),
  );
}

function marked(text: string, width: number, style: TextStyle, mark: (x: number, y: number) => string): Block {
  const left = style.size * 1.5;
  const words = indented(paragraph(text, width - left, style), left);
  return { height: words.height, draw: (x, y) => mark(x, y) + words.draw(x, y) };
}

/** Returns a line to write on with its label below, filled in with `written`; a long text is set in smaller type. */
export function blankLine(label: string, width: number, written = ''): Block {
  const words = paragraph(label, width, READ_SOFT);
  const long = textWidth(written, READ_TEXT);
  const style = {
    size: Math.max(LEAST_WRITTEN, Math.min(READ_TEXT.size, (READ_TEXT.size * (width - 2)) / (long || 1))),
  };
  return {
    height: WRITING_LINE + words.height + 1,
    draw: (x, y) =>
      (written ? drawText(x + 1, y + WRITING_LINE - 1.4, shortened(written, width - 2, style), style) : '') +
      line(x, y + WRITING_LINE, x + width, y + WRITING_LINE, BOX) +
      words.draw(x, y + WRITING_LINE + 0.6),
  };
}

/** Returns lines to write on, side by side. */
export function blankLines(
  labels: readonly (string | readonly [label: string, written: string])[],
  width: number,
): Block {
  const each = (width - (labels.length - 1) * 5) / labels.length;
  return besides(
    labels.map((label, i) => {
      const [words, written] = typeof label === 'string' ? [label, ''] : label;
      return { left: i * (each + 5), block: blankLine(words, each, written) };
    }),
  );
}

/** Returns check boxes side by side. */
export function checkBoxes(words: readonly string[], width: number, style: TextStyle = READ_TEXT): Block {
  const each = width / words.length;
  return besides(words.map((text, i) => ({ left: i * each, block: checkBox(text, each - 1, style) })));
}

/** Returns a row for each time: its name, then the time, or a blank line with `otherwise` below. */
export function timeRows(times: readonly TestTime[], width: number, style: TextStyle = READ_TEXT): Block {
  const bold: TextStyle = { ...style, weight: 'bold' };
  const left = Math.min(width / 2, Math.max(...times.map(({ name }) => textWidth(name, bold))) + style.size);
  const wide = width - left;
  return stack(
    times.map(({ name, at, otherwise }) =>
      besides([
        { left: 0, block: paragraph(name, left - style.size / 2, bold) },
        { left, block: at ? paragraph(at, wide, style) : openTime(otherwise, wide, style) },
      ]),
    ),
    1,
  );
}

/** Returns a blank line on the name's baseline, with `otherwise` below. */
function openTime(otherwise: string, width: number, style: TextStyle): Block {
  const top = style.size * 1.6;
  const words = paragraph(otherwise, width, { ...READ_SOFT, size: style.size * 0.86 });
  return {
    height: top + words.height + 1.4,
    draw: (x, y) => line(x, y + top, x + width, y + top, BOX) + words.draw(x, y + top + 0.5),
  };
}

export const heading = (text: string, width: number): Block =>
  stack([space(2), withRole(paragraph(text, width, READ_HEAD), 'heading', { 'aria-level': 2 }), space(0.4)]);

/** Returns the title of a document of records. */
export const titleBlock = (text: string, width: number): Block =>
  withRole(paragraph(text, width, { size: 7.4, weight: 'bold' }), 'heading', { 'aria-level': 1 });

/** Returns the document's title across the page, with the site. */
function masthead(title: string, order: DocumentOrder): Block {
  const { plan } = order;
  const { width } = inset(contentArea(pageOf(order)), PAD);
  const under: TextStyle = { size: 4.6 };
  return stack([
    withRole(paragraph(title, width, READ_TITLE), 'heading', { 'aria-level': 1 }),
    paragraph(shortened(siteLine(plan), width, under), width, under),
    space(3),
  ]);
}

/** Longest text, characters, in a table cell or list. */
const LONG = 48;

export const isLong = (text: string): boolean => text.length > LONG;

export const clipped = (text: string): string => (isLong(text) ? `${text.slice(0, LONG - 1).trimEnd()}…` : text);

/** Returns the site's label, or the plan's title. */
export function siteLine({ site, title }: Plan): string {
  return site.label.trim() || title.trim();
}

/** Returns the columns of one page, `under` mm below its top. */
function columnsOf(page: PageSize, count: number, under = 0): readonly Area[] {
  const { x, y, width, height } = inset(contentArea(page), PAD);
  const each = (width - (count - 1) * GUTTER) / count;
  return Array.from({ length: count }, (_, i) => ({
    x: x + i * (each + GUTTER),
    y: y + under,
    width: each,
    height: height - under,
  }));
}

/** Returns pages in `count` columns, on the first page below `head`; `null` if a block is higher than every column. */
function pagesInColumns(
  head: Block,
  blocksFor: (width: number) => readonly Block[],
  page: PageSize,
  count: number,
  gap: number,
): readonly string[] | null {
  const [first, later] = [columnsOf(page, count, head.height), columnsOf(page, count)];
  const corner = later[0] as Area;
  const pages: string[] = [];
  for (let rest = blocksFor(corner.width); rest.length > 0; ) {
    const filled = fillColumns(rest, pages.length === 0 ? first : later, gap);
    if (filled.placed.length === 0) return null;
    pages.push((pages.length === 0 ? head.draw(corner.x, corner.y) : '') + drawFilled(filled));
    rest = filled.rest;
  }
  return pages;
}

/** Numbers of columns to try; the one that allows the larger type is used. */
const COLUMNS = { landscape: [2], portrait: [1, 2] } as const;

interface Handout {
  /** Printed at the top of the first page. */
  readonly title: string;
  /** Printed in the title block of each page. */
  readonly name: string;
  /** Type sizes to try, mm, the largest first. */
  readonly sizes: readonly number[];
  /** Distance between blocks, mm. */
  readonly gap: number;
}

/** Returns the pages of a document for people in the house, in the largest type with which it fits on one page, else in the smallest type. */
export function drawHandout(
  order: DocumentOrder,
  { title, name, sizes, gap }: Handout,
  blocksFor: (width: number, style: TextStyle) => readonly Block[],
): readonly string[] {
  return framed(order, name, onFewestPages(masthead(title, order), blocksFor, order, sizes, gap));
}

function onFewestPages(
  head: Block,
  blocksFor: (width: number, style: TextStyle) => readonly Block[],
  order: DocumentOrder,
  sizes: readonly number[],
  gap: number,
): readonly string[] {
  const page = pageOf(order);
  let tried: readonly string[] | null = null;
  for (const size of sizes)
    for (const count of COLUMNS[order.orientation ?? 'landscape']) {
      // In large type a block of long names can be higher than the page: smaller type makes it fit.
      const pages = pagesInColumns(head, (width) => blocksFor(width, { size }), page, count, gap);
      if (pages?.length === 1) return pages;
      tried = pages ?? tried;
    }
  if (!tried) throw new Error('A piece of the paper is higher than the paper.');
  return tried;
}

/** Returns type sizes from the largest to the smallest, mm. */
export function typeSizes(most: number, least: number): readonly number[] {
  return Array.from({ length: Math.round((most - least) / 0.1) + 1 }, (_, i) => most - i * 0.1);
}

/** Returns each page with its frame, cautions and title block. `furtherPages`: number of pages of the document that are drawn elsewhere. */
export function framed(
  order: DocumentOrder,
  name: string,
  pages: readonly string[],
  furtherPages = 0,
): readonly string[] {
  const { plan, date } = order;
  return pages.map((content, i) =>
    drawPage(
      {
        page: pageOf(order),
        plan,
        levelName: name,
        date: formatPrinted(date, plan),
        scale: '',
        sheet: i + 1,
        sheets: pages.length + furtherPages,
        words: true,
      },
      '',
      content,
    ),
  );
}

/** Returns who placed the detectors if the log names one person for all; else empty. */
export function testerOf({ log = [] }: Plan): string {
  return theOnly(log.map(({ placedBy }) => placedBy));
}

/** Returns who picked up the detectors if the log names one person for all; else empty. */
export function retrieverOf({ log = [] }: Plan): string {
  return theOnly(log.map(({ fetchedBy }) => fetchedBy));
}

function theOnly(names: readonly string[]): string {
  const different = new Set(names.map((name) => name.trim()).filter(Boolean));
  return different.size === 1 ? ([...different][0] ?? '') : '';
}
