import { describe, expect, it } from 'vitest';
import { fontFiles } from '../../../../src/cli/paper/fonts.ts';
import { rasterize } from '../../../../src/cli/paper/raster.ts';
import { filesOfPages } from '../../../../src/cli/paper/write-pages.ts';
import { drawDocument, type VisitDocument } from '../../../../src/report/documents/draw-document.ts';
import { drawSheets } from '../../../../src/report/draw-sheets.ts';
import { pageDocument } from '../../../../src/report/page-frame.ts';
import { sizeOfPage } from '../../../../src/report/paper.ts';
import { pagesToPdf } from '../../../../src/report/pdf/pdf.ts';
import { drawText } from '../../../../src/report/text.ts';
import { isLongRun, someOf } from '../../../helpers/how-many.ts';
import { drawnByPdfium } from '../../../helpers/pdfium.ts';
import { noticedDifference } from '../../../helpers/picture-difference.ts';
import { SAMPLE_NAMES, samplePlan } from '../../../helpers/sample-files.ts';
import { textsWithOtherInk } from '../../../helpers/text-ink.ts';
import { textStarts } from '../../../helpers/text-starts.ts';

const date = '2026-03-07';
/** Twice that of the hatches: PDFium repeats a cell after a whole number of px, whatever its size. */
const DPI = 192;
/** Share of the pixels of a page in which the pictures of SVG and PDF may differ noticeably: the two smooth the edges of letters in different ways. */
const MOST = 0.005;
const NAMES = isLongRun ? SAMPLE_NAMES : (['06-sale-report'] as const);
const DOCUMENTS: readonly VisitDocument[] = [
  'report',
  'notice',
  'entrance-notice',
  'agreement',
  'placement-card',
  'log',
];

function pagesOf(name: string): readonly string[] {
  const order = { plan: samplePlan(name), paper: 'letter', date } as const;
  return [
    ...order.plan.levels.flatMap(({ id }) => drawSheets({ ...order, levelId: id })),
    ...DOCUMENTS.flatMap((document) => drawDocument(document, order)),
  ];
}

describe('the files of a page', () => {
  it('are one description: the SVG is the page with its fonts, the PNG the picture of the page, byte by byte', async () => {
    const plan = samplePlan('01-plain-basement');
    const pages = drawSheets({ plan, levelId: 'L1', paper: 'letter', date });
    const filesOf = async (format: string) =>
      (await filesOfPages({ path: `x.${format}`, format }, pages, { plan, date })).files.map(({ bytes }) => bytes);
    const withoutFonts = (await filesOf('svg')).map((svg) => String(svg).replace(/<style>.*?<\/style>/s, ''));
    expect(withoutFonts).toEqual(pages);
    const pictures = await filesOf('png');
    expect(pictures.length).toBe(pages.length);
    pages.forEach((page, i) => {
      const width = Math.round((sizeOfPage(page).width * 200) / 25.4);
      expect(Buffer.compare(Buffer.from(pictures[i] as Uint8Array), rasterize(page, width).png)).toBe(0);
    });
  });
});

describe('the picture of a page beside that of the PDF in a second reader', () => {
  it.each(NAMES)('has every text at its place, and is the same but for the edges of letters: %s', async (name) => {
    const pages = someOf(pagesOf(name), 4);
    const { bytes } = await pagesToPdf(pages, { title: name, date, fonts: fontFiles() });
    const shares: number[] = [];
    for (const [index, svg] of pages.entries()) {
      const { width, height, pixels } = await drawnByPdfium(bytes, index, DPI);
      const png = rasterize(svg, width);
      const [picture, read] = [png.pixels, pixels].map((data) => ({ width, height, data }));
      if (!picture || !read) throw new Error('two pictures');
      expect([png.width, png.height]).toEqual([width, height]);
      expect(textsWithOtherInk(svg, picture, read, DPI), `page ${index + 1}`).toEqual([]);
      shares.push(noticedDifference(picture, read));
    }
    if (isLongRun) console.info(name, pages.length, 'pages, at most', (Math.max(...shares) * 100).toFixed(3), '%');
    expect(Math.max(...shares)).toBeLessThan(MOST);
  });

  it('has every space that a name has, at its beginning too', async () => {
    const text = drawText(10, 12, '  H1   beside   the  stair', { size: 4 });
    const turned = drawText(20, 50, 'two   spaces  up', { size: 4 }, { transform: 'rotate(-90 20 50)' });
    const svg = pageDocument({ width: 80, height: 60 }, 'x', text, turned);
    const { bytes } = await pagesToPdf([svg], { title: 'x', date, fonts: fontFiles() });
    const { width, height, pixels } = await drawnByPdfium(bytes, 0, DPI);
    const { pixels: data } = rasterize(svg, width);
    expect(textsWithOtherInk(svg, { width, height, data }, { width, height, data: pixels }, DPI)).toEqual([]);
  });

  it.each(['regular', 'bold'] as const)('has letters of both font files in one word, %s', async (weight) => {
    const words = ['Łódź, Ångström', 'Şişli', 'x & Ő "ř" <b>'];
    const texts = words.map((word, i) => drawText(40, 10 + 12 * i, word, { size: 5, weight, anchor: 'middle' }));
    const turned = drawText(72, 50, 'Žďár Łęg', { size: 5, weight }, { transform: 'rotate(-90 72 50)' });
    const svg = pageDocument({ width: 80, height: 60 }, 'x', ...texts, turned);
    const { bytes } = await pagesToPdf([svg], { title: 'x', date, fonts: fontFiles() });
    const { width, height, pixels } = await drawnByPdfium(bytes, 0, DPI);
    const { pixels: data } = rasterize(svg, width);
    expect(textsWithOtherInk(svg, { width, height, data }, { width, height, data: pixels }, DPI)).toEqual([]);
    expect(noticedDifference({ width, height, data }, { width, height, data: pixels })).toBeLessThan(MOST);
  });

  it('finds a text that is missing from the picture', async () => {
    const [svg = ''] = pagesOf('06-sale-report');
    const { bytes } = await pagesToPdf([svg], { title: 'x', date, fonts: fontFiles() });
    const { width, height, pixels } = await drawnByPdfium(bytes, 0, DPI);
    const { text } = textStarts(svg).find((each) => each.text === 'A1 clear' || each.text.startsWith('Tape')) ?? {
      text: '',
    };
    const without = rasterize(svg.replace(`>${text}<`, '><'), width);
    const found = textsWithOtherInk(svg, { width, height, data: without.pixels }, { width, height, data: pixels }, DPI);
    expect(found.length).toBe(1);
  });
});
