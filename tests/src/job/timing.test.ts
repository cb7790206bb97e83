import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it, vi } from 'vitest';
import { emptyPlan } from '../../../geometry/index.ts';
import type { Plan, Visit } from '../../../geometry/plan/model.ts';
import type { TimingRule } from '../../../src/job/timing/checks.ts';
import { errorGrowth, fractionLeft } from '../../../src/job/timing/decay.ts';
import { testStanding, timingReport } from '../../../src/job/timing/report.ts';

/** Thousands of instants on a busy machine. */
vi.setConfig({ testTimeout: 60_000 });

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

  it('is unknown while one end is not written down, and never a pass', () => {
    expect(verdictOf(planWith({ start: at('5-1 9:00') }), 'exposure')).toBe('unknown');
    expect(verdictOf(planWith({}), 'exposure')).toBe('unknown');
    expect(testStanding(planWith({}))).toBe('unknown');
  });

  it('is not evaluated outside the window, and says so', () => {
    const plan = planWith({ start: at('5-1 9:00'), end: at('5-3 8:59'), closedSince: at('4-30 9:00') });
    const check = timingReport(plan).checks.find(({ rule }) => rule === 'exposure');
    expect(check?.detail).toBe(
      "The detector lay out for 47 h 59 min, 1 min short of the kit's 48 h. The test is not evaluated; keep the record and test again.",
    );
    expect(testStanding(plan)).toBe('not-evaluated');
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
    const plan = planWith({ closedSince: at('5-2 3:00'), start: at('5-2 9:00'), end: at('5-4 10:00') });
    const detail = timingReport(plan).checks.find(({ rule }) => rule === 'closed-building')?.detail;
    expect(detail).toContain('Start no earlier than Saturday 2 May, 15:00');
    expect(detail).toContain('until Wednesday 6 May, 3:00 or later');
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
  const calm = { at: null, source: 'weather service', sustained: 20, storm: false, note: '' };
  const lay = (hours: number) => ({
    start: at('5-2 9:00'),
    end: DateTime.fromISO(at('5-2 9:00')).plus({ hours }).toISO(),
  });
  // 32 IAC 422.130(b)(1)(D), as told by others: no test of less than 96 h at 30 mph (48 km/h) or in a severe storm.
  it.each([
    [47.9, false, 60, 'clear'],
    [48, false, 60, 'blocked'],
    [10, true, 60, 'blocked'],
    [48, false, 96, 'tight'],
  ])('%d km/h, storm %s, %d h: %s', (sustained, storm, hours, verdict) => {
    expect(verdictOf(planWith({ ...lay(hours), forecast: { ...calm, sustained, storm } }), 'weather')).toBe(verdict);
  });

  it('is not run, and asked for, while no forecast is noted', () => {
    expect(verdictOf(planWith(lay(60)), 'weather')).toBe('not-run');
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
