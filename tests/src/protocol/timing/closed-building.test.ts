import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { lateClosingOptions } from '../../../../src/protocol/timing/closed-building.ts';
import { timingReport } from '../../../../src/protocol/timing/timing-report.ts';
import { at, kit, planWith, verdictOf } from '../../../helpers/timing.ts';

describe('the closed house', () => {
  // MAH-2019 Exh. 2 and 4, MALB 4.1, 25 Pa. Code 240.310(a)(4)(iv): 12 h before a test of less than 4 days; MAH-2019 6.1.2: the ways out.
  it.each([
    ['5-1 21:00', '5-4 9:00', 'clear', '12 h before, to the minute'],
    ['5-1 21:01', '5-4 9:00', 'blocked', 'a minute short'],
    ['5-2 9:00', '5-6 9:00', 'clear', '96 h under closed-building conditions require no lead time'],
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
    expect(detail).toContain('Start no earlier than Saturday, May 2, 3:00 pm');
    expect(detail).toContain('until Wednesday, May 6, 9:00 am or later, and not past Saturday, May 9, 9:00 am');
  });

  it('opened before the pick-up is broken, and not known is unknown', () => {
    const good = { closedSince: at('5-1 9:00'), start: at('5-2 9:00'), end: at('5-4 10:00') };
    expect(verdictOf(planWith({ ...good, closedUntil: at('5-4 9:59') }), 'closed-building')).toBe('blocked');
    expect(verdictOf(planWith({ ...good, closedUntil: at('5-4 10:00') }), 'closed-building')).toBe('clear');
    expect(verdictOf(planWith({ ...good, closedSince: null }), 'closed-building')).toBe('unknown');
  });

  it('a monitor may leave the first hours out: 46 h in one run after 12 h closed', () => {
    const monitor = { device: 'monitor' as const, closedSince: at('5-2 9:00'), start: at('5-2 9:00') };
    // MAH-2019 6.1.2(c) is about the average of those hours; which hours the result is the average of is not recorded.
    expect(verdictOf(planWith({ ...monitor, end: at('5-4 19:00') }), 'closed-building')).toBe('unknown');
    expect(verdictOf(planWith({ ...monitor, end: at('5-4 18:59') }), 'closed-building')).toBe('blocked');
    const detail = (end: string) =>
      timingReport(planWith({ ...monitor, end: at(end) })).checks.find(({ rule }) => rule === 'closed-building')
        ?.detail;
    expect(detail('5-4 20:59')).toContain('a certified or licensed professional decides');
    expect(detail('5-4 21:00')).toContain('and record Saturday, May 2, 9:00 pm as the start');
    const recorded = planWith({ ...monitor, start: at('5-2 21:00'), end: at('5-4 21:00') });
    expect([verdictOf(recorded, 'closed-building'), verdictOf(recorded, 'exposure')]).toEqual(['clear', 'clear']);
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
            // A monitor's later hours are averaged, which is not on record: unknown, and said.
            expect(['clear', ...(device === 'monitor' ? ['unknown'] : [])]).toContain(
              verdictOf(left, 'closed-building'),
            );
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
    expect(detail(kit(48, 96))).toContain('this kit may not be exposed long enough');
    expect(detail(kit(48, 99))).toContain('pick it up at Wednesday, May 6, 12:00 pm, to the minute');
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
