import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Visit } from '../../../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { type DueFacts, nextDue } from '../../../../src/protocol/timing/next-due.ts';
import { summaryOf } from '../../../../src/storage/library/summary.ts';

const ZONE = 'America/New_York';
/** "25 9:00": in November 2026 on the wall clock of the site. */
const at = (text: string): string => {
  const [day = '', time = ''] = text.split(' ');
  const [hour, minute] = time.split(':').map(Number);
  return DateTime.fromObject({ year: 2026, month: 11, day: Number(day), hour, minute }, { zone: ZONE }).toISO() ?? '';
};
const card = (visit: Partial<Visit>, change: Partial<Plan> = {}): DueFacts => {
  const plan = emptyPlan();
  return summaryOf({
    ...plan,
    site: { ...plan.site, timeZone: ZONE },
    visit: { ...plan.visit, ...visit },
    ...change,
  });
};
const due = (facts: DueFacts, now: string) => nextDue(facts, Date.parse(at(now)), 'UTC');

describe('the next date of a test', () => {
  // 48 to 96 h, 5 days to the laboratory, 2 for the post; set out Wednesday, November 25, 9:00 am.
  const start = at('25 9:00');
  const end = at('28 10:00');
  const posted = at('28 11:00');
  it.each<[Partial<Visit>, string, string, string]>([
    [{}, '20 9:00', 'no-date', ''],
    [{ start }, '24 9:00', 'to-be-started', 'Place Wed, Nov 25, 9:00 am'],
    [{ start }, '25 9:00', 'measuring', 'Pick up between Fri, Nov 27, 9:00 am and Sun, Nov 29, 9:00 am'],
    [{ start }, '27 8:59', 'measuring', 'Pick up between Fri, Nov 27, 9:00 am and Sun, Nov 29, 9:00 am'],
    [{ start }, '27 9:00', 'measuring', 'Pick up now, until Sun, Nov 29, 9:00 am'],
    [{ start }, '29 9:00', 'measuring', 'Pick up now, until Sun, Nov 29, 9:00 am'],
    [{ start }, '29 9:01', 'overdue', 'Overdue: past its window since Sun, Nov 29, 9:00 am'],
    // A start that is only planned: until its minute it is ahead, then it is for a person to say whether it took place.
    [{ start, startPlanned: true }, '24 9:00', 'to-be-started', 'Place Wed, Nov 25, 9:00 am'],
    [{ start, startPlanned: true }, '26 9:00', 'overdue', 'Placement planned for Wed, Nov 25, 9:00 am: record it'],
    [
      { start, startPlanned: true, end },
      '28 12:00',
      'overdue',
      'Placement planned for Wed, Nov 25, 9:00 am: record it',
    ],
    // A pick-up that is planned.
    [{ start, end }, '26 9:00', 'measuring', 'Pick up Sat, Nov 28, 10:00 am'],
    [
      { start, end: at('30 9:00') },
      '26 9:00',
      'measuring',
      'Pick up Mon, Nov 30, 9:00 am, outside its window (Fri, Nov 27, 9:00 am to Sun, Nov 29, 9:00 am)',
    ],
    [{ start, end: at('30 9:00') }, '29 12:00', 'overdue', 'Overdue: past its window since Sun, Nov 29, 9:00 am'],
    [{ start, plannedEnd: end }, '26 9:00', 'measuring', 'Pick up Sat, Nov 28, 10:00 am'],
    // Planned and not fetched: never measured, whatever the hour.
    [
      { start, plannedEnd: end },
      '28 10:01',
      'overdue',
      'Overdue: pick-up Sat, Nov 28, 10:00 am, until Sun, Nov 29, 9:00 am at the latest',
    ],
    [{ start, plannedEnd: end }, '29 9:01', 'overdue', 'Overdue: past its window since Sun, Nov 29, 9:00 am'],
    // Fetched: too late, too early, in time.
    [
      { start, end: at('29 9:01') },
      '29 12:00',
      'test-again',
      'Picked up Sun, Nov 29, 9:01 am, outside its window: invalid. Test again',
    ],
    [
      { start, end: at('27 8:59') },
      '29 12:00',
      'test-again',
      'Picked up Fri, Nov 27, 8:59 am, outside its window: invalid. Test again',
    ],
    [
      { start, end },
      '28 10:00',
      'to-the-laboratory',
      'Pick-up Sat, Nov 28, 10:00 am: mail it by Tue, Dec 1, 10:00 am. At the laboratory by Thu, Dec 3, 10:00 am',
    ],
    [{ start, end, posted }, '29 9:00', 'to-the-laboratory', 'Mailed. At the laboratory by Thu, Dec 3, 10:00 am'],
    [
      { start, end, posted, received: at('30 9:00') },
      '30 9:00',
      'measured',
      'At the laboratory since Mon, Nov 30, 9:00 am',
    ],
    [{ start, end, device: 'monitor' }, '29 9:00', 'measured', 'Picked up Sat, Nov 28, 10:00 am'],
  ])('%j at %s: %s, "%s"', (visit, now, step, text) => {
    expect(due(card(visit), now)).toMatchObject({ step, text });
  });

  // One result at the action level or above, the other below, and twice as high: ANSI/AARST MW-RN-2020, 8.5.
  it('of results that do not agree is to test again, and never measured', () => {
    const detectors = [0, 1].map((i) => ({
      id: `d${i}`,
      label: '',
      at: [200 * i, 0] as const,
      base: 762,
      radius: 50.8,
      tall: 25.4,
      pair: 'A',
    }));
    const levels = emptyPlan().levels.map((level) => ({ ...level, detectors }));
    const readings = [2, 12].map((value, i) => ({ detector: `d${i}`, value, unit: 'pCi/L' as const }));
    const facts = card({ start, end, received: at('30 9:00') }, { levels, readings });
    expect(due(facts, '30 9:00')).toMatchObject({
      step: 'test-again',
      late: true,
      text: 'The results do not agree: test again',
    });
  });

  it('late at the laboratory is told until it arrives or a result is in', () => {
    const facts = card({ start: at('1 9:00'), end: at('4 9:00') });
    // Five days later are Monday, November 9, 9:00 am.
    expect(due(facts, '9 9:00').text).toBe(
      'Pick-up Wed, Nov 4, 9:00 am: mail it now. At the laboratory by Mon, Nov 9, 9:00 am',
    );
    expect(due(facts, '9 9:01')).toMatchObject({
      step: 'to-the-laboratory',
      text: 'Late: should be at the laboratory since Mon, Nov 9, 9:00 am',
    });
    const readings = [{ detector: 'd1', value: 3, unit: 'pCi/L' }] as const;
    expect(due(card({ start: at('1 9:00'), end: at('4 9:00') }, { readings }), '9 9:01').step).toBe('measured');
  });

  it("goes by the kit's own hours, and no kit makes a test of less than 48 h one", () => {
    const kit = { ...emptyPlan().kit, minimumHours: 96, maximumHours: 168 };
    expect(due(card({ start }, { kit }), '26 9:00').text).toBe(
      'Pick up between Sun, Nov 29, 9:00 am and Wed, Dec 2, 9:00 am',
    );
    const quick = { ...emptyPlan().kit, minimumHours: 20 };
    expect(due(card({ start, end: at('27 8:59') }, { kit: quick }), '29 9:00').text).toContain('invalid');
    expect(due(card({ start }, { kit: quick }), '26 9:00').text).toBe(
      'Pick up between Fri, Nov 27, 9:00 am and Sun, Nov 29, 9:00 am',
    );
    expect(due(card({ start, end: at('26 21:00') }, { kit: quick }), '26 9:00').text).toContain('outside its window');
  });

  it('of a card that an earlier Stillspot wrote is told by start and end alone', () => {
    const old = (some: DueFacts) => nextDue(some, Date.parse(at('26 9:00')), ZONE);
    expect(old({ start, end: null })).toMatchObject({
      step: 'measuring',
      text: 'Measuring since Wed, Nov 25, 9:00 am',
    });
    expect(old({ start, end })).toMatchObject({ step: 'measuring', text: 'Pick up Sat, Nov 28, 10:00 am' });
    expect(old({ start: at('20 9:00'), end: at('23 9:00') })).toMatchObject({
      step: 'measured',
      text: 'Picked up Mon, Nov 23, 9:00 am',
    });
  });

  it('is overdue exactly when the time since the start is more than the kit allows, over any change of clocks', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('America/New_York', 'Europe/Berlin', 'Australia/Lord_Howe', 'Asia/Kolkata'),
        fc.integer({ min: Date.UTC(2024, 0, 1) / 60_000, max: Date.UTC(2030, 0, 1) / 60_000 }),
        fc.integer({ min: 0, max: 12_000 }),
        (zone, from, minutes) => {
          const begun = DateTime.fromMillis(from * 60_000, { zone });
          const plan = emptyPlan();
          const site = { ...plan.site, timeZone: zone };
          const facts = summaryOf({ ...plan, site, visit: { ...plan.visit, start: begun.toISO() } });
          const { step, at: when } = nextDue(facts, begun.plus({ minutes }).toMillis(), zone);
          expect(step).toBe(minutes > 96 * 60 ? 'overdue' : 'measuring');
          expect(when).toBe(begun.plus({ hours: 96 }).toMillis());
        },
      ),
      { numRuns: 500 },
    );
  });
});
