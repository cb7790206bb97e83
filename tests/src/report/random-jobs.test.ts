import { describe, expect, it } from 'vitest';
import { fontFiles, withEmbeddedFont } from '../../../src/cli/paper/fonts.ts';
import { rasterize } from '../../../src/cli/paper/raster.ts';
import { drawDocument, type VisitDocument } from '../../../src/report/documents/draw-document.ts';
import { drawSheets } from '../../../src/report/draw-sheets.ts';
import { ORIENTATIONS, PAPER_NAMES } from '../../../src/report/paper.ts';
import { pagesToPdf } from '../../../src/report/pdf/pdf.ts';
import { howMany } from '../../helpers/how-many.ts';
import { pageProblems } from '../../helpers/page-problems.ts';
import { type ReadPage, readPdf } from '../../helpers/pdf-reader.ts';
import { structureProblems } from '../../helpers/pdf-structure.ts';
import { drawnByPdfium, inWholePixels, seenByPdfium } from '../../helpers/pdfium.ts';
import { noticedDifference } from '../../helpers/picture-difference.ts';
import { randomJob } from '../../helpers/random-job.ts';
import { textsWithOtherInk } from '../../helpers/text-ink.ts';
import { lettersOf, type TextStart, textStarts } from '../../helpers/text-starts.ts';

const JOBS = Number(process.env.STILLSPOT_JOBS ?? howMany(1, 8));
/** A long run may be made in parts. */
const FIRST = Number(process.env.STILLSPOT_FIRST_JOB ?? 1);
const NOTICES: readonly VisitDocument[] = [
  'notice',
  'entrance-notice',
  'door-hanger',
  'agreement',
  'placement-card',
  'log',
];
const date = '2026-03-20';
const fonts = fontFiles();

/** Twice that of the hatches. */
const DPI = 192;
const MOST = 0.005;
/** In a long run the picture of every page is compared, else that of the first of each job. */
const PICTURED = JOBS > 10 ? Number.POSITIVE_INFINITY : 1;

/** The sheets of every level, the report and one of the notices, on one paper after another, across and upright. */
function pagesOf(seed: number): readonly string[] {
  const paper = PAPER_NAMES[seed % PAPER_NAMES.length] ?? 'letter';
  const orientation = [...ORIENTATIONS, undefined][Math.floor(seed / PAPER_NAMES.length) % 3];
  const order = { plan: randomJob(seed), paper, orientation, date };
  const notice = NOTICES[seed % NOTICES.length] ?? 'notice';
  return [
    ...order.plan.levels.flatMap(({ id }) => drawSheets({ ...order, levelId: id })),
    ...drawDocument('report', order),
    ...drawDocument(notice, order),
  ];
}

/** Texts that a reader of the PDF does not get, or not after those that are drawn before them, which is the order of reading. */
function outOfOrder(starts: readonly TextStart[], { texts }: ReadPage): readonly string[] {
  const letters = lettersOf(texts.map(({ text }) => text));
  let from = 0;
  return starts.flatMap(({ text }) => {
    const at = letters.indexOf(lettersOf([text]), from);
    if (at < 0) return [text];
    from = at + lettersOf([text]).length;
    return [];
  });
}

/** Texts of the page that the PDF does not have at their place, mm of paper. */
function strayTexts(starts: readonly TextStart[], { texts }: ReadPage): readonly string[] {
  const isThere = ({ text, x, y }: TextStart) =>
    texts.some(
      (read) =>
        Math.hypot(read.x - x, read.y - y) < 0.02 && lettersOf([text]).startsWith(lettersOf([read.text.slice(0, 3)])),
    );
  return starts.filter((start) => !isThere(start)).map(({ text, x, y }) => `"${text}" at ${x}, ${y}`);
}

/** Returns the share of pixels in which the PNG of a page differs from the picture of the PDF's. Every text must be in both. */
async function pictureDifference(svg: string, bytes: Uint8Array, index: number): Promise<number> {
  const { width, height, pixels } = await drawnByPdfium(bytes, index, DPI);
  const drawn = rasterize(svg, width);
  expect({ width: drawn.width, height: drawn.height }).toEqual({ width, height });
  const [png, pdf] = [
    { width, height, data: drawn.pixels },
    { width, height, data: pixels },
  ];
  expect.soft(textsWithOtherInk(svg, png, pdf, DPI), `page ${index + 1}`).toEqual([]);
  return noticedDifference(png, pdf);
}

describe('the papers of random jobs', () => {
  it(`have the same texts at the same places as SVG, PNG and PDF, none over another or beyond the page: ${JOBS} jobs`, async () => {
    let [pages, texts, most] = [0, 0, 0];
    const differing: string[] = [];
    for (let seed = FIRST; seed < FIRST + JOBS; seed++) {
      const drawn = pagesOf(seed);
      const { bytes, lacking } = await pagesToPdf(drawn, { title: 'Job', date, fonts });
      const read = await readPdf(bytes, { shapes: false });
      expect.soft(structureProblems(bytes), `seed ${seed}`).toEqual([]);
      const seen = await seenByPdfium(bytes);
      // Soft: of a long run every failure is told, not the first alone.
      expect.soft({ seed, lacking, pages: read.pages.length }).toEqual({ seed, lacking: [], pages: drawn.length });
      expect.soft(pageProblems(drawn), `seed ${seed}`).toEqual([]);
      drawn.forEach((svg, i) => {
        const starts = textStarts(svg);
        expect.soft(svg).not.toContain('<script');
        // What is saved as SVG, and what the PNG is drawn from, is the page with its fonts.
        expect.soft(textStarts(withEmbeddedFont(svg))).toEqual(starts);
        expect.soft(strayTexts(starts, read.pages[i] as ReadPage), `seed ${seed}, page ${i + 1}`).toEqual([]);
        expect.soft(outOfOrder(starts, read.pages[i] as ReadPage), `seed ${seed}, page ${i + 1}`).toEqual([]);
        const second = lettersOf([seen[i]?.text ?? '']);
        expect
          .soft(
            starts.filter(({ text }) => !second.includes(lettersOf([text]))),
            `seed ${seed}`,
          )
          .toEqual([]);
        texts += starts.length;
      });
      const cut = drawn.slice(0, PICTURED).map((svg) => inWholePixels(svg, DPI));
      const pictured = await pagesToPdf(cut, { title: 'Job', date, fonts });
      for (const [index, svg] of cut.entries()) {
        const share = await pictureDifference(svg, pictured.bytes, index);
        most = Math.max(most, share);
        if (share > MOST) differing.push(`seed ${seed}, page ${index + 1}: ${share}`);
      }
      pages += drawn.length;
    }
    if (JOBS > 10) console.info(`${pages} pages, ${texts} texts, pictures differ in at most ${most * 100} %`);
    expect(differing).toEqual([]);
    expect(pages).toBeGreaterThan(4 * JOBS);
    expect(texts).toBeGreaterThan(50 * pages);
  }, 7_200_000);
});
