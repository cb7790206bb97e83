import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../../../geometry/messages/index.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { CAP_HEIGHT, DESCENT } from '../../../../src/drawing/text.ts';
import { drawDocument } from '../../../../src/report/documents/draw-document.ts';
import { frameOf, ORIENTATIONS, pageSize, sizeOfPage } from '../../../../src/report/paper.ts';
import { COLOR } from '../../../../src/report/style.ts';
import { howMany, someOf } from '../../../helpers/how-many.ts';
import { pageProblems } from '../../../helpers/page-problems.ts';
import { SAMPLE_NAMES, samplePlan } from '../../../helpers/sample-files.ts';
import { sheetTexts } from '../../../helpers/sheet-texts.ts';
import { BOTH, bare, draw, filled, PAPERS, timed, withPhotos } from './job-plans.ts';

/** Boxes, lines, photos and holes that reach beyond the frame. */
function strayShapes(pages: readonly string[]): readonly string[] {
  const { x, y, width, height } = frameOf(sizeOfPage(pages[0] ?? ''));
  const out = (px: number, py: number) =>
    px < x - 0.01 || py < y - 0.01 || px > x + width + 0.01 || py > y + height + 0.01;
  const number = (text: string, name: string) =>
    Number(new RegExp(` ${name}="([-\\d.]+)"`).exec(text)?.[1] ?? Number.NaN);
  return pages.flatMap((svg) => [
    ...[...svg.matchAll(/d="M([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)"/g)]
      .filter(([, ...ends]) => out(Number(ends[0]), Number(ends[1])) || out(Number(ends[2]), Number(ends[3])))
      .map(([text]) => text),
    ...[...svg.matchAll(/<(?:rect|image) [^>]*>/g)]
      .slice(1) // the paper itself
      .filter(([text]) => {
        const [left, top] = [number(text, 'x'), number(text, 'y')];
        return out(left, top) || out(left + number(text, 'width'), top + number(text, 'height'));
      })
      .map(([text]) => text),
    ...[...svg.matchAll(/<circle [^>]*>/g)]
      .filter(([text]) => {
        const [cx, cy, r] = [number(text, 'cx'), number(text, 'cy'), number(text, 'r')];
        return out(cx - r, cy - r) || out(cx + r, cy + r);
      })
      .map(([text]) => text),
  ]);
}

describe.each(BOTH)('%s on %s', (kind, paper) => {
  it.each([
    ['with nothing known', bare],
    ['with its times', timed],
    ['with everything on record', filled('R. Alder')],
    ['with overlong texts', filled('Wwwwwwww-ÅÄÖ & <b>"long"</b> name '.repeat(30))],
    ['with one overlong word', filled('Donaudampfschifffahrt'.repeat(12))],
  ])('%s: no text over another or beyond the frame', (_, plan) => {
    expect(pageProblems(draw(kind, plan, paper))).toEqual([]);
  });

  it('carries every caution on every page', () => {
    for (const svg of draw(kind, filled('R. Alder'), paper)) {
      const line = sheetTexts(svg).map(({ text }) => text);
      expect(line).toContain(CAUTIONS.join('  '));
    }
  });
});

describe.each(BOTH)('%s upright on %s', (kind, paper) => {
  it.each([
    ['with nothing known', bare],
    ['with everything on record', filled('R. Alder')],
    ['with overlong texts', filled('Wwwwwwww-ÅÄÖ & <b>"long"</b> name '.repeat(30))],
    ['of a sale', samplePlan('06-sale-report')],
  ])('%s: no text over another or beyond the frame, and every caution on every page', (_, plan) => {
    const pages = drawDocument(kind, { plan, paper, orientation: 'portrait', date: '2026-03-05' });
    expect([...pageProblems(pages), ...strayShapes(pages)]).toEqual([]);
    for (const svg of pages) {
      expect(sizeOfPage(svg)).toEqual(pageSize(paper, 'portrait'));
      const words = sheetTexts(svg).map(({ text }) => text);
      expect(words.join(' ')).toContain(CAUTIONS.join(' '));
    }
  });
});

it.each(someOf(SAMPLE_NAMES, 1))(
  '%s: what is handed to the people in the house is one page, with and without its times',
  (name) => {
    const plan = samplePlan(name);
    const closed = { ...plan, visit: { ...timed.visit, end: '2026-03-10T19:00:00-04:00' } };
    for (const each of [plan, { ...plan, visit: timed.visit }, closed]) {
      for (const paper of PAPERS) {
        for (const kind of ['notice', 'entrance-notice', 'door-hanger', 'agreement', 'placement-card'] as const)
          for (const orientation of ORIENTATIONS)
            expect(
              drawDocument(kind, { plan: each, paper, orientation, date: '2026-03-05' }),
              `${kind} ${paper} ${orientation}`,
            ).toHaveLength(1);
        expect(pageProblems(draw('log', each, paper))).toEqual([]);
      }
    }
  },
);

/** A plan may hold names of 200 characters (the plan format), and names need not have spaces. */
describe.each(PAPERS)('what occupants get on %s, with every name as long as a plan may hold', (paper) => {
  const wide = 'W'.repeat(200);
  const sale = samplePlan('06-sale-report');
  const party = { name: wide, address: wide, telephone: wide, email: wide, license: wide };
  const plan: Plan = {
    ...sale,
    title: wide,
    site: { ...sale.site, label: wide },
    levels: sale.levels.map((level) => ({
      ...level,
      name: wide,
      rooms: level.rooms.map((room) => ({ ...room, name: wide })),
      detectors: level.detectors.map((each, i) => ({ ...each, label: `${wide.slice(1)}${i}` })),
    })),
    log: (sale.log ?? []).map((entry) => ({ ...entry, placedBy: wide, fetchedBy: wide })),
    agreement: { signedBy: wide, at: '2026-10-06T09:00:00-05:00', refused: false, note: wide.repeat(50) },
    report: { ...sale.report, client: party, firm: party, licenses: [{ name: wide, license: wide }] },
  };
  const refused = { ...plan, agreement: { ...(plan.agreement as NonNullable<Plan['agreement']>), refused: true } };

  it.each(ORIENTATIONS)('%s: is drawn, with no text over another or beyond the frame', (orientation) => {
    for (const kind of ['notice', 'entrance-notice', 'agreement', 'placement-card'] as const)
      for (const each of [plan, refused]) {
        const pages = drawDocument(kind, { plan: each, paper, orientation, date: '2026-03-05' });
        expect([kind, pages.length]).toEqual([kind, 1]);
        expect([...pageProblems(pages), ...strayShapes(pages)]).toEqual([]);
      }
  });
});

it.each(BOTH)(
  '%s on %s: the test, the page and the day stand on each page; the same plan gives the same text',
  (kind, paper) => {
    const pages = draw(kind, filled('R. Alder'), paper);
    expect(draw(kind, filled('R. Alder'), paper)).toEqual(pages);
    pages.forEach((svg, i) => {
      const texts = sheetTexts(svg).map(({ text }) => text);
      for (const part of ['Finch Lane, basement', `${i + 1} of ${pages.length}`, 'March 5, 2026']) {
        expect(texts).toContain(part);
      }
    });
  },
);

it.each(someOf(BOTH, 4))('%s on %s: no text of any length runs over another or beyond the frame', (kind, paper) => {
  const text = fc.string({ maxLength: 400, unit: fc.constantFrom('W', 'i', 'ß', '&', '-', ' ', '漢', 'long ') });
  fc.assert(
    fc.property(text, text, fc.nat(12), (name, place, count) => {
      const [level] = timed.levels;
      const [first] = level?.detectors ?? [];
      if (!level || !first) throw new Error('The sample has lost its detector.');
      const many = Array.from({ length: count }, (_, i) => ({ ...first, id: `k${i}`, label: name.slice(i) }));
      const plan: Plan = {
        ...withPhotos(filled(name), many, count),
        title: place,
        site: { ...timed.site, label: place },
        levels: [{ ...level, name: place, detectors: many }],
      };
      const pages = draw(kind, plan, paper);
      expect([...pageProblems(pages), ...strayShapes(pages)]).toEqual([]);
    }),
    { numRuns: howMany(2, 15), seed: 7 },
  );
});

it.each(someOf(BOTH, 6))(
  '%s on %s: in black, gray and white only, and in type that is read on paper',
  (kind, paper) => {
    for (const plan of [bare, filled('R. Alder')]) {
      // The plans of a report are in color, as the sheets are.
      const svg = draw(kind, plan, paper)
        .filter((page) => !page.includes('role="figure"'))
        .join('');
      const colors = new Set([...svg.matchAll(/ (?:fill|stroke)="(#[^"]+)"/g)].map(([, color]) => color));
      expect([...colors].sort()).toEqual([COLOR.ink, COLOR.inkSoft, COLOR.paper].sort());
      const sizes = [...svg.matchAll(/ font-size="([\d.]+)"/g)].map(([, size]) => Number(size));
      // 6 pt in the title block and the sources, 8 pt and more in what people in the house are to read.
      expect(Math.min(...sizes)).toBeGreaterThanOrEqual(2.1);
      const reading = sheetTexts(svg).filter(({ text }) =>
        /Keep every window closed|Do not move, cover|Do not touch, cover|Leave it alone/.test(text),
      );
      expect(reading.length > 0).toBe(kind !== 'log' && kind !== 'report');
      for (const { height } of reading) expect(height).toBeGreaterThan(2.8 * (CAP_HEIGHT + DESCENT));
    }
  },
);
