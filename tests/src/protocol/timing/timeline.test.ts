import { describe, expect, it } from 'vitest';
import type { Visit } from '../../../../geometry/plan/test-record.ts';
import { formatSpan, timelineOf } from '../../../../src/protocol/timing/timeline.ts';
import { at, planWith } from '../../../helpers/timing.ts';

const barsOf = (visit: Partial<Visit>) =>
  timelineOf(
    planWith({ closedSince: at('3-2 6:00'), mitigationOnSince: at('3-1 6:00'), start: at('3-2 18:00'), ...visit }),
  )?.bars ?? [];

describe('the visit as bars', () => {
  it('shows the house closed no longer than it was', () => {
    const visit = { closedSince: at('3-2 6:00'), start: at('3-2 18:00'), end: at('3-5 18:00') };
    const closedTo = (opened: string | null) =>
      timelineOf(planWith({ ...visit, closedUntil: opened }))?.bars.find(({ name }) => name === 'House closed')?.to;
    expect(closedTo(at('3-4 12:00'))).toBe(Date.parse(at('3-4 12:00')));
    expect(closedTo(at('3-6 12:00'))).toBe(Date.parse(at('3-5 18:00')));
    expect(closedTo(null)).toBe(Date.parse(at('3-5 18:00')));
  });

  it.each<[string, Partial<Visit>]>([
    ['is not recorded', {}],
    ['is only planned', { plannedEnd: at('3-5 18:00') }],
  ])('tells nothing as done up to a pick-up that %s', (_, part) => {
    const bars = barsOf({ ...part, closedUntil: null });
    expect(bars.filter(({ kind }) => kind === 'done')).toEqual([]);
    const why = 'Until the pick-up, which is not recorded yet.';
    expect(bars.find(({ name }) => name === 'House to stay closed')).toMatchObject({ kind: 'open', why });
    expect(bars.find(({ name }) => name === 'System to stay on')).toMatchObject({ kind: 'open', why });
    // What ended has happened.
    expect(barsOf({ ...part, closedUntil: at('3-3 12:00') }).find(({ name }) => name === 'House closed')).toMatchObject(
      {
        kind: 'done',
        to: Date.parse(at('3-3 12:00')),
      },
    );
  });

  it('is bounded to the visit: a system that is on since long ago begins before it', () => {
    const visit = { mitigationOnSince: '2015-01-01T00:00:00Z', start: at('3-2 18:00'), end: at('3-5 18:00') };
    const timeline = timelineOf(planWith(visit));
    const start = Date.parse(at('3-2 18:00'));
    expect(timeline?.from).toBe(start - 7 * 86_400_000);
    expect(timeline?.bars.find(({ name }) => name === 'System on')?.from).toBe(Date.UTC(2015, 0, 1));
    expect(timeline?.midnights.length).toBeLessThan(30);
    expect(timeline?.everyDays).toBe(1);
  });

  it('has at most a hundred marks, however long it is', () => {
    const timeline = timelineOf(planWith({ start: at('3-2 18:00'), end: '2100-01-01T00:00:00Z' }));
    expect(timeline?.midnights.length).toBeLessThanOrEqual(101);
    expect(timeline?.everyDays).toBeGreaterThan(200);
  });

  it('writes the year of a date that is not of this one', () => {
    const [from, to] = [Date.UTC(2015, 0, 1), Date.UTC(2026, 2, 5)];
    expect(formatSpan({ from, to }, 'Europe/Dublin', to)).toBe('Thu 1 Jan 2015, 0:00 to Thu 5 Mar, 0:00');
    expect(formatSpan({ from: to, to }, 'Europe/Dublin', to)).toBe('Thu 5 Mar, 0:00 to 0:00');
  });
});
