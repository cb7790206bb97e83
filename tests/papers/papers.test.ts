import { describe, expect, it } from 'vitest';
import { CAUTIONS, type Plan } from '../../geometry/index.ts';
import { withCondition } from '../../src/job/conditions/edit.ts';
import { CONDITION_ITEMS } from '../../src/job/conditions/report.ts';
import { withAgreement, withHandOver, withLog, withWeather } from '../../src/job/log/edit.ts';
import { drawJobPaper, type JobPaper } from '../../src/papers/papers.ts';
import type { PaperName } from '../../src/sheet/paper.ts';
import { pageTroubles } from '../helpers/page-troubles.ts';
import { samplePlan } from '../helpers/sample-files.ts';
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

const draw = (which: JobPaper, plan: Plan, paper: PaperName = 'letter') =>
  drawJobPaper(which, { plan, paper, date: '2026-03-05' });
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
    expect(text).toContain('House closed from: Saturday 7 March 2026, 6:00.');
    expect(text).toContain('Detectors set out: Saturday 7 March 2026, 18:00.');
    // 48 h on: the clocks went forward in between.
    expect(text).toContain('Detectors fetched: between Monday 9 March 2026, 19:00 and Wednesday 11 March 2026, 19:00.');
    expect(text).toContain('Times by the clock of America/New York.');
  });

  it('says that nothing is arranged yet where it is not', () => {
    expect(words('notice', bare)).toContain('Detectors set out: to be arranged.');
  });
});

it('both door hangers carry the cautions, for the foot of the page is cut off', () => {
  const text = words('door-hanger', timed);
  for (const caution of CAUTIONS) expect(text.split(caution)).toHaveLength(4); // one each, and one at the foot
});

it('the agreement has room for a signature and for a refusal, and says what is on record', () => {
  expect(words('agreement', timed)).toMatch(/Signature Date and time .*refused/);
  expect(words('agreement', timed)).not.toContain('On record');
  const signed = withAgreement(timed, { signedBy: 'M. Brook', at: '2026-03-06T09:30:00-05:00' });
  expect(words('agreement', signed)).toContain('On record: signed by M. Brook, Friday 6 March 2026, 9:30.');
  expect(words('agreement', withAgreement(signed, { refused: true }))).toContain('On record: M. Brook refused to sign');
});

it('the log names every detector, hand, break and note, and what is not known', () => {
  const text = words('log', filled('R. Alder'));
  for (const part of ['SEEN', 'BROKEN', 'This test is not evaluated.', 'Refused by R. Alder', 'not known']) {
    expect(text).toContain(part);
  }
  expect(words('log', bare)).toContain('Not signed.');
});
