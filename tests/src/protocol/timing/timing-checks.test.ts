import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Forecast, Visit } from '../../../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { conditionsReport } from '../../../../src/protocol/conditions/conditions-report.ts';
import { lateClosingOptions } from '../../../../src/protocol/timing/closed-building.ts';
import { decayCourse, errorGrowth, fractionLeft } from '../../../../src/protocol/timing/decay.ts';
import { timelineOf } from '../../../../src/protocol/timing/timeline.ts';
import type { TimingRule } from '../../../../src/protocol/timing/timing-check.ts';
import { timingReport } from '../../../../src/protocol/timing/timing-report.ts';
import { withForecast } from '../../../../src/protocol/timing/weather-check.ts';
import { visitValidity } from '../../../helpers/results.ts';

const ZONE = 'America/New_York';
/** "3-7 18:00": on the wall clock of the site, 2026. */
const at = (text: string): string => {
  const [date = '', time = ''] = text.split(' ');
  const [month, day] = date.split('-').map(Number);
  const [hour, minute] = time.split(':').map(Number);
  return (
    DateTime.fromObject({ year: 2026, month, day, hour, minute }, { zone: ZONE }).toISO({
      suppressMilliseconds: true,
    }) ?? ''
  );
};
const NONE: Visit = { closedSince: null, mitigationOnSince: null, start: null, end: null };
const planWith = (visit: Partial<Visit>, change: Partial<Plan> = {}): Plan => {
  const plan = emptyPlan();
  return { ...plan, site: { ...plan.site, timeZone: ZONE }, visit: { ...NONE, ...visit }, ...change };
};
const verdictOf = (plan: Plan, rule: TimingRule) =>
  timingReport(plan).checks.find((check) => check.rule === rule)?.verdict;
const kit = (minimumHours: number, maximumHours: number) => ({
  kit: { ...emptyPlan().kit, minimumHours, maximumHours },
});

describe('time laid out', () => {
  // 32 IAC 422.130(b)(1) and 25 Pa. Code 240.310(a)(4)(ii): 48 h at least. The kit's own window beside it.
  it.each([
    ['3-2 18:00', '3-4 17:59', 'blocked', 47 + 59 / 60],
    ['3-2 18:00', '3-4 18:00', 'clear', 48],
    ['3-2 18:00', '3-6 18:00', 'clear', 96],
    ['3-2 18:00', '3-6 18:01', 'blocked', 96 + 1 / 60],
    // Clocks go forward on 8 March 2026: from Saturday 18:00 to Monday 18:00 are 47 hours.
    ['3-7 18:00', '3-9 18:00', 'blocked', 47],
    ['3-7 18:00', '3-9 19:00', 'clear', 48],
    // And back on 1 November: from Saturday 18:00 to Monday 17:00 are 48.
    ['10-31 18:00', '11-2 17:00', 'clear', 48],
    ['10-31 18:00', '11-2 16:59', 'blocked', 47 + 59 / 60],
  ])('%s to %s: %s', (start, end, verdict, hours) => {
    const plan = planWith({ start: at(start), end: at(end) });
    expect(verdictOf(plan, 'exposure')).toBe(verdict);
    expect(timingReport(plan).exposureHours).toBeCloseTo(hours, 9);
  });

  it("the window is the kit's, never a constant; and 48 h hold whatever a kit says", () => {
    const lay = { start: at('5-1 9:00'), end: at('5-7 9:00') }; // 144 h
    expect(verdictOf(planWith(lay, kit(96, 168)), 'exposure')).toBe('clear');
    expect(verdictOf(planWith(lay), 'exposure')).toBe('blocked');
    expect(verdictOf(planWith({ start: at('5-1 9:00'), end: at('5-2 9:00') }, kit(20, 96)), 'exposure')).toBe(
      'blocked',
    );
  });

  it('may be fetched after 48 h at the soonest, also with a kit that allows less', () => {
    const report = timingReport(planWith({ start: at('5-1 9:00') }, kit(20, 96)));
    expect(report.earliestEnd).toBe('2026-05-03T09:00:00-04:00');
    expect(report.latestEnd).toBe('2026-05-05T09:00:00-04:00');
  });

  it('is unknown while one end is not written down, and never a pass', () => {
    expect(verdictOf(planWith({ start: at('5-1 9:00') }), 'exposure')).toBe('unknown');
    expect(verdictOf(planWith({}), 'exposure')).toBe('unknown');
    expect(visitValidity(planWith({}))).toBe('unknown');
  });

  it('is not evaluated outside the window, and says so', () => {
    const plan = planWith({ start: at('5-1 9:00'), end: at('5-3 8:59'), closedSince: at('4-30 9:00') });
    const check = timingReport(plan).checks.find(({ rule }) => rule === 'exposure');
    expect(check?.detail).toBe(
      "The detector lay out for 47 h 59 min, 1 min short of the kit's 48 h. The test is not evaluated; keep the record and test again.",
    );
    expect(visitValidity(plan)).toBe('not-evaluated');
  });
});

describe('the closed house', () => {
  // MAH-2019 Exh. 2 and 4, MALB 4.1, 25 Pa. Code 240.310(a)(4)(iv): 12 h before a test of less than 4 days; MAH-2019 6.1.2: the ways out.
  it.each([
    ['5-1 21:00', '5-4 9:00', 'clear', '12 h before, to the minute'],
    ['5-1 21:01', '5-4 9:00', 'blocked', 'a minute short'],
    ['5-2 9:00', '5-6 9:00', 'clear', '96 h in the closed house need no lead time'],
    ['5-2 9:00', '5-6 8:59', 'blocked', 'a minute short of 96 h'],
    ['5-2 10:00', '5-6 9:00', 'blocked', 'closed an hour after the start of 96 h'],
  ])('closed %s, pick-up %s: %s (%s)', (closed, end, verdict) => {
    const plan = planWith({ closedSince: at(closed), start: at('5-2 9:00'), end: at(end) }, kit(48, 168));
    expect(verdictOf(plan, 'closed-building')).toBe(verdict);
  });

  it('extended to 96 h after it was closed, where the kit may lie so long', () => {
    const late = { closedSince: at('5-2 12:00'), start: at('5-2 9:00') };
    expect(verdictOf(planWith({ ...late, end: at('5-6 12:00') }, kit(48, 168)), 'closed-building')).toBe('clear');
    expect(verdictOf(planWith({ ...late, end: at('5-6 11:59') }, kit(48, 168)), 'closed-building')).toBe('blocked');
  });

  it('names both ways out', () => {
    const plan = planWith({ closedSince: at('5-2 3:00'), start: at('5-2 9:00'), end: at('5-4 10:00') }, kit(48, 168));
    const detail = timingReport(plan).checks.find(({ rule }) => rule === 'closed-building')?.detail;
    expect(detail).toContain('Start no earlier than Saturday 2 May, 15:00');
    expect(detail).toContain('until Wednesday 6 May, 9:00 or later, and not past Saturday 9 May, 9:00');
  });

  it('opened before the pick-up is broken, and not known is unknown', () => {
    const good = { closedSince: at('5-1 9:00'), start: at('5-2 9:00'), end: at('5-4 10:00') };
    expect(verdictOf(planWith({ ...good, closedUntil: at('5-4 9:59') }), 'closed-building')).toBe('blocked');
    expect(verdictOf(planWith({ ...good, closedUntil: at('5-4 10:00') }), 'closed-building')).toBe('clear');
    expect(verdictOf(planWith({ ...good, closedSince: null }), 'closed-building')).toBe('unknown');
  });

  it('a monitor may leave the first hours out: 46 h in one run after 12 h closed', () => {
    const monitor = { device: 'monitor' as const, closedSince: at('5-2 9:00'), start: at('5-2 9:00') };
    expect(verdictOf(planWith({ ...monitor, end: at('5-4 19:00') }), 'closed-building')).toBe('tight');
    expect(verdictOf(planWith({ ...monitor, end: at('5-4 18:59') }), 'closed-building')).toBe('blocked');
  });
});

describe('the way out of a late closing', () => {
  const HOURS = 3_600_000;
  const iso = (ms: number) => new Date(ms).toISOString();

  // ANSI/AARST MAH-2019, 6.1.2: wait for 12 h, or extend to 4 days in the closed house, or average a monitor's later hours.
  it('done to the letter, is clear, whatever was late and whatever the kit', () => {
    const kits = [kit(48, 96), kit(48, 97), kit(48, 168), kit(96, 168), kit(20, 60)];
    fc.assert(
      fc.property(
        fc.integer({ min: -11 * 60, max: 90 * 60 }),
        fc.constantFrom(...kits),
        fc.constantFrom('passive' as const, 'monitor' as const),
        fc.integer({ min: 0, max: 400 }),
        fc.boolean(),
        (minutes, hours, device, day, fetched) => {
          const start = Date.parse(at('1-10 9:00')) + day * 24 * HOURS;
          const closed = start + minutes * 60_000;
          const late = { device, start: iso(start), closedSince: iso(closed) };
          const end = fetched ? iso(start + 48 * HOURS) : null;
          const plan = planWith({ ...late, end }, hours);
          if (verdictOf(plan, 'closed-building') !== 'blocked') return;
          const { startFrom, leaveUntil } = lateClosingOptions(plan, closed, start);
          const waited = { ...late, start: iso(startFrom), end: iso(startFrom + 48 * HOURS) };
          expect(verdictOf(planWith(waited, hours), 'closed-building')).toBe('clear');
          expect(verdictOf(planWith({ ...waited, end: null }, hours), 'closed-building')).toBe('clear');
          if (leaveUntil === null) return;
          for (const done of [{ end: iso(leaveUntil) }, { end: null, plannedEnd: iso(leaveUntil) }]) {
            const left = planWith({ ...late, ...done }, hours);
            // A monitor's later hours are averaged: tight, and said.
            expect(['clear', ...(device === 'monitor' ? ['tight'] : [])]).toContain(verdictOf(left, 'closed-building'));
            expect(verdictOf(left, 'exposure')).toBe('clear');
          }
        },
      ),
    );
  });

  it('sends no kit past its limit', () => {
    const detail = (hours: Partial<Plan>) =>
      timingReport(planWith({ closedSince: at('5-2 12:00'), start: at('5-2 9:00') }, hours)).checks.find(
        ({ rule }) => rule === 'closed-building',
      )?.detail;
    expect(detail(kit(48, 96))).toContain('this kit may not lie long enough');
    expect(detail(kit(48, 99))).toContain('fetch it at Wednesday 6 May, 12:00, to the minute');
  });

  it('asks for the closing 12 h before a test of any length', () => {
    const long = planWith({ start: at('5-2 9:00'), end: at('5-8 9:00') }, kit(48, 168));
    expect(timingReport(long).closeBy).toBe('2026-05-01T21:00:00-04:00');
  });

  it('of a house that was opened before the start is to start later, and nothing to repeat', () => {
    const opened = planWith({ closedSince: at('5-1 9:00'), closedUntil: at('5-1 20:00'), start: at('5-2 9:00') });
    const check = timingReport(opened).checks.find(({ rule }) => rule === 'closed-building');
    expect(check?.verdict).toBe('blocked');
    expect(check?.detail).toContain('start later');
    expect(check?.detail).not.toMatch(/not evaluated|test again/);
    const again = planWith({ ...opened.visit, closedSince: at('5-1 21:00') });
    expect(verdictOf(again, 'closed-building')).toBe('clear');
  });
});

describe('a pick-up that is planned', () => {
  const planned = { closedSince: at('5-1 9:00'), start: at('5-2 9:00'), plannedEnd: at('5-4 10:00') };
  it('is what the times are held against, is said to be planned, and leaves the test unknown', () => {
    const report = timingReport(planWith(planned));
    expect(report).toMatchObject({ exposureHours: 49, planned: true });
    const exposure = report.checks.find(({ rule }) => rule === 'exposure');
    expect(exposure).toMatchObject({ verdict: 'clear', detail: expect.stringContaining('As planned') });
    expect(visitValidity(planWith(planned))).toBe('unknown');
    expect(
      timelineOf(planWith(planned))
        ?.bars.filter(({ kind }) => kind === 'done')
        .map(({ name }) => name),
    ).toEqual(['House closed']);
  });

  it('gives way to the one that happened', () => {
    const report = timingReport(planWith({ ...planned, end: at('5-4 9:00') }));
    expect(report).toMatchObject({ exposureHours: 48, planned: false });
  });
});

describe('a long-term test', () => {
  // Health Canada, radon measurements in homes (secondary): at least 91 days, and no closed house.
  const long = (visit: Partial<Visit>, change: Partial<Plan> = kit(2184, 8784)) =>
    planWith(visit, { protocol: { profile: 'health-canada-long-term', overrides: [] }, ...change });
  it.each([
    ['10-1 9:00', '12-31 8:00', 'clear'],
    ['10-1 9:00', '12-31 7:59', 'blocked'],
  ])('from %s to %s: %s', (start, end, verdict) => {
    // The clocks go back on 1 November: 91 days of 24 h end an hour earlier on the wall.
    expect(verdictOf(long({ start: at(start), end: at(end) }), 'exposure')).toBe(verdict);
  });

  it('asks for 91 days whatever the kit allows, and says so of a kit that may not lie so long', () => {
    const visit = { start: at('3-10 9:00') };
    expect(timingReport(long(visit, kit(48, 8784))).earliestEnd).toBe('2026-06-09T09:00:00-04:00');
    const short = timingReport(long(visit, kit(48, 96))).checks.find(({ rule }) => rule === 'exposure');
    expect(short).toMatchObject({ verdict: 'blocked', detail: expect.stringContaining('Choose another kit') });
  });

  it('has no closed house and no weather, and nothing of either in its conditions', () => {
    const plan = long({ start: at('3-10 9:00'), end: at('6-20 9:00') });
    expect(timingReport(plan).closeBy).toBeNull();
    expect(verdictOf(plan, 'closed-building')).toBe('not-run');
    expect(verdictOf(plan, 'weather')).toBe('not-run');
    expect(conditionsReport(plan).rows.map(({ item }) => item.id)).toEqual(['not-disturbed']);
    const undisturbed = [{ item: 'not-disturbed', state: 'kept', at: null, note: '' }] as const;
    expect(visitValidity({ ...plan, conditions: undisturbed })).toBe('holds');
  });
});

describe('the mitigation system', () => {
  // MAH-2019 7.3.2 and the EPA checklist: 24 h of running before the test; EPA 402-R-93-078 (from memory): within 30 days.
  it.each([
    ['5-1 9:00', 'clear'],
    ['5-1 9:01', 'blocked'],
    ['5-2 10:00', 'blocked'],
  ])('on since %s: %s', (on, verdict) => {
    expect(verdictOf(planWith({ mitigationOnSince: at(on), start: at('5-2 9:00') }), 'mitigation-system')).toBe(
      verdict,
    );
  });

  it('is not run where there is none, and unknown where a test is to show what it does', () => {
    expect(verdictOf(planWith({ start: at('5-2 9:00') }), 'mitigation-system')).toBe('not-run');
    const plan = planWith({ start: at('5-2 9:00') });
    expect(verdictOf({ ...plan, site: { ...plan.site, purpose: 'after-mitigation' } }, 'mitigation-system')).toBe(
      'unknown',
    );
  });
});

describe('the weather', () => {
  const calm = { at: at('5-1 20:00'), source: 'weather service', sustained: 20, storm: false, note: '' };
  const lay = (hours: number) => ({
    start: at('5-2 9:00'),
    end: DateTime.fromISO(at('5-2 9:00')).plus({ hours }).toISO(),
  });
  const check = (forecast: Partial<Forecast>, visit: Partial<Visit> = lay(60), change: Partial<Plan> = {}) =>
    timingReport(planWith({ ...visit, forecast: { ...calm, ...forecast } }, change)).checks.find(
      ({ rule }) => rule === 'weather',
    );
  const mph = (value: number) => value * 1.609344;

  // 32 IAC 422.130(b)(1)(D), as told by others: no test of less than 96 h at 30 mph (48 km/h) or in a severe storm.
  it.each([
    [47.9, false, 60, 'clear'],
    [48, false, 60, 'blocked'],
    [mph(29), false, 60, 'clear'],
    [mph(29.8), false, 60, 'clear'],
    [mph(29.9), false, 60, 'blocked'], // 48.1 km/h
    [mph(30), false, 60, 'blocked'],
    [mph(31), false, 60, 'blocked'],
    [10, true, 60, 'blocked'],
    [48, false, 96, 'tight'],
    [48, false, 95.99, 'blocked'],
    [0, true, 96, 'tight'],
  ])('%d km/h, storm %s, %d h: %s', (sustained, storm, hours, verdict) => {
    expect(check({ sustained, storm }, lay(hours))?.verdict).toBe(verdict);
  });

  it('is not run, and asked for, while no forecast is noted', () => {
    expect(verdictOf(planWith(lay(60)), 'weather')).toBe('not-run');
  });

  it.each([
    [{ sustained: null }, 'the sustained wind'],
    [{ storm: null }, 'whether a severe storm was forecast'],
    [{ at: null }, 'when it was looked up'],
    [{ source: ' ' }, 'where it was read'],
    [{ at: null, source: '' }, 'when it was looked up and where it was read'],
  ])('is unknown, never a pass, while something is not noted: %j', (gap, words) => {
    expect(check(gap)).toMatchObject({
      verdict: 'unknown',
      detail: expect.stringContaining(`Not noted yet: ${words}.`),
    });
  });

  it('is blocked by what is known, whatever else is not noted', () => {
    expect(check({ sustained: 60, storm: null, at: null, source: '' })?.verdict).toBe('blocked');
    expect(check({ sustained: null, storm: true })?.verdict).toBe('blocked');
  });

  it('must be looked up before the start: at its minute still counts', () => {
    expect(check({ at: at('5-2 9:00') })?.verdict).toBe('clear');
    expect(check({ at: at('5-2 9:01') })?.verdict).toBe('unknown');
    expect(check({}, {})?.verdict).toBe('unknown');
  });

  it('goes by the least that the kit asks for until the detectors are fetched', () => {
    expect(check({ sustained: 50 }, { start: at('5-2 9:00') }, kit(96, 168))?.verdict).toBe('tight');
    expect(check({ sustained: 50 }, { start: at('5-2 9:00') }, kit(95, 168))?.verdict).toBe('blocked');
  });

  it('is said in the units of the plan, with when and where it was read', () => {
    expect(check({ sustained: mph(12) })?.detail).toBe(
      'Forecast of Friday 1 May, 20:00 (weather service): sustained wind of 12 mph, no severe storm. Looked up 13 h before the start.',
    );
    const metric = { display: { length: 'metric', radon: 'Bq/m3' } } as const;
    expect(check({ sustained: 47.9 }, lay(60), metric)?.detail).toContain('sustained wind of 47.9 km/h');
    expect(check({ sustained: 48.1 })?.detail).toContain(
      '29.89 mph, no severe storm. The limit is 30 mph (48 km/h); of the two figures the lower one counts.',
    );
  });

  it('is entered piece by piece, and gone when all of it is taken out', () => {
    const visit = withForecast(NONE, { sustained: 20 });
    expect(visit.forecast).toEqual({ at: null, source: '', sustained: 20, storm: null, note: '' });
    expect(withForecast(visit, { sustained: null })).toEqual(NONE);
  });
});

describe('on the way to the laboratory', () => {
  const fetched = { start: at('5-1 9:00'), end: at('5-4 9:00') };
  const check = (visit: Partial<Visit>) =>
    timingReport(planWith({ ...fetched, ...visit })).checks.find(({ rule }) => rule === 'laboratory');

  // The kit's own limit: 5 days of 24 h from the pick-up.
  it.each([
    [{ received: at('5-9 9:00') }, 'clear'],
    [{ received: at('5-9 9:01') }, 'blocked'],
    [{ posted: at('5-9 9:00') }, 'not-run'],
    [{ posted: at('5-9 9:01') }, 'blocked'],
    [{ posted: at('5-4 10:00'), received: at('5-6 9:00') }, 'clear'],
    // What cannot be is no pass.
    [{ received: at('5-4 8:59') }, 'unknown'],
    [{ posted: at('5-4 8:59') }, 'unknown'],
    [{ posted: at('5-6 9:01'), received: at('5-6 9:00') }, 'unknown'],
    [{ end: null, received: at('5-6 9:00') }, 'unknown'],
    [{ end: null }, 'not-run'],
    [{ device: 'monitor' as const, received: at('6-9 9:00') }, 'not-run'],
  ])('%j: %s', (visit, verdict) => {
    expect(check(visit)?.verdict).toBe(verdict);
  });
});

describe('the instants of a visit', () => {
  it('are counted from the start, in the zone of the site', () => {
    const report = timingReport(planWith({ start: at('3-7 18:00'), end: at('3-10 18:00') }));
    expect(report).toMatchObject({
      closeBy: '2026-03-07T06:00:00-05:00',
      mitigationOnBy: '2026-03-06T18:00:00-05:00',
      earliestEnd: '2026-03-09T19:00:00-04:00',
      latestEnd: '2026-03-11T19:00:00-04:00',
      laboratoryBy: '2026-03-15T18:00:00-04:00',
    });
  });

  it('are null while the start is not known', () => {
    expect(timingReport(planWith({}))).toMatchObject({
      exposureHours: null,
      closeBy: null,
      earliestEnd: null,
      latestEnd: null,
    });
  });
});

describe('no exposure is off by a minute', () => {
  const zones = Intl.supportedValuesOf('timeZone');
  it('in any zone, over any change of clocks from 2024 to 2030, by wall clocks of an independent library', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: Date.UTC(2024, 0, 1) / 60_000, max: Date.UTC(2030, 11, 20) / 60_000 }),
        fc.integer({ min: 2870, max: 5770 }),
        (zone, from, minutes) => {
          const start = DateTime.fromMillis(from * 60_000, { zone });
          const end = start.plus({ minutes });
          const plan = planWith({ start: start.toISO(), end: end.toISO() });
          const placed = { ...plan, site: { ...plan.site, timeZone: zone } };
          const report = timingReport(placed);
          expect(report.exposureHours).toBe(minutes / 60);
          expect(verdictOf(placed, 'exposure')).toBe(minutes >= 2880 && minutes <= 5760 ? 'clear' : 'blocked');
          expect(DateTime.fromISO(report.earliestEnd ?? '').toMillis()).toBe(start.plus({ hours: 48 }).toMillis());
          // Written by the clock of the site.
          expect(DateTime.fromISO(report.latestEnd ?? '', { setZone: true }).offset).toBe(
            start.plus({ hours: 96 }).offset,
          );
        },
      ),
      { numRuns: 3000 },
    );
  });
});

describe('what is left of the radon', () => {
  // Half-life 3.8235 d; the fractions by arithmetic on it, four digits.
  it.each([
    [24, 0.8342],
    [48, 0.6959],
    [72, 0.5805],
    [96, 0.4843],
    [120, 0.404],
    [144, 0.337],
    [168, 0.2811],
    [240, 0.1632],
  ])('after %d h: %d', (hours, fraction) => {
    expect(fractionLeft(hours * 3_600_000)).toBeCloseTo(fraction, 4);
  });

  it('a quarter left doubles the counting error', () => {
    expect(errorGrowth(2 * 3.8235 * 24 * 3_600_000)).toBeCloseTo(2, 12);
    expect(fractionLeft(-5)).toBe(1);
  });
});

describe('what is left of it on the way, as a picture', () => {
  // Pick-up Monday 4 May 9:00; the kit gives 5 days, the post takes 2.
  const fetched = { start: at('5-1 9:00'), end: at('5-4 9:00') };

  it('has the limit of the laboratory, the last moment to post, and what was written down, in the order of time', () => {
    const course = decayCourse(planWith({ ...fetched, posted: at('5-4 21:00'), received: at('5-7 9:00') }));
    expect(course?.projected).toBe(false);
    // 2 ** (-days / 3.8235)
    expect(course?.marks.map(({ kind, days, left }) => [kind, days, Number(left.toFixed(4))])).toEqual([
      ['posted', 0.5, 0.9133],
      ['post-by', 3, 0.5805],
      ['received', 3, 0.5805],
      ['deadline', 5, 0.404],
    ]);
    expect(course?.marks.at(-1)?.text).toBe('At the laboratory by Saturday 9 May, 9:00: 40 % left');
    expect(course?.curve[0]).toEqual({ days: 0, left: 1 });
    expect(course?.curve.at(-1)?.days).toBe(course?.span);
    expect(course?.ticks).toEqual([
      { days: 0, date: '4 May' },
      { days: 2, date: '6' },
      { days: 4, date: '8' },
      { days: 6, date: '10' },
    ]);
  });

  it('is reckoned from the first possible pick-up until the real one is written down, and says so', () => {
    const course = decayCourse(planWith({ start: at('5-1 9:00'), posted: at('5-2 9:00') }));
    expect(course).toMatchObject({ projected: true, from: Date.parse(at('5-3 9:00')) });
    expect(course?.marks.map(({ kind }) => kind)).toEqual(['post-by', 'deadline']);
    expect(course?.notes[0]).toContain('If it is fetched Sunday 3 May, 9:00');
  });

  it('names the month where it changes, and the days by the clock of the site over a change of clocks', () => {
    // Clocks go back on 1 November: 48 h after Saturday 31 October 0:30 it is Sunday 23:30.
    const course = decayCourse(planWith({ start: at('10-28 0:30'), end: at('10-31 0:30') }));
    expect(course?.ticks.map(({ date }) => date)).toEqual(['31 Oct', '1 Nov', '3', '5']);
  });

  it('is none without a start or for a monitor, and is posted at once where the kit leaves no time', () => {
    expect(decayCourse(planWith({}))).toBeNull();
    expect(decayCourse(planWith({ ...fetched, device: 'monitor' }))).toBeNull();
    const hurried = decayCourse(planWith(fetched, { kit: { ...emptyPlan().kit, labDays: 1 } }));
    expect(hurried?.marks.map(({ kind, days }) => [kind, days])).toEqual([
      ['post-by', 0],
      ['deadline', 1],
    ]);
  });

  it('never grows beyond a month, whatever was written down', () => {
    const course = decayCourse(planWith({ ...fetched, received: at('9-1 9:00') }));
    expect(course?.span).toBe(30);
    expect(course?.ticks.length).toBeLessThanOrEqual(5);
  });
});

describe('times that speak against a test whatever else is missing', () => {
  // ANSI/AARST MAH-2019, Exh. 2 and 4: closed through the test.
  const lay = { start: at('3-2 18:00'), end: at('3-5 18:00') };
  it.each([
    ['3-5 17:59', 'blocked'],
    ['3-5 18:00', 'unknown'],
  ])('opened at %s, with the closing not written down: %s', (opened, verdict) => {
    expect(verdictOf(planWith({ ...lay, closedUntil: at(opened) }), 'closed-building')).toBe(verdict);
  });

  it('a pick-up before the start is no time laid out', () => {
    const plan = planWith({ start: lay.end, end: lay.start });
    const exposure = timingReport(plan).checks.find(({ rule }) => rule === 'exposure');
    expect(exposure?.verdict).toBe('blocked');
    expect(exposure?.detail).toContain('before the start');
    expect(exposure?.detail).not.toContain('72 h');
  });
});

describe('the visit as bars', () => {
  it('shows the house closed no longer than it was', () => {
    const visit = { closedSince: at('3-2 6:00'), start: at('3-2 18:00'), end: at('3-5 18:00') };
    const closedTo = (opened: string | null) =>
      timelineOf(planWith({ ...visit, closedUntil: opened }))?.bars.find(({ name }) => name === 'House closed')?.to;
    expect(closedTo(at('3-4 12:00'))).toBe(Date.parse(at('3-4 12:00')));
    expect(closedTo(at('3-6 12:00'))).toBe(Date.parse(at('3-5 18:00')));
    expect(closedTo(null)).toBe(Date.parse(at('3-5 18:00')));
  });
});
