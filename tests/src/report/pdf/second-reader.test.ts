import { describe, expect, it } from 'vitest';
import { fontFiles } from '../../../../src/cli/paper/fonts.ts';
import { drawDocument } from '../../../../src/report/documents/draw-document.ts';
import { drawSheets } from '../../../../src/report/draw-sheets.ts';
import { sizeOfPage } from '../../../../src/report/paper.ts';
import { pagesToPdf } from '../../../../src/report/pdf/pdf.ts';
import { isLongRun } from '../../../helpers/how-many.ts';
import { structureProblems } from '../../../helpers/pdf-structure.ts';
import { seenByPdfium } from '../../../helpers/pdfium.ts';
import { SAMPLE_NAMES, samplePlan } from '../../../helpers/sample-files.ts';
import { lettersOf, textStarts } from '../../../helpers/text-starts.ts';

const date = '2026-03-07';
/** Every sample in the long run, the finished jobs else. */
const NAMES = isLongRun ? SAMPLE_NAMES : (['06-sale-report', '07-test-invalid'] as const);

/** The plan sheets, then the report. */
async function papersOf(name: string) {
  const order = { plan: samplePlan(name), paper: 'letter', date } as const;
  const sheets = order.plan.levels.flatMap(({ id }) => drawSheets({ ...order, levelId: id }));
  const pages = [...sheets, ...drawDocument('report', order)];
  return { pages, bytes: (await pagesToPdf(pages, { title: name, date, fonts: fontFiles() })).bytes };
}

describe('the PDF in a second reader', () => {
  it.each(NAMES)('of %s opens, with every page, its size and its text in reading order', async (name) => {
    const { pages, bytes } = await papersOf(name);
    expect(structureProblems(bytes)).toEqual([]);
    const seen = await seenByPdfium(bytes);
    expect(seen.length).toBe(pages.length);
    seen.forEach(({ width, height, text }, i) => {
      const svg = pages[i] as string;
      const size = sizeOfPage(svg);
      expect(Math.hypot(width - size.width, height - size.height)).toBeLessThan(0.01);
      const read = lettersOf([text]);
      for (const { text: drawn } of textStarts(svg)) expect(read).toContain(lettersOf([drawn]));
    });
  });
});

describe('structureProblems(bytes)', () => {
  it('finds a file that was cut or changed', async () => {
    const { bytes } = await pagesToPdf(
      drawDocument('notice', { plan: samplePlan('01-plain-basement'), paper: 'a4', date }),
      {
        title: 'x',
        date,
        fonts: fontFiles(),
      },
    );
    expect(structureProblems(bytes)).toEqual([]);
    expect(structureProblems(bytes.slice(0, -20))).not.toEqual([]);
    expect(structureProblems(Uint8Array.from([...bytes.slice(0, 300), 32, ...bytes.slice(300)]))).not.toEqual([]);
  });
});
