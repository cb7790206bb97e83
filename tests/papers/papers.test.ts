import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CAUTIONS, type Plan } from '../../geometry/index.ts';
import { withCondition } from '../../src/job/conditions/edit.ts';
import { CONDITION_ITEMS } from '../../src/job/conditions/report.ts';
import { withAgreement, withHandOver, withLog, withWeather } from '../../src/job/log/edit.ts';
import { drawJobPaper, type JobPaper } from '../../src/papers/papers.ts';
import { placedDetectors } from '../../src/papers/places.ts';
import { GROUPS } from '../../src/papers/words.ts';
import { frameOf, type PaperName } from '../../src/sheet/paper.ts';
import { COLOUR } from '../../src/sheet/style.ts';
import { CAP_HEIGHT, DESCENT } from '../../src/sheet/text.ts';
import { pageTroubles } from '../helpers/page-troubles.ts';
import { SAMPLE_NAMES, samplePlan } from '../helpers/sample-files.ts';
import { sheetTexts } from '../helpers/sheet-texts.ts';

const KINDS: readonly JobPaper[] = ['notice', 'door-hanger', 'agreement', 'log'];
const PAPERS: readonly PaperName[] = ['letter', 'a4'];
const BOTH = KINDS.flatMap((kind) => PAPERS.map((paper) => [kind, paper] as const));

const bare = samplePlan('01-plain-basement');
const zone = { site: { ...bare.site, timeZone: 'America/New_York' } };
const timed: Plan = {
  ...bare,
  ...zone,
  visit: { ...bare.visit, closedSince: null, start: '2026-03-07T18:00:00-05:00', end: null },
};
const detector = timed.levels.flatMap(({ detectors }) => detectors)[0]?.id ?? '';

/** A job with everything on record, in the longest texts that somebody could paste. */
function filled(long: string): Plan {
  const visited = { ...timed, visit: { ...timed.visit, end: '2026-03-10T19:00:00-04:00' } };
  const logged = withLog(visited, detector, {
    serial: long,
    placedBy: long,
    fetchedBy: long,
    tampering: 'seen',
    note: long,
    sealed: '2026-03-10T19:05:00-04:00',
  });
  const handed = withHandOver(logged, detector, { at: '2026-03-10T20:00:00-04:00', from: long, to: long, note: long });
  const broken = withCondition(handed, 'windows-closed', { state: 'broken', by: long, note: long });
  return withAgreement(withWeather(broken, { at: null, text: long }), { signedBy: long, refused: true, note: long });
}

/** So many photos of each detector. */
function withPhotos(plan: Plan, detectors: readonly { readonly id: string }[], count: number): Plan {
  const photos = Array<string>(count % 5).fill('data:image/png;base64,AAAA');
  return detectors.reduce((known, { id }) => withLog(known, id, { photos }), plan);
}

const draw = (which: JobPaper, plan: Plan, paper: PaperName = 'letter') =>
  drawJobPaper(which, { plan, paper, date: '2026-03-05' });
/** Boxes, lines, photos and holes that reach beyond the frame. */
function strayShapes(pages: readonly string[], paper: PaperName): readonly string[] {
  const { x, y, width, height } = frameOf(paper);
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
/** All words of all pages in one line. */
const words = (which: JobPaper, plan: Plan) =>
  draw(which, plan)
    .flatMap((svg) => sheetTexts(svg).map(({ text }) => text))
    .join(' ')
    .replaceAll('\u00a0', ' ');

describe.each(BOTH)('%s on %s', (kind, paper) => {
  it.each([
    ['with nothing known', bare],
    ['with its times', timed],
    ['with everything on record', filled('R. Alder')],
    ['with overlong texts', filled('Wwwwwwww-ÅÄÖ & <b>"long"</b> name '.repeat(30))],
    ['with one overlong word', filled('Donaudampfschifffahrt'.repeat(12))],
  ])('%s: no text over another or beyond the frame', (_, plan) => {
    expect(pageTroubles(draw(kind, plan, paper), paper)).toEqual([]);
  });

  it('carries every caution on every page', () => {
    for (const svg of draw(kind, filled('R. Alder'), paper)) {
      const line = sheetTexts(svg).map(({ text }) => text);
      expect(line).toContain(CAUTIONS.join('  '));
    }
  });
});

describe('what is asked of the people in the house', () => {
  it.each<JobPaper>(['notice', 'door-hanger', 'agreement'])('stands on the %s, item by item', (kind) => {
    const text = words(kind, timed);
    for (const { notice, onlyWith } of CONDITION_ITEMS) if (notice && !onlyWith) expect(text).toContain(notice);
    expect(text).not.toContain('mitigation system switched on');
  });

  it('leaves out what the house does not have, and names the system where there is one', () => {
    const none = withCondition(timed, 'fireplaces-off', { state: 'not-applicable' });
    expect(words('notice', none)).not.toContain('fireplace');
    const mitigated = { ...timed, site: { ...timed.site, purpose: 'after-mitigation' as const } };
    expect(words('notice', mitigated)).toContain('Leave the radon mitigation system switched on.');
  });

  it('says from when to when, by the clock of the site: twelve hours before, and over the change of clocks', () => {
    const text = words('notice', timed);
    expect(text).toContain('House closed from Saturday 7 March, 6:00 (am)');
    expect(text).toContain('Detectors set out Saturday 7 March, 18:00 (6 pm)');
    // 48 h on: the clocks went forward in between.
    expect(text).toContain('between Monday 9 March, 19:00 (7 pm) and Wednesday 11 March, 19:00 (7 pm)');
    expect(text).toContain('All times are by the clock at the house (time zone America/New York).');
  });

  it('says midnight in words, and leaves the halves of the day to those who use them', () => {
    const midnight = { ...timed, visit: { ...timed.visit, closedSince: '2026-03-07T00:00:00-05:00' } };
    expect(words('notice', midnight)).toContain('Saturday 7 March, 0:00 (midnight after Friday)');
    const metric: Plan = { ...timed, display: { ...timed.display, length: 'metric' } };
    expect(words('notice', metric)).toContain('Detectors set out Saturday 7 March, 18:00 Detectors fetched');
  });

  it('says that nothing is arranged yet where it is not', () => {
    expect(words('notice', bare)).toContain('Detectors set out not arranged yet');
    expect(words('notice', bare)).toContain('at least 12 hours before the detectors come');
  });

  it('says in which room the detectors stand', () => {
    expect(words('notice', bare)).toContain('A1 and A2: Family room, Basement');
  });

  it('counts many detectors, level by level, in place of their labels', () => {
    const house = samplePlan('05-boarding-house');
    expect(words('notice', house)).toContain('9 detectors on Garden level: Lounge, Bedroom 1, Bedroom 2, Bedroom 3,');
  });

  it('names the tester where the log has one for all, and never guesses between two', () => {
    const one = withLog(timed, detector, { placedBy: 'R. Alder' });
    expect(words('notice', one)).toContain('R. Alder Tester');
    const other = timed.levels.flatMap(({ detectors }) => detectors)[1]?.id ?? '';
    expect(words('notice', withLog(one, other, { placedBy: 'M. Brook' }))).not.toContain('R. Alder');
  });

  it('says what to do when something went wrong, safety first', () => {
    for (const kind of ['notice', 'door-hanger'] as const) {
      expect(words(kind, timed)).toContain('Tell the tester in any case.');
      expect(words(kind, timed)).toContain('safety comes first');
    }
  });
});

describe('the door hanger', () => {
  it('carries the cautions and the place on both faces, for the foot of the page is cut off', () => {
    const text = words('door-hanger', timed);
    for (const caution of CAUTIONS) expect(text.split(caution)).toHaveLength(4); // one each, and one at the foot
    expect(text.split('12 Finch Lane, the Odell household')).toHaveLength(4);
  });

  it('says in large type what matters, and until when', () => {
    const [svg = ''] = draw('door-hanger', timed);
    const large = sheetTexts(svg).filter(({ height }) => height > 4.5);
    const text = large.map((each) => each.text).join(' ');
    expect(text).toContain('Keep windows and outside doors shut.');
    expect(text).toContain('Do not touch the detectors.');
    expect(words('door-hanger', bare)).toContain('Until Day and time');
  });

  it.each(PAPERS)('has its words and two holes of 30 mm well within the cut, on %s', (paper) => {
    const [svg = ''] = draw('door-hanger', filled('Wwwwwwww-ÅÄÖ & <b>"long"</b> name '.repeat(30)), paper);
    const cut = /<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"[^>]*dasharray/.exec(svg);
    const [x = 0, y = 0, width = 0, height = 0] = (cut ?? []).slice(1).map(Number);
    const fold = x + width / 2;
    expect(svg.match(/<circle[^>]* r="15"/g)).toHaveLength(2);
    const inside = sheetTexts(svg).filter((text) => text.y > y && text.y < y + height);
    expect(inside.length).toBeGreaterThan(30);
    for (const text of inside) {
      const [left, right] = [text.x - text.width / 2, text.x + text.width / 2];
      const face = text.x < fold ? [x, fold] : [fold, x + width];
      expect([left - (face[0] ?? 0) > 3, (face[1] ?? 0) - right > 3, text.text]).toEqual([true, true, text.text]);
    }
  });
});

it('the agreement has room for a signature and for a refusal, and says what is on record', () => {
  const blank = words('agreement', timed);
  for (const part of ['Owner', 'Seller', 'Occupant', 'Signature Date and time', 'its signing was refused', 'Tester']) {
    expect(blank).toContain(part);
  }
  expect(blank).not.toContain('On record');
  expect(blank).toContain('Detectors set out Saturday 7 March 2026, 18:00');
  const signed = withAgreement(timed, { signedBy: 'M. Brook', at: '2026-03-06T09:30:00-05:00' });
  expect(words('agreement', signed)).toContain('On record: signed by M. Brook, Friday 6 March 2026, 9:30.');
  const refused = withAgreement(signed, { refused: true });
  expect(words('agreement', refused)).toContain('On record: M. Brook refused to sign');
  expect(words('agreement', refused)).not.toContain('On record: signed');
});

describe('the log', () => {
  it('names every detector, hand, break and note, and what is not known', () => {
    const text = words('log', filled('R. Alder'));
    for (const part of ['SEEN', 'BROKEN', 'This test is not evaluated.', 'Refused by R. Alder', '72 h']) {
      expect(text).toContain(part);
    }
    expect(words('log', bare)).toContain('Not signed, as far as is known.');
    expect(words('log', bare)).toContain('What is empty was not known when this was printed');
  });

  it('says where each detector stands, as the plan has it', () => {
    const [placed] = placedDetectors(bare);
    // samples/README.md: A1 in the family room of the basement; the plan's own height of its underside.
    expect([placed?.name, placed?.room, placed?.level]).toEqual(['A1', 'Family room', 'Basement']);
    // Its axis is 8 ft 7 in east of the west face and 10 ft 2 in north of the south face (24 ft), its radius 2 in.
    expect(placed?.fromWalls).toBe('West wall 8 ft 5 in, south wall 10 ft');
    const text = words('log', bare);
    for (const { name, height } of placedDetectors(bare))
      for (const part of [name, height]) expect(text).toContain(part);
  });

  it('keeps those together that were handed over together, the earliest first', () => {
    const [one = '', two = ''] = timed.levels.flatMap(({ detectors }) => detectors.map(({ id }) => id));
    const late = { at: '2026-03-11T08:00:00-04:00', from: 'Post', to: 'Laboratory', note: '' };
    const early = { at: '2026-03-10T20:00:00-04:00', from: 'R. Alder', to: 'Post', note: '' };
    const handed = [one, two].reduce((plan, id) => withHandOver(withHandOver(plan, id, late), id, early), timed);
    expect(words('log', handed)).toMatch(/A1, A2 Tue 10 Mar 2026, 20:00 .*A1, A2 Wed 11 Mar 2026, 8:00/);
  });

  it('says the weather that was forecast and seen, and what of it is not noted', () => {
    const forecast = { at: null, source: 'weather service', sustained: null, storm: null, note: 'Fog at night.' };
    const plan = withWeather({ ...timed, visit: { ...timed.visit, forecast } }, { at: null, text: 'Calm.' });
    const text = words('log', plan);
    expect(text).toContain('Forecast (weather service): wind not noted. Fog at night.');
    expect(text).toContain('At a time that is not known: Calm.');
    expect(words('log', timed)).toContain('Wind, storm, rain or snow, and when');
  });

  it('never parts what the conditions come to from their table, wherever the page ends', () => {
    for (let lines = 25; lines < 50; lines++) {
      const note = 'A line of its own that goes on for a while and then some. '.repeat(3 * lines);
      const pages = draw('log', withLog(filled('R. Alder'), detector, { note }));
      const [page = ''] = pages.filter((svg) => svg.includes('The house during the test'));
      expect(page, `${lines} lines`).toContain('What was asked');
    }
  });

  it('writes out what a table shows clipped', () => {
    const long = `SERIAL ${'0123456789'.repeat(8)}`;
    const text = words('log', withLog(timed, detector, { serial: long }));
    expect(text).toContain('Written out');
    expect(text.replaceAll(' ', '')).toContain(long.replaceAll(' ', ''));
  });

  it('shows the photos with whose they are', () => {
    const photos = ['data:image/png;base64,AAAA', 'data:image/png;base64,BBBB'];
    const [svg = '', ...others] = draw('log', withLog(timed, detector, { photos }));
    expect([svg, ...others].join('').match(/<image [^>]*href="data:image\/png;base64,[AB]{4}"/g)).toHaveLength(2);
    expect(words('log', withLog(timed, detector, { photos }))).toContain('A1, 2 of 2');
  });
});

it.each(SAMPLE_NAMES)(
  '%s: what is handed to the people in the house is one page, with and without its times',
  (name) => {
    const plan = samplePlan(name);
    const closed = { ...plan, visit: { ...timed.visit, end: '2026-03-10T19:00:00-04:00' } };
    for (const each of [plan, { ...plan, visit: timed.visit }, closed]) {
      for (const paper of PAPERS) {
        for (const kind of ['notice', 'door-hanger', 'agreement'] as const)
          expect(draw(kind, each, paper)).toHaveLength(1);
        expect(pageTroubles(draw('log', each, paper), paper)).toEqual([]);
      }
    }
  },
);

it('every sentence for the people in the house belongs to a group of the list', () => {
  const known = GROUPS.flatMap(({ items }) => items);
  const asked = CONDITION_ITEMS.filter(({ notice }) => notice !== '').map(({ id }) => id);
  expect([...known].sort()).toEqual([...asked].sort());
});

it.each(BOTH)(
  '%s on %s: the test, the page and the day stand on each page; the same plan gives the same text',
  (kind, paper) => {
    const pages = draw(kind, filled('R. Alder'), paper);
    expect(draw(kind, filled('R. Alder'), paper)).toEqual(pages);
    pages.forEach((svg, i) => {
      const texts = sheetTexts(svg).map(({ text }) => text);
      for (const part of ['Finch Lane, basement', `${i + 1} of ${pages.length}`, '5 March 2026']) {
        expect(texts).toContain(part);
      }
    });
  },
);

it.each(BOTH)('%s on %s: no text of any length runs over another or beyond the frame', (kind, paper) => {
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
      expect([...pageTroubles(pages, paper), ...strayShapes(pages, paper)]).toEqual([]);
    }),
    { numRuns: 15, seed: 7 },
  );
});

it.each(BOTH)('%s on %s: in black, grey and white only, and in type that is read on paper', (kind, paper) => {
  for (const plan of [bare, filled('R. Alder')]) {
    const svg = draw(kind, plan, paper).join('');
    const colours = new Set([...svg.matchAll(/ (?:fill|stroke)="(#[^"]+)"/g)].map(([, colour]) => colour));
    expect([...colours].sort()).toEqual([COLOUR.ink, COLOUR.inkSoft, COLOUR.paper].sort());
    const sizes = [...svg.matchAll(/ font-size="([\d.]+)"/g)].map(([, size]) => Number(size));
    // 6 pt in the title block and the sources, 8 pt and more in what people in the house are to read.
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(2.1);
    const reading = sheetTexts(svg).filter(({ text }) => /Keep every window shut|Do not move, cover/.test(text));
    expect(reading.length > 0).toBe(kind !== 'log');
    for (const { height } of reading) expect(height).toBeGreaterThan(2.8 * (CAP_HEIGHT + DESCENT));
  }
});
