import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level } from '../../../geometry/plan/model.ts';
import { type Spot, type SunSpan, sunHoursSteps } from '../../../geometry/sun/sun-hours.ts';
import { sunTimes } from '../../../geometry/sun/times.ts';
import { sunTimesInWords } from '../../../src/advice/sun-words.ts';
import { HEIGHTS, houseOf } from '../../helpers/sun-room.ts';

const HOUR = 3_600_000;
const EXPOSURE = { start: '2003-10-17T06:00:00-07:00', end: '2003-10-19T20:00:00-07:00' };

function hoursOf(spot: Partial<Spot>): readonly SunSpan[] {
  const plan = houseOf({ visit: EXPOSURE });
  const times = sunTimes(plan);
  if (!times) throw new Error('no times');
  const steps = sunHoursSteps(buildLevel(plan.levels[0] as Level), times, 'glass', {
    at: [2500, 1000],
    heights: HEIGHTS,
    reach: 50,
    ...spot,
  });
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

describe('when the sun comes near to a spot', () => {
  it('in front of a window to the south: around noon, every day', () => {
    const spans = hoursOf({});
    expect(spans).toHaveLength(3);
    const noon = Date.parse('2003-10-17T12:30:30-07:00');
    expect(spans[0]?.start).toBeLessThan(noon);
    expect(spans[0]?.end).toBeGreaterThan(noon);
    expect((spans[0]?.end ?? 0) - (spans[0]?.start ?? 0)).toBeLessThan(6 * HOUR);
  });

  it('never far from it', () => expect(hoursOf({ at: [5500, 4800] })).toEqual([]));

  it('is said by the clock at the house', () => {
    const day = (n: number, from: number, to: number) => ({
      start: Date.UTC(2026, 2, n, from + 5, 10),
      end: Date.UTC(2026, 2, n, to + 5, 40),
    });
    const exposure = { start: Date.UTC(2026, 2, 2, 23), end: Date.UTC(2026, 2, 6, 23) };
    const words = sunTimesInWords([day(3, 14, 16), day(4, 14, 16), day(5, 15, 17)], exposure, 'America/New_York');
    expect(words).toBe('2:10 pm to 5:40 pm, on 3 days of 5');
    expect(sunTimesInWords([], exposure, 'America/New_York')).toBe('');
  });

  it('is said over midnight where the sun is up then: to the latest, and not to the latest before midnight', () => {
    const night = (day: number, from: number, to: number) => ({
      start: Date.UTC(2026, 5, day) + from * HOUR,
      end: Date.UTC(2026, 5, day) + to * HOUR,
    });
    const exposure = { start: Date.UTC(2026, 5, 19, 12), end: Date.UTC(2026, 5, 22, 12) };
    const words = (...spans: SunSpan[]) => sunTimesInWords(spans, exposure, 'UTC');
    expect(words(night(19, 22.5, 24.5), night(20, 22, 23.75))).toBe('22:00 to 0:30, on 2 days of 4');
    expect(words(night(19, 23.5, 24.25), night(21, 0.5, 1))).toBe('23:30 to 1:00, on 2 days of 4');
    expect(words(night(19, 22, 24))).toBe('22:00 to 0:00, on 1 day of 4');
    expect(words(night(20, 6, 7), night(20, 18, 19))).toBe('6:00 to 19:00, on 1 day of 4');
  });
});
