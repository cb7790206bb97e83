/** Writes drawn pages as one PDF: vectors, embedded fonts, text in reading order, tags, bookmarks. The same bytes in browser and Node. */
import { type FontFiles, PageFonts } from './fonts.ts';
import { pageHatches } from './hatches.ts';
import { type Brush, paintElement } from './paint.ts';
import { createPdf, type PdfDocument, type StructureElement } from './pdf-library.ts';
import { readSvg, type SvgElement } from './read-svg.ts';
import { StructureWriter } from './structure.ts';

export interface PdfOptions {
  readonly title: string;
  /** ISO 8601 date of printing: this code has no clock. */
  readonly date: string;
  readonly fonts: FontFiles;
}

export interface Pdf {
  readonly bytes: Uint8Array;
  /** Letters that the font does not have: drawn as empty boxes, and to be reported to the user. */
  readonly lacking: readonly string[];
}

const POINTS_PER_MM = 72 / 25.4;
const SVG_DEFINITIONS = new Set(['title', 'defs', 'clipPath', 'pattern', 'style']);

/** Returns the PDF of pages drawn as SVG, mm. Rejects if a page has an element that the PDF code cannot draw: our own mistake. */
export async function pagesToPdf(pages: readonly string[], { title, date, fonts }: PdfOptions): Promise<Pdf> {
  const doc = createPdf({
    autoFirstPage: false,
    font: null,
    margin: 0,
    tagged: true,
    lang: 'en-US',
    displayTitle: true,
    pdfVersion: '1.7',
    info: { Title: title, Producer: 'Stillspot', Creator: 'Stillspot', CreationDate: dayOf(date) },
  });
  const bytes = collect(doc);
  const pageFonts = new PageFonts(doc, fonts);
  const root = doc.struct('Document', { title });
  doc.addStructure(root);
  for (const [index, page] of pages.entries()) paintPage(doc, readSvg(page), pageFonts, root, `Page ${index + 1}`);
  root.end();
  doc.end();
  return { bytes: await bytes, lacking: [...pageFonts.lacking] };
}

function paintPage(
  doc: PdfDocument,
  svg: SvgElement,
  fonts: PageFonts,
  root: StructureElement,
  fallback: string,
): void {
  const [, , width = 0, height = 0] = (svg.attributes.viewBox ?? '').split(' ').map(Number);
  doc.addPage({ size: [width * POINTS_PER_MM, height * POINTS_PER_MM], margin: 0 });
  doc.scale(POINTS_PER_MM);
  const all = [...everyElement(svg)];
  const brush: Brush = {
    doc,
    fonts,
    hatches: pageHatches(
      doc,
      all.filter(({ name }) => name === 'pattern'),
    ),
    clips: new Map(
      all.flatMap(({ name, attributes, children: [shape] }) =>
        name === 'clipPath' && shape ? [[attributes.id ?? '', shape] as const] : [],
      ),
    ),
  };
  const writer = new StructureWriter(doc, root);
  const paintAll = (children: readonly SvgElement[]): void => {
    for (const child of children) {
      if (SVG_DEFINITIONS.has(child.name)) continue;
      writer.around(child, () => paintElement(brush, child, paintAll));
    }
  };
  paintAll(svg.children);
  writer.end();
  doc.outline.addItem(svg.children.find(({ name }) => name === 'title')?.text || fallback);
}

function* everyElement(element: SvgElement): Generator<SvgElement> {
  yield element;
  for (const child of element.children) yield* everyElement(child);
}

function collect(doc: PdfDocument): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve) => {
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('end', () => resolve(joined(chunks)));
  });
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

/** Noon in UTC, so that time zones up to 11 h from UTC show the same day. */
function dayOf(date: string): Date {
  const day = new Date(`${date}T12:00:00Z`);
  return Number.isNaN(day.getTime()) ? new Date(0) : day;
}
