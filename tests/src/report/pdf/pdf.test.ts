import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { LengthUnit } from '../../../../geometry/units/index.ts';
import { fontFiles } from '../../../../src/cli/paper/fonts.ts';
import { drawDocument } from '../../../../src/report/documents/draw-document.ts';
import { drawSheets } from '../../../../src/report/draw-sheets.ts';
import { ORIENTATIONS, type Orientation, PAPER_NAMES, type PaperName, pageSize } from '../../../../src/report/paper.ts';
import { pagesToPdf } from '../../../../src/report/pdf/pdf.ts';
import { drawingScales } from '../../../../src/report/scale.ts';
import { COLOR } from '../../../../src/report/style.ts';
import { howMany, isLongRun, someOf } from '../../../helpers/how-many.ts';
import { type ReadPage, readPdf } from '../../../helpers/pdf-reader.ts';
import { randomPlan } from '../../../helpers/random-level.ts';
import { SAMPLE_NAMES, samplePlan } from '../../../helpers/sample-files.ts';

const DATE = '2026-03-07';
/** Of the scales, all in a long run and each fifth else. */
const EACH = howMany(12, 1);
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
  it.each(someOf(SAMPLE_NAMES, 3))('has the texts of the sheets of %s, at the same places', async (name) => {
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
    for (let seed = 1; seed <= howMany(1, 3); seed++) {
      const pages = sheetsOf(randomPlan(seed), seed % 2 ? 'a4' : 'tabloid');
      const read = await readPdf((await pdfOf(pages)).bytes);
      pages.forEach((svg, i) => {
        expectSameText(read.pages[i] as ReadPage, svg);
      });
    }
  });

  /** ISO 32000-1, 8.3.2.3: a unit of a page is 1/72 in. */
  describe.each(PAPER_NAMES)('is true to scale on %s', (paper) => {
    it.each(ORIENTATIONS)(
      '%s, at each scale: walls are as long as it says, within 0.2 mm',
      async (orientation) => {
        const seen = new Map<string, number>();
        // 20 scales of feet and inches, 17 metric.
        const scales = (['feet-inches', 'metric'] as const).flatMap((unit) =>
          drawingScales(unit).map(({ ratio }) => ({ unit, ratio })),
        );
        const some = scales.filter((_, i) => i % EACH === 0);
        for (const { unit, ratio } of some) {
          const off = await drawnAt(paper, orientation, unit, ratio);
          if (off !== null) seen.set(`${unit} 1:${ratio}`, off);
        }
        expect(seen.size).toBe(some.length);
        expect(Math.max(...seen.values())).toBeLessThan(0.2);
        if (isLongRun) console.info(paper, orientation, seen.size, 'scales, at most', Math.max(...seen.values()), 'mm');
      },
      120_000,
    );
  });

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
    expect(first.indexOf('The test: invalid as it stands.')).toBeGreaterThan(0);
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

/**
 * Returns of a house that fills the page at a scale how far its outer walls in the PDF are from what the scale says, mm.
 * Null where another scale was chosen.
 */
async function drawnAt(paper: PaperName, orientation: Orientation, unit: LengthUnit, ratio: number) {
  const size = pageSize(paper, orientation);
  // Smaller and smaller, in steps finer than those between two scales.
  for (let share = 0.9; share > 0.2; share *= 0.975) {
    const [long, wide] = [share * size.width * ratio, share * 0.7 * size.height * ratio];
    if (Math.min(long, wide) < 800) return null;
    const plan = boxHouse(long, wide);
    const [page = ''] = drawSheets({
      plan: { ...plan, display: { ...plan.display, length: unit } },
      levelId: 'L1',
      paper,
      orientation,
      date: DATE,
    });
    const words = svgTexts(page).join(' ');
    const chosen = Number(/\(1:(\d+)\)/.exec(words)?.[1] ?? /Scale 1:(\d+)/.exec(words)?.[1]);
    if (chosen !== ratio) continue;
    const [first] = (await readPdf((await pdfOf([page])).bytes)).pages;
    expect(Math.abs((first?.width ?? 0) - size.width)).toBeLessThan(0.1);
    expect(Math.abs((first?.height ?? 0) - size.height)).toBeLessThan(0.1);
    const walls = (first?.paths ?? []).filter(({ fill }) => fill.toLowerCase() === COLOR.poche.toLowerCase());
    // The scale bar and the arrow of north are filled with the same color.
    const sizes = walls.map(({ points }) => ([0, 1] as const).map((axis) => extent(points.map((p) => p[axis]))));
    const [across = 0, down = 0] = sizes.toSorted(([a = 0, b = 0], [c = 0, d = 0]) => c * d - a * b)[0] ?? [];
    return Math.max(Math.abs(across - long / ratio), Math.abs(down - wide / ratio));
  }
  return null;
}

/** Walls of 8 in around a room, thinner in a small house; `long` and `wide` outside. */
function boxHouse(long: number, wide: number): Plan {
  const half = Math.min(101.6, wide / 20);
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
