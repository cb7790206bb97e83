import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { fontFiles } from '../../../../src/cli/paper/fonts.ts';
import { drawDocument } from '../../../../src/report/documents/draw-document.ts';
import { drawSheets } from '../../../../src/report/draw-sheets.ts';
import { PAPER_NAMES, PAPERS, type PaperName } from '../../../../src/report/paper.ts';
import { pagesToPdf } from '../../../../src/report/pdf/pdf.ts';
import { COLOR } from '../../../../src/report/style.ts';
import { type ReadPage, readPdf } from '../../../helpers/pdf-reader.ts';
import { randomPlan } from '../../../helpers/random-level.ts';
import { SAMPLE_NAMES, samplePlan } from '../../../helpers/sample-files.ts';

const DATE = '2026-03-07';
const fonts = fontFiles();
const pdfOf = (pages: readonly string[], title = 'Title') => pagesToPdf(pages, { title, date: DATE, fonts });

const sheetsOf = (plan: Plan, paper: PaperName = 'letter') =>
  plan.levels.flatMap(({ id }) => drawSheets({ plan, levelId: id, paper, date: DATE }));

interface PlacedText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

/** The texts of a page as the SVG has them, each once, with the left end of its baseline where it is not turned. */
function svgTexts(svg: string): readonly string[] {
  return [...svg.matchAll(/<text [^>]*>([^<]*)<\/text>/g)].map(([, text = '']) =>
    text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&'),
  );
}

/** Texts that begin at their x and are not turned: their place in the SVG is that of the PDF. */
function plainTexts(svg: string): readonly PlacedText[] {
  return [...svg.matchAll(/<text ([^>]*)>([^<&]*)<\/text>/g)].flatMap(([, attributes = '', text = '']) => {
    if (/text-anchor|transform|paint-order/.test(attributes) || text.trim() === '') return [];
    const of = (name: string) => Number(new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1]);
    return [{ text, x: of('x'), y: of('y') }];
  });
}

const letters = (texts: readonly string[]) => texts.join('').replaceAll(/\s/g, '');

function expectSameText(page: ReadPage, svg: string): void {
  // The edge of a text on hatches is a stroke of the same letters; pdf.js reports it as well, the SVG draws it by one element.
  const edged = [...svg.matchAll(/<text [^>]*paint-order[^>]*>([^<]*)<\/text>/g)].length;
  const drawn = letters(page.texts.map(({ text }) => text));
  if (edged === 0) expect(drawn).toBe(letters(svgTexts(svg)));
  for (const text of svgTexts(svg)) expect(drawn).toContain(letters([text]));
  for (const { text, x, y } of plainTexts(svg)) {
    const near = page.texts.some(
      (each) =>
        Math.hypot(each.x - x, each.y - y) < 0.02 && letters([text]).startsWith(letters([each.text.slice(0, 3)])),
    );
    expect(near, `"${text}" at ${x}, ${y}`).toBe(true);
  }
}

describe('a PDF of drawn pages', () => {
  it.each(SAMPLE_NAMES)('has the texts of the sheets of %s, at the same places', async (name) => {
    const pages = sheetsOf(samplePlan(name));
    const { bytes, lacking } = await pdfOf(pages);
    const read = await readPdf(bytes);
    expect(lacking).toEqual([]);
    expect(read.pages.length).toBe(pages.length);
    pages.forEach((svg, i) => {
      expectSameText(read.pages[i] as ReadPage, svg);
    });
  });

  it('has the texts of random plans', async () => {
    for (let seed = 1; seed <= 3; seed++) {
      const pages = sheetsOf(randomPlan(seed), seed % 2 ? 'a4' : 'tabloid');
      const read = await readPdf((await pdfOf(pages)).bytes);
      pages.forEach((svg, i) => {
        expectSameText(read.pages[i] as ReadPage, svg);
      });
    }
  });

  /** ISO 32000-1, 8.3.2.3: a unit of a page is 1/72 in. */
  it.each(PAPER_NAMES)(
    'is true to scale on %s: a house of 30 ft by 20 ft outside is as long as the scale says',
    async (paper) => {
      const [long, wide] = [30 * 304.8, 20 * 304.8];
      const [page] = sheetsOf(boxHouse(long, wide), paper);
      const read = await readPdf((await pdfOf([page as string])).bytes);
      const [first] = read.pages;
      expect([first?.width, first?.height].map((side) => side?.toFixed(1))).toEqual(
        [PAPERS[paper].width, PAPERS[paper].height].map((side) => side.toFixed(1)),
      );
      const words = first?.texts.map(({ text }) => text).join(' ') ?? '';
      const ratio = Number(/\(1:(\d+)\)/.exec(words)?.[1]);
      expect(ratio).toBeGreaterThan(10);
      const walls = (first?.paths ?? []).filter(({ fill }) => fill.toLowerCase() === COLOR.poche.toLowerCase());
      // The scale bar and the arrow of north are filled with the same color.
      const sizes = walls.map(({ points }) => ([0, 1] as const).map((axis) => extent(points.map((p) => p[axis]))));
      const [across = 0, down = 0] = sizes.toSorted(([a = 0, b = 0], [c = 0, d = 0]) => c * d - a * b)[0] ?? [];
      expect(Math.abs(across - long / ratio)).toBeLessThan(0.2);
      expect(Math.abs(down - wide / ratio)).toBeLessThan(0.2);
    },
  );

  it('is the same, byte by byte, each time', async () => {
    const pages = sheetsOf(samplePlan('01-plain-basement')).slice(0, 2);
    expect(Buffer.compare((await pdfOf(pages)).bytes, (await pdfOf(pages)).bytes)).toBe(0);
  });

  it('has title, language, a bookmark a page, headings and tables as such, and the plan as a figure', async () => {
    const plan = samplePlan('02-split-level');
    const pages = drawDocument('report', { plan, paper: 'letter', date: DATE });
    const read = await readPdf((await pdfOf(pages, 'Report: Kestrel Hill')).bytes);
    expect(read).toMatchObject({ title: 'Report: Kestrel Hill', language: 'en-US' });
    expect(read.bookmarks.length).toBe(pages.length);
    const all = read.pages.map(({ structure }) => structure).join(' ');
    expect(all).toMatch(/^Root\(Document\(H1 P/);
    expect(all).toMatch(/Table\(TR\(TH/);
    expect(all).toMatch(/TR\(TD TD TD/);
    expect(all).toContain('Figure');
    // A reader of the text alone hears first whether the test holds.
    const first = read.pages[0]?.texts.map(({ text }) => text).join(' ') ?? '';
    expect(first.indexOf('The test: invalid, do not use.')).toBeGreaterThan(0);
  });

  it('draws names with marked characters as text', async () => {
    const name = `<script>alert("1 & 2")</script>`;
    const plan = { ...samplePlan('01-plain-basement'), title: name };
    const [page] = sheetsOf(plan);
    const read = await readPdf((await pdfOf([page as string])).bytes);
    expect(letters(read.pages[0]?.texts.map(({ text }) => text) ?? [])).toContain(letters([name]));
  });

  it('lists letters that the font lacks', async () => {
    const plan = { ...samplePlan('01-plain-basement'), title: 'Haus Ω 家, Łódź' };
    const [page] = sheetsOf(plan);
    expect((await pdfOf([page as string])).lacking).toEqual(['Ω', '家']);
  });

  it('is small: three pages of the plain basement take at most 250 kB', async () => {
    const { bytes } = await pdfOf(sheetsOf(samplePlan('01-plain-basement')).slice(0, 3));
    expect(bytes.length).toBeLessThan(250_000);
  });

  it('refuses what it cannot draw instead of leaving it out', async () => {
    const page = '<svg viewBox="0 0 10 10"><title>x</title><ellipse cx="1" cy="1" rx="1" ry="2"/></svg>';
    await expect(pdfOf([page])).rejects.toThrow('The PDF cannot draw <ellipse>.');
  });
});

const extent = (values: readonly number[]) => Math.max(...values) - Math.min(...values);

/** Walls of 8 in around a room; `long` and `wide` outside. */
function boxHouse(long: number, wide: number): Plan {
  const half = 101.6;
  const [left, top, right, bottom] = [half, half, long - half, wide - half];
  const corners = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ] as const;
  const plan = samplePlan('01-plain-basement');
  const [level] = plan.levels;
  if (!level) throw new Error('no level');
  return {
    ...plan,
    levels: [
      {
        ...level,
        walls: corners.map((from, i) => ({
          id: `w${i}`,
          from,
          to: corners[(i + 1) % 4] ?? from,
          thickness: 2 * half,
          side: 'auto' as const,
        })),
        openings: [],
        rooms: [],
        fixtures: [],
        objects: [],
        detectors: [],
      },
    ],
  };
}
