import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { HOUR, instantText } from '../../../../src/protocol/timing/clock.ts';
import { proposeStarts, shifts, USUAL_PRACTICE } from '../../../../src/protocol/timing/propose-starts.ts';
import { timingReport } from '../../../../src/protocol/timing/timing-report.ts';

const ZONE = 'America/New_York';
const ms = (iso: string) => DateTime.fromISO(iso, { zone: ZONE }).toMillis();
const planWith = (change: Partial<Plan> = {}): Plan => {
  const plan = emptyPlan();
  return { ...plan, site: { ...plan.site, timeZone: ZONE }, ...change };
};

describe('the working hours', () => {
  it('go by the wall local time at the property, over a change of clocks, and leave days off out', () => {
    // 7 March 2026 is a Saturday; clocks go forward on the 8th.
    const found = shifts({ ...USUAL_PRACTICE, daysOff: ['2026-03-10'] }, ZONE, ms('2026-03-06T07:00'), 6);
    expect(found.map(({ from, to }) => [instantText(from, ZONE), (to - from) / HOUR])).toEqual([
      ['2026-03-06T08:00:00-05:00', 10],
      ['2026-03-09T08:00:00-04:00', 10],
      ['2026-03-11T08:00:00-04:00', 10],
    ]);
  });
});

describe('proposals(plan, now)', () => {
  it('on a Thursday morning: closed now, the start is on Friday, and picked up on Monday', () => {
    // Thursday, March 5, 2026, 10:00 am. 12 h closed is 22:00; Friday 8:00 + 48 h is Sunday, so the window to 96 h reaches Monday.
    const [today, friday] = proposeStarts(planWith(), ms('2026-03-05T10:00'));
    expect(today).toMatchObject({ ok: false, reason: 'the house will not have been closed for 12 h by then' });
    if (!friday?.ok) throw new Error('no start on Friday');
    expect(instantText(friday.proposal.start, ZONE)).toBe('2026-03-06T08:00:00-05:00');
    expect(friday.proposal.pickUps.map(({ from }) => instantText(from, ZONE))).toEqual([
      '2026-03-09T08:00:00-04:00',
      '2026-03-10T08:00:00-04:00',
    ]);
  });

  it('a house that was opened again counts as closed from now on at the soonest', () => {
    const opened = planWith({
      visit: {
        ...emptyPlan().visit,
        closedSince: '2026-03-01T08:00:00-05:00',
        closedUntil: '2026-03-04T08:00:00-05:00',
      },
    });
    const [today, friday] = proposeStarts(opened, ms('2026-03-05T10:00'));
    expect(today).toMatchObject({ ok: false, reason: 'the house will not have been closed for 12 h by then' });
    expect(friday?.ok && instantText(friday.proposal.start, ZONE)).toBe('2026-03-06T08:00:00-05:00');
  });

  it('no pick-up before 48 h is offered, whatever the kit allows', () => {
    const plan = planWith({ kit: { ...emptyPlan().kit, minimumHours: 20, maximumHours: 96 } });
    // A Monday: the start is on Tuesday at 8:00.
    const tuesday = proposeStarts(plan, ms('2026-05-04T10:00')).find(({ ok }) => ok);
    if (!tuesday?.ok) throw new Error('no start');
    expect(tuesday.proposal.pickUps.map(({ from }) => instantText(from, ZONE))).toEqual([
      '2026-05-07T08:00:00-04:00',
      '2026-05-08T08:00:00-04:00',
    ]);
  });

  it('a kit of exactly two days cannot start on a Thursday or Friday where nobody works at the weekend', () => {
    const plan = planWith({ kit: { ...emptyPlan().kit, minimumHours: 48, maximumHours: 50 } });
    const found = proposeStarts(plan, ms('2026-05-06T18:00'), 3); // Wednesday evening
    expect(found.map((day) => (day.ok ? 'ok' : day.reason))).toEqual([
      'the whole pick-up window is outside the working hours',
      'the whole pick-up window is outside the working hours',
    ]);
  });

  it('a system that nobody has noted since when it runs is taken to begin now, as the closing is', () => {
    // Thursday, May 7, 2026, 10:00 am: 24 h of running are Friday 10:00, 12 h closed are Thursday 22:00.
    const plan = planWith();
    const after = { ...plan, site: { ...plan.site, purpose: 'after-mitigation' as const } };
    const found = proposeStarts(after, ms('2026-05-07T10:00'));
    expect(found[0]).toMatchObject({ ok: false, reason: 'the system will not have run for 24 h by then' });
    const first = found.find((day) => day.ok);
    expect(first?.ok && instantText(first.proposal.start, ZONE)).toBe('2026-05-08T10:00:00-04:00');
  });

  it('a start whose only pick-up is one minute gives way to a later one of the day that leaves half an hour', () => {
    // Closed since the day before. From Thursday 8:00 the window ends Monday 8:00, when work begins: 8:30 leaves half an hour.
    const plan = planWith();
    const closed = { ...plan, visit: { ...plan.visit, closedSince: '2026-05-06T08:00:00-04:00' } };
    const [thursday] = proposeStarts(closed, ms('2026-05-07T07:00'));
    if (!thursday?.ok) throw new Error('no start on Thursday');
    expect(instantText(thursday.proposal.start, ZONE)).toBe('2026-05-07T08:30:00-04:00');
    expect(thursday.proposal.pickUps.map(({ from, to }) => [instantText(from, ZONE), (to - from) / HOUR])).toEqual([
      ['2026-05-11T08:00:00-04:00', 0.5],
    ]);
  });

  it('every start that is offered keeps every limit, at the first and the last minute of every pick-up', () => {
    const zones = Intl.supportedValuesOf('timeZone');
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: Date.UTC(2024, 0, 1) / HOUR, max: Date.UTC(2030, 0, 1) / HOUR }),
        fc.integer({ min: 48, max: 72 }),
        fc.integer({ min: 0, max: 96 }),
        fc.option(fc.integer({ min: 0, max: 30 }), { nil: null }),
        (timeZone, hour, minimumHours, more, closedAgo) => {
          const now = hour * HOUR;
          const plan = planWith({ kit: { ...emptyPlan().kit, minimumHours, maximumHours: minimumHours + more } });
          const closedSince = instantText(closedAgo === null ? now : now - closedAgo * HOUR, timeZone);
          const known: Plan = {
            ...plan,
            site: { ...plan.site, timeZone },
            visit: { ...plan.visit, closedSince: closedAgo === null ? null : closedSince },
          };
          for (const day of proposeStarts(known, now, 6)) {
            if (!day.ok) continue;
            const { start, pickUps } = day.proposal;
            for (const end of pickUps.flatMap(({ from, to }) => [from, to])) {
              const visit = {
                ...plan.visit,
                closedSince,
                start: instantText(start, timeZone),
                end: instantText(end, timeZone),
              };
              const { checks } = timingReport({ ...known, visit });
              const broken = checks.filter(
                ({ rule, verdict }) => ['exposure', 'closed-building'].includes(rule) && verdict !== 'clear',
              );
              expect(broken).toEqual([]);
            }
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});
