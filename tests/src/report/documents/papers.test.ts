import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../../../geometry/messages/index.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { withAgreement } from '../../../../src/protocol/conditions/agreement.ts';
import { CONDITION_ITEMS } from '../../../../src/protocol/conditions/conditions-report.ts';
import { withCondition } from '../../../../src/protocol/conditions/edit-conditions.ts';
import { withLogEntry } from '../../../../src/protocol/custody/log-entries.ts';
import type { VisitDocument } from '../../../../src/report/documents/draw-document.ts';
import { SENTENCE_GROUPS } from '../../../../src/report/documents/occupant-texts.ts';
import { samplePlan } from '../../../helpers/sample-files.ts';
import { sheetTexts } from '../../../helpers/sheet-texts.ts';

import { bare, detector, draw, filled, PAPERS, timed, words } from './job-plans.ts';

describe('what is asked of the people in the house', () => {
  it.each<VisitDocument>(['notice', 'door-hanger', 'agreement'])('stands on the %s, item by item', (kind) => {
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

  it('says from when to when, local time at the property: twelve hours before, and over the change of clocks', () => {
    const text = words('notice', timed);
    expect(text).toContain('House closed from Saturday, March 7, 6:00 am');
    expect(text).toContain('Detectors placed Saturday, March 7, 6:00 pm');
    // 48 h on: the clocks went forward in between.
    expect(text).toContain('between Monday, March 9, 7:00 pm and Wednesday, March 11, 7:00 pm');
    expect(text).toContain('Local time at the property (time zone America/New York).');
  });

  it('says midnight in words, and leaves the halves of the day to those who use them', () => {
    const midnight = { ...timed, visit: { ...timed.visit, closedSince: '2026-03-07T00:00:00-05:00' } };
    expect(words('notice', midnight)).toContain('Saturday, March 7, 12:00 am (midnight after Friday)');
    const metric: Plan = { ...timed, display: { ...timed.display, length: 'metric' } };
    expect(words('notice', metric)).toContain('Detectors placed Saturday, March 7, 6:00 pm Detectors picked up');
  });

  it('says that nothing is arranged yet where it is not', () => {
    expect(words('notice', bare)).toContain('Detectors placed not scheduled yet');
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
  expect(blank).toContain('Detectors placed Saturday, March 7, 2026, 6:00 pm');
  const signed = withAgreement(timed, { signedBy: 'M. Brook', at: '2026-03-06T09:30:00-05:00' });
  expect(words('agreement', signed)).toContain('On record: signed by M. Brook, Friday, March 6, 2026, 9:30 am.');
  const refused = withAgreement(signed, { refused: true });
  expect(words('agreement', refused)).toContain('On record: M. Brook refused to sign');
  expect(words('agreement', refused)).not.toContain('On record: signed');
});

it('every sentence for the people in the house belongs to a group of the list', () => {
  const known = SENTENCE_GROUPS.flatMap(({ items }) => items);
  const asked = CONDITION_ITEMS.filter(({ notice }) => notice !== '').map(({ id }) => id);
  expect([...known].sort()).toEqual([...asked].sort());
});
