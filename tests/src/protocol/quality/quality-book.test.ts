import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { QualityCheck } from '../../../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { withLogEntry } from '../../../../src/protocol/custody/log-entries.ts';
import { qualityBook } from '../../../../src/protocol/quality/quality-book.ts';
import { BLANKS, DUPLICATES, requiredInMonth, SPIKES } from '../../../../src/protocol/quality/requirements.ts';
import { freshPlan } from '../../../../src/state/fresh-plan.ts';
import { onePlace as plan } from '../../../helpers/invented-pairs.ts';

/** A spike of 10 pCi/L that was read as 11, without a serial number. */
const check = (patch: Partial<QualityCheck> = {}): QualityCheck => ({
  id: 'q1',
  kind: 'spike',
  at: '2026-03-20T12:00:00Z',
  serial: '',
  by: '',
  value: 11,
  unit: 'pCi/L',
  reference: 10,
  detectionLimit: null,
  note: '',
  ...patch,
});

describe('what a month owes', () => {
  // N.J.A.C. 7:28-27.10(c) and (d): the lesser of 10 % or 50, of 5 % or 25; MS-QA-2019, 5.3.1-5.3.3: 3 %, at most 6.
  it.each([
    [0, 0, 0, 0],
    [1, 1, 1, 1],
    [10, 1, 1, 1],
    [11, 2, 1, 1],
    [20, 2, 1, 1],
    [21, 3, 2, 1],
    [34, 4, 2, 2],
    [200, 20, 10, 6],
    [500, 50, 25, 6],
    [501, 50, 25, 6],
    [2000, 50, 25, 6],
  ])('%d measurements: %d pairs, %d blanks, %d spikes', (measurements, pairs, blanks, spikes) => {
    expect([DUPLICATES, BLANKS, SPIKES].map((duty) => requiredInMonth(duty, measurements))).toEqual([
      pairs,
      blanks,
      spikes,
    ]);
  });

  it('is counted by month and device, a pair as one measurement; a year owes three spikes', () => {
    const plans = [
      plan([3], '2026-03-02'),
      plan([5, 5.2], '2026-03-31'),
      { ...plan([2], '2026-04-01'), quality: [check()] },
    ];
    const book = qualityBook(plans);
    expect(
      book.months.map(({ month, measurements, duplicates, spikes }) => [month, measurements, duplicates, spikes]),
    ).toEqual([
      ['2026-03', 2, { done: 1, required: 1 }, { done: 1, required: 1 }],
      ['2026-04', 1, { done: 0, required: 1 }, { done: 0, required: 1 }],
    ]);
    expect(book.years).toEqual([{ year: '2026', device: 'charcoal-barrier', spikes: { done: 1, required: 3 } }]);
  });

  it('a duplicate of a plan adds nothing to what was done; without serial numbers nobody can tell', () => {
    const pair = plan([5, 5.2], '2026-03-31');
    const doneIn = (plans: readonly Plan[]) => {
      const { months, copies } = qualityBook(plans);
      return [months[0]?.measurements, months[0]?.duplicates.done, copies];
    };
    const start = '2026-03-29T09:00:00-04:00';
    const ids = pair.readings.map(({ detector }) => detector);
    const begun: Plan = { ...pair, visit: { ...pair.visit, start } };
    const serials = (suffix: string): Plan =>
      ids.reduce((now: Plan, id, k) => withLogEntry(now, id, { serial: `S${k}${suffix}` }), begun);
    const first = serials('a');
    expect(doneIn([first, { ...first, title: 'X, copy' }])).toEqual([1, 1, 1]);
    expect(doneIn([first, serials('b')])).toEqual([2, 2, 0]);
    expect(doneIn([pair, pair])).toEqual([2, 2, 0]);
  });

  describe('in copies of a plan', () => {
    const test = (day: string, quality: readonly QualityCheck[], serial: string): Plan => {
      const made = plan([5, 5.2], day);
      const begun: Plan = { ...made, quality, visit: { ...made.visit, start: `${day}T09:00:00Z` } };
      const ids = made.readings.map(({ detector }) => detector);
      return ids.reduce((now: Plan, id, k) => withLogEntry(now, id, { serial: `${serial}${k}` }), begun);
    };
    const counts = (plans: readonly Plan[]) => {
      const { months, years, copies } = qualityBook(plans);
      const { measurements, duplicates, blanks, spikes } = months[0] ?? {};
      return [measurements, duplicates?.done, blanks?.done, spikes?.done, years[0]?.spikes.done, copies];
    };

    it('a copy to which a blank was added is a copy still, and the blank counts', () => {
      const spike = check();
      const first = test('2026-03-02', [spike], 'S');
      const copy = { ...first, quality: [spike, check({ id: 'q2', kind: 'blank', value: 0, reference: null })] };
      expect(counts([first, copy])).toEqual([1, 1, 1, 1, 1, 1]);
      expect(counts([copy, first])).toEqual([1, 1, 1, 1, 1, 1]);
    });

    it('a start written in another offset is the same start', () => {
      const first = test('2026-03-02', [], 'S');
      const copy = { ...first, visit: { ...first.visit, start: '2026-03-02T04:00:00-05:00' } };
      expect(counts([first, copy])).toEqual([1, 1, 0, 0, 0, 1]);
    });

    it('one spike in the plans of three houses, each begun as a copy of the last, is one spike of three', () => {
      const spike = check({ serial: 'K-7' });
      const houses = ['02', '09', '16'].map((day) => test(`2026-03-${day}`, [spike], day));
      expect(counts(houses)).toEqual([3, 3, 0, 1, 1, 0]);
    });

    it('without serial numbers nobody can tell', () => {
      const houses = ['02', '09'].map((day) => test(`2026-03-${day}`, [check()], day));
      expect(counts(houses)).toEqual([2, 2, 0, 2, 2, 0]);
    });
  });

  describe('while results are awaited', () => {
    // N.J.A.C. 7:28-27.10(c) and (d) go by the month: once the results are in, no pair or blank can be placed with them any more.
    const placed = (count: number, withResult: number, visit: Partial<Plan['visit']>): Plan => {
      const made = plan(
        Array.from({ length: count }, () => 3),
        '2026-03-05',
      );
      const levels = made.levels.map((level) => ({
        ...level,
        detectors: level.detectors.map((each) => ({ ...each, pair: null })),
      }));
      return {
        ...made,
        levels,
        readings: made.readings.slice(0, withResult),
        visit: { ...made.visit, end: null, ...visit },
      };
    };
    const month = (each: Plan) => {
      const { months } = qualityBook([each]);
      return months.map(({ month: name, measurements, awaited, duplicates, blanks }) => [
        name,
        measurements,
        awaited,
        duplicates.required,
        blanks.required,
      ]);
    };
    const start = '2026-03-02T12:00:00Z';

    it.each<[string, Partial<Plan['visit']>]>([
      ['placed', { start }],
      ['picked up', { end: '2026-03-05T12:00:00Z' }],
      ['picked up, the start only planned', { start, startPlanned: true, end: '2026-03-05T12:00:00Z' }],
    ])('locations that are %s count for what is required', (_, visit) => {
      expect(month(placed(41, 1, visit))).toEqual([['2026-03', 1, 40, 5, 3]]);
      expect(month(placed(41, 0, visit))).toEqual([['2026-03', 0, 41, 5, 3]]);
    });

    it('what is only planned or has no time does not count', () => {
      expect(month(placed(41, 0, { start, startPlanned: true }))).toEqual([]);
      expect(month(placed(41, 0, {}))).toEqual([]);
    });

    it('a pair counts as one location, and is done with its results', () => {
      const pair = { ...plan([5, 5.2], '2026-03-05'), readings: [] };
      expect(qualityBook([pair]).months[0]).toMatchObject({
        measurements: 0,
        awaited: 1,
        duplicates: { done: 0, required: 1 },
      });
    });
  });

  it('a kind of kit that nobody has entered is a kind of its own', () => {
    const fresh = freshPlan();
    expect(fresh.kit.kind).toBe('');
    const open = { ...plan([3], '2026-03-02'), kit: fresh.kit };
    expect(
      qualityBook([open, plan([3], '2026-03-02')])
        .months.map(({ device }) => device)
        .sort(),
    ).toEqual(['charcoal-barrier', 'kind not entered']);
  });

  it('the month is that of the local time at the property', () => {
    const late = {
      ...plan([3], '2026-03-31'),
      visit: { closedSince: null, mitigationOnSince: null, start: null, end: '2026-04-01T02:00:00Z' },
    };
    const there = { ...late, site: { ...late.site, timeZone: 'America/New_York' } };
    expect(qualityBook([late]).months[0]?.month).toBe('2026-04');
    expect(qualityBook([there]).months[0]?.month).toBe('2026-03');
  });
});

describe('blanks and spikes', () => {
  const base = {
    id: 'q',
    at: null,
    serial: '',
    by: '',
    unit: 'pCi/L',
    note: '',
    reference: null,
    detectionLimit: null,
  } as const;
  const verdictOf = (check: Partial<QualityCheck>) => {
    const [record] = qualityBook([
      { ...emptyPlan(), quality: [{ ...base, kind: 'blank', value: 0, ...check }] },
    ]).checks;
    return record?.verdict;
  };
  // MS-QA-2019, 5.3: warning beyond +/-20 %, control beyond +/-30 %; N.J.A.C. 7:28-27.10(d): a blank at or below the detection limit.
  it.each([
    [12, 'clear'],
    [12.001, 'warning'],
    [8, 'clear'],
    [7.999, 'warning'],
    [13, 'warning'],
    [13.001, 'out-of-control'],
    [7, 'warning'],
    [6.999, 'out-of-control'],
  ])('a spike of 10 that reads %d: %s', (value, verdict) => {
    expect(verdictOf({ kind: 'spike', value, reference: 10 })).toBe(verdict);
  });

  it.each([
    [0.4, 0.4, 'clear'],
    [0.41, 0.4, 'out-of-control'],
    [0.1, null, 'unknown'],
    [0, null, 'clear'],
  ])('a blank that reads %d with a limit of %s: %s', (value, detectionLimit, verdict) => {
    expect(verdictOf({ value, detectionLimit })).toBe(verdict);
  });

  it('a spike without a reference cannot be evaluated', () => {
    expect(verdictOf({ kind: 'spike', value: 9 })).toBe('unknown');
  });
});
