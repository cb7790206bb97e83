import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../../../geometry/messages/index.ts';
import { markedCite } from '../../../../geometry/messages/sources.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { effectiveRules } from '../../../../geometry/rules/profiles.ts';
import { withAgreement } from '../../../../src/protocol/conditions/agreement.ts';
import { conditionTexts } from '../../../../src/protocol/conditions/condition-texts.ts';
import { CONDITION_ITEMS } from '../../../../src/protocol/conditions/conditions-report.ts';
import { withCondition } from '../../../../src/protocol/conditions/edit-conditions.ts';
import { withLogEntry } from '../../../../src/protocol/custody/log-entries.ts';
import { drawDocument, type VisitDocument } from '../../../../src/report/documents/draw-document.ts';
import { SENTENCE_GROUPS } from '../../../../src/report/documents/occupant-texts.ts';
import { ORIENTATIONS } from '../../../../src/report/paper.ts';
import { fullReportPlan } from '../../../helpers/full-report-plan.ts';
import { SAMPLE_NAMES, samplePlan } from '../../../helpers/sample-files.ts';
import { sheetTexts } from '../../../helpers/sheet-texts.ts';

import { bare, detector, draw, filled, PAPERS, timed, words } from './job-plans.ts';

describe('what is asked of the people in the house', () => {
  it.each<VisitDocument>(['notice', 'door-hanger', 'agreement'])('stands on the %s, item by item', (kind) => {
    const text = words(kind, timed);
    for (const item of CONDITION_ITEMS) {
      const { notice } = conditionTexts(item);
      if (notice && !item.onlyWith) expect(text).toContain(notice);
    }
    expect(text).not.toContain('mitigation system switched on');
  });

  it('leaves out what the house does not have, and names the system where there is one', () => {
    const none = withCondition(timed, 'fireplaces-off', { state: 'not-applicable' });
    expect(words('notice', none)).not.toContain('fireplace');
    const mitigated = { ...timed, site: { ...timed.site, purpose: 'after-mitigation' as const } };
    expect(words('notice', mitigated)).toContain('Leave the radon mitigation system switched on.');
  });

  it('says from when to when, local time at the property: twelve hours before, and over the change of clocks', () => {
    const text = words('notice', timed);
    expect(text).toContain('Keep the house closed from Saturday, March 7, 6:00 am at the latest');
    expect(text).toContain('Detectors to be placed Saturday, March 7, 6:00 pm');
    // 48 h on: the clocks went forward in between.
    expect(text).toContain('between Monday, March 9, 7:00 pm and Wednesday, March 11, 7:00 pm');
    expect(text).toContain('Local time at the property (time zone America/New York).');
  });

  it('says by when a mitigation system runs, where there is one', () => {
    const mitigated = { ...timed, site: { ...timed.site, purpose: 'after-mitigation' as const } };
    // 24 h before the start at 6:00 pm on March 7: ANSI/AARST MAH-2019.
    expect(words('notice', mitigated)).toContain(
      'Keep the mitigation system on from Friday, March 6, 6:00 pm at the latest',
    );
    expect(words('notice', timed)).not.toMatch(/mitigation system on/i);
    const open = { ...bare, site: { ...bare.site, purpose: 'after-mitigation' as const } };
    expect(words('notice', open)).toContain('at least 24 hours before the detectors are placed');
  });

  it('says midnight in words, and leaves the halves of the day to those who use them', () => {
    const midnight = { ...timed, visit: { ...timed.visit, closedSince: '2026-03-07T00:00:00-05:00' } };
    expect(words('notice', midnight)).toContain('Saturday, March 7, 12:00 am (midnight after Friday)');
    const metric: Plan = { ...timed, display: { ...timed.display, length: 'metric' } };
    expect(words('notice', metric)).toContain('Detectors to be placed Saturday, March 7, 6:00 pm Detectors to be');
  });

  it('says that nothing is arranged yet where it is not', () => {
    expect(words('notice', bare)).toContain('Detectors to be placed not scheduled yet');
    expect(words('notice', bare)).toContain('at least 12 hours before the detectors are placed');
  });

  it('says in which room the detectors stand', () => {
    expect(words('notice', bare)).toContain('A1 and A2: Family room, Basement');
  });

  it('counts many detectors, level by level, in place of their labels', () => {
    const house = samplePlan('05-boarding-house');
    expect(words('notice', house)).toContain('9 detectors on Garden level: Lounge, Bedroom 1, Bedroom 2, Bedroom 3,');
  });

  it('names the tester where the log has one for all, and never guesses between two', () => {
    const one = withLogEntry(timed, detector, { placedBy: 'R. Alder' });
    expect(words('notice', one)).toContain('R. Alder Tester');
    const other = timed.levels.flatMap(({ detectors }) => detectors)[1]?.id ?? '';
    expect(words('notice', withLogEntry(one, other, { placedBy: 'M. Brook' }))).not.toContain('R. Alder');
  });

  it('says what to do when something went wrong, safety first', () => {
    for (const kind of ['notice', 'door-hanger'] as const) {
      expect(words(kind, timed)).toContain('Report it to the tester promptly');
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
    expect(text).toContain('Keep windows and exterior doors closed.');
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
  for (const part of ['Owner', 'Seller', 'Occupant', 'Signature Date and time', 'signing was refused', 'Tester']) {
    expect(blank).toContain(part);
  }
  expect(blank).not.toContain('On record');
  expect(blank).toContain('Detectors to be placed Saturday, March 7, 2026, 6:00 pm');
  const signed = withAgreement(timed, { signedBy: 'M. Brook', at: '2026-03-06T09:30:00-05:00' });
  expect(words('agreement', signed)).toContain('On record: signed by M. Brook, Friday, March 6, 2026, 9:30 am.');
  const refused = withAgreement(signed, { refused: true });
  expect(words('agreement', refused)).toContain('On record: M. Brook refused to sign');
  expect(words('agreement', refused)).not.toContain('On record: signed');
});

it('every sentence for the people in the house belongs to a group of the list', () => {
  const known = SENTENCE_GROUPS.flatMap(({ items }) => items);
  const asked = CONDITION_ITEMS.filter((item) => conditionTexts(item).notice !== '').map(({ id }) => id);
  expect([...known].sort()).toEqual([...asked].sort());
});

describe('the agreement', () => {
  const known = fullReportPlan();

  it('names client and firm, and says that interference is reported and a copy left', () => {
    const text = words('agreement', known);
    const { client, firm } = known.report ?? {};
    for (const part of [client?.name, firm?.name, firm?.telephone]) expect(text).toContain(part);
    expect(text).toContain('The tester writes down interference and reports it with the result.');
    expect(text).toContain('I tell visitors and contractors.');
    expect(text).toContain('A copy stays with who signs.');
    expect(words('agreement', bare)).toMatch(/Client Firm /);
  });

  it('has no clause of one state under another', () => {
    const inState = (state: string): Plan => {
      const address = { street: '', city: '', state, zip: '', county: '' };
      return { ...bare, report: { ...bare.report, address } };
    };
    expect(words('agreement', inState('IL'))).toContain('32 Ill. Adm. Code 422.70(g)');
    const illinois = { ...bare, protocol: { profile: 'illinois-422-130', overrides: [] } };
    expect(words('agreement', illinois)).toContain('32 Ill. Adm. Code 422.70(g)');
    for (const plan of [bare, inState('PA')]) {
      expect(words('agreement', plan)).not.toContain('Ill. Adm. Code');
      expect(words('agreement', plan)).toContain('Some states prohibit interference');
    }
  });
});

/** ANSI/AARST MAH-2019, Exh. 2: the letter before the test says that a signature will be asked for. */
it('the notice to occupants says that they are asked to sign, until they have, and not in a test of their own household', () => {
  const asks = /asked to sign the non-interference agreement/;
  const sale = { ...bare, site: { ...bare.site, purpose: 'property-transfer' as const } };
  expect(words('notice', sale)).toMatch(asks);
  expect(words('notice', { ...bare, site: { ...bare.site, purposeAnswered: false } })).toMatch(asks);
  expect(words('notice', bare)).not.toMatch(asks);
  const signed = withAgreement(sale, { signedBy: 'Odd Renner', at: '2026-03-07T17:00:00-05:00' });
  expect(words('notice', signed)).not.toMatch(asks);
  expect(words('notice', withAgreement(sale, { refused: true }))).not.toMatch(asks);
});

/** ANSI/AARST MAH-2019, Exh. 4: what a notice at the entrance holds. */
describe.each(['entrance-notice', 'door-hanger'] as const)('the %s has every item of the published notice', (kind) => {
  const text = words(kind, bare).toLowerCase();

  it.each([
    ['12 h before and during', 'closed from 12 hours before the detectors are placed until they are picked up'],
    ['windows and doors', 'keep windows and exterior doors closed'],
    ['heating and cooling', 'keep the house between 65 and 80 °f (18 and 27 °c)'],
    ['outdoor air', 'set ventilation that brings in outdoor air to its lowest setting'],
    ['whole-house and window fans', 'leave the whole-house fan and all window fans off'],
    ['fireplaces', 'do not use fireplaces'],
    ['not disturbed', 'do not touch'],
  ])('%s', (_, part) => {
    expect(text).toContain(part);
  });

  it('and none of a long-term test, which has no closed house', () => {
    const long = words(kind, { ...bare, protocol: { profile: 'health-canada-long-term', overrides: [] } });
    expect(long).not.toMatch(/closed|fireplace|°F/);
  });
});

it('the notice for each entrance has the telephone of the firm in type that is read from the door step', () => {
  const [svg = ''] = draw('entrance-notice', fullReportPlan());
  const telephone = sheetTexts(svg).find(({ text }) => text.startsWith('Telephone '));
  expect(telephone?.text).toContain(fullReportPlan().report?.firm?.telephone);
  expect(telephone?.height).toBeGreaterThan(7);
});

it('no paper tells where in the app something is corrected', () => {
  const low = { ...timed, conditions: [] };
  for (const kind of ['log', 'report'] as const) expect(words(kind, low)).not.toMatch(/(?:Correct|Enter) this under/);
});

describe('the report', () => {
  it('has every rule with its distance and its sources, to which the plan page refers', () => {
    const plan = samplePlan('06-sale-report');
    const text = words('report', plan);
    for (const { name, sources } of effectiveRules(plan.protocol)) {
      expect(text).toContain(name);
      for (const source of sources) expect(text).toContain(markedCite(source));
    }
    const page = draw('report', plan).at(-1) ?? '';
    const onPage = sheetTexts(page)
      .map((each) => each.text)
      .join(' ');
    expect(onPage).toContain('Exterior doors and windows, 3');
    expect(onPage).toContain('Sources: in the table of the rules, in this report.');
    expect(onPage).not.toContain('sheets that follow');
  });

  it('names what has no room on its drawing, as the sheets do', () => {
    const plan = samplePlan('03-crowded-utility');
    expect(words('report', plan)).toContain(
      'Names without room on the drawing, where their outlines stand: Dehumidifier.',
    );
    expect(words('report', samplePlan('06-sale-report'))).not.toContain('Names without room');
  });

  it('tells each cause once on its first page, however many they are, and where the results are from', () => {
    for (const name of ['01-plain-basement', '03-crowded-utility'] as const) {
      const text = words('report', samplePlan(name));
      expect(text.split('Closed-building hours: The start is not recorded').length).toBe(2);
      expect(text.split('No result is entered yet.').length).toBe(2);
    }
    expect(words('report', fullReportPlan())).toContain('A1 and A2, side by side Family room, Basement');
  });

  it('gives no advice for a time that is over', () => {
    const full = fullReportPlan();
    const { forecast: _, ...visit } = full.visit;
    const text = words('report', { ...full, visit });
    expect(text).toContain('No forecast from before the start is on record');
    expect(text).not.toContain('Look up the forecast');
  });

  it('never cuts off what is missing', () => {
    const pages = draw('report', bare);
    const missing = pages
      .flatMap((svg) => sheetTexts(svg).map((each) => each.text))
      .filter((each) => each.includes('…'));
    expect(missing).toEqual([]);
    expect(words('report', bare)).toMatch(/and \d+ more, marked above/);
  });
});

it('the log has no page of signatures alone', () => {
  for (const name of SAMPLE_NAMES)
    for (const orientation of ORIENTATIONS) {
      const pages = drawDocument('log', { plan: samplePlan(name), paper: 'a4', orientation, date: '2026-03-05' });
      const last = sheetTexts(pages.at(-1) ?? '').map((each) => each.text);
      expect(last).toContain('Remarks');
      expect(last).toContain('Signatures');
    }
});
