import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Forecast, Visit } from '../../../../geometry/plan/test-record.ts';
import { timingReport } from '../../../../src/protocol/timing/timing-report.ts';
import { withForecast } from '../../../../src/protocol/timing/weather-check.ts';
import { at, kit, NONE, planWith, verdictOf } from '../../../helpers/timing.ts';

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

  it('goes by the least that the kit requires until the detectors are picked up', () => {
    expect(check({ sustained: 50 }, { start: at('5-2 9:00') }, kit(96, 168))?.verdict).toBe('tight');
    expect(check({ sustained: 50 }, { start: at('5-2 9:00') }, kit(95, 168))?.verdict).toBe('blocked');
  });

  it('is said in the units of the plan, with when and where it was read', () => {
    expect(check({ sustained: mph(12) })?.detail).toBe(
      'Forecast of Friday, May 1, 8:00 pm (weather service): sustained wind of 12 mph, no severe storm. Looked up 13 h before the start.',
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
