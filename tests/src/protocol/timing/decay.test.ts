import { describe, expect, it } from 'vitest';
import { emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { decayCourse, errorGrowth, fractionLeft } from '../../../../src/protocol/timing/decay.ts';
import { at, planWith } from '../../../helpers/timing.ts';

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
  // Pick-up Monday, May 4 9:00; the kit gives 5 days, the post takes 2.
  const fetched = { start: at('5-1 9:00'), end: at('5-4 9:00') };

  it('has the limit of the laboratory, the last moment to mail, and what was recorded, in the order of time', () => {
    const course = decayCourse(planWith({ ...fetched, posted: at('5-4 21:00'), received: at('5-7 9:00') }));
    expect(course?.projected).toBe(false);
    // 2 ** (-days / 3.8235)
    expect(course?.marks.map(({ kind, days, left }) => [kind, days, Number(left.toFixed(4))])).toEqual([
      ['posted', 0.5, 0.9133],
      ['post-by', 3, 0.5805],
      ['received', 3, 0.5805],
      ['deadline', 5, 0.404],
    ]);
    expect(course?.marks.at(-1)?.text).toBe('At the laboratory by Saturday, May 9, 9:00 am: 40% left');
    expect(course?.curve[0]).toEqual({ days: 0, left: 1 });
    expect(course?.curve.at(-1)?.days).toBe(course?.span);
    expect(course?.ticks).toEqual([
      { days: 0, date: 'May 4' },
      { days: 2, date: '6' },
      { days: 4, date: '8' },
      { days: 6, date: '10' },
    ]);
  });

  it('is reckoned from the first possible pick-up until the real one is recorded, and says so', () => {
    const course = decayCourse(planWith({ start: at('5-1 9:00'), posted: at('5-2 9:00') }));
    expect(course).toMatchObject({ projected: true, from: Date.parse(at('5-3 9:00')) });
    expect(course?.marks.map(({ kind }) => kind)).toEqual(['post-by', 'deadline']);
    expect(course?.notes[0]).toContain('If it is picked up Sunday, May 3, 9:00 am');
  });

  it('names the month where it changes, and the days in the local time of the property over a change of clocks', () => {
    // Clocks go back on 1 November: 48 h after Saturday, October 31 0:30 it is Sunday 23:30.
    const course = decayCourse(planWith({ start: at('10-28 0:30'), end: at('10-31 0:30') }));
    expect(course?.ticks.map(({ date }) => date)).toEqual(['Oct 31', 'Nov 1', '3', '5']);
  });

  it('is none without a start or for a monitor, and is mailed at once where the kit leaves no time', () => {
    expect(decayCourse(planWith({}))).toBeNull();
    expect(decayCourse(planWith({ ...fetched, device: 'monitor' }))).toBeNull();
    const hurried = decayCourse(planWith(fetched, { kit: { ...emptyPlan().kit, labDays: 1 } }));
    expect(hurried?.marks.map(({ kind, days }) => [kind, days])).toEqual([
      ['post-by', 0],
      ['deadline', 1],
    ]);
  });

  it('never grows beyond a month, whatever was recorded', () => {
    const course = decayCourse(planWith({ ...fetched, received: at('9-1 9:00') }));
    expect(course?.span).toBe(30);
    expect(course?.ticks.length).toBeLessThanOrEqual(5);
  });
});
