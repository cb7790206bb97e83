import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Kit, Visit } from '../../../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../../geometry/planfile/write.ts';
import { timeHints } from '../../../../src/advice/guidance/time.ts';
import { visitEvents } from '../../../../src/protocol/calendar/visit-events.ts';
import { decayCourse } from '../../../../src/protocol/timing/decay.ts';
import { type KitFigure, withKitFigure } from '../../../../src/protocol/timing/kit-answers.ts';
import { nextDue } from '../../../../src/protocol/timing/next-due.ts';
import { timelineOf } from '../../../../src/protocol/timing/timeline.ts';
import { timingReport } from '../../../../src/protocol/timing/timing-report.ts';
import { visitFacts } from '../../../../src/protocol/timing/visit-facts.ts';
import { testState } from '../../../../src/protocol/validity/test-state.ts';
import { GOOD_VISIT, validTestPlan } from '../../../helpers/valid-test-plan.ts';

const HOUR = 3_600_000;
const START = Date.parse('2026-03-07T18:00:00-05:00');
const planWith = (kit: Partial<Kit>, visit: Partial<Visit> = {}): Plan => {
  const plan = validTestPlan();
  return { ...plan, kit: { ...plan.kit, ...kit }, visit: { ...GOOD_VISIT, ...visit } };
};
const measuring = planWith({ hoursAnswered: false }, { end: null });
const fetched = planWith({ hoursAnswered: false });
const dueAt = (plan: Plan, now: number) =>
  nextDue({ start: plan.visit.start, end: plan.visit.end, visit: visitFacts(plan) }, now, 'America/New_York');

describe('the hours and days of a kit that nobody has entered', () => {
  it('are no window: not in the times, and not in the calendar', () => {
    expect(timingReport(measuring)).toMatchObject({ earliestEnd: null, latestEnd: null });
    expect(timingReport(fetched).laboratoryBy).toBeNull();
    expect(visitEvents(measuring).map(({ kind }) => kind)).toEqual(['closing', 'start']);
    expect(visitEvents(fetched).map(({ kind }) => kind)).toEqual(['closing', 'start', 'pick-up', 'posting']);
    const notes = visitEvents(fetched).map((event) => event.notes);
    expect(notes.filter((words) => /At the latest|Within/.test(words))).toEqual([]);
    const entered = planWith({}, { end: null });
    expect(visitEvents(entered).map(({ kind }) => kind)).toContain('last-moment');
  });

  it('make no test late or invalid in the list of plans', () => {
    expect(dueAt(measuring, START + 200 * HOUR)).toMatchObject({ step: 'measuring', late: false });
    expect(dueAt(planWith({}, { end: null }), START + 200 * HOUR)).toMatchObject({ step: 'overdue' });
    const long = planWith({ hoursAnswered: false }, { end: '2026-03-12T18:00:00-04:00' });
    expect(dueAt({ ...long, readings: [] }, START + 2000 * HOUR)).toMatchObject({
      step: 'to-the-laboratory',
      late: false,
    });
    // The published least holds for any kit.
    const short = planWith({ hoursAnswered: false }, { end: '2026-03-08T18:00:00-04:00' });
    expect(dueAt(short, START + 200 * HOUR)).toMatchObject({ step: 'test-again' });
  });

  it('are not drawn, and no picture or hint says what nobody knows', () => {
    expect(timelineOf(measuring)?.bars.map(({ name }) => name)).not.toContain('Pick-up window');
    expect(timelineOf(fetched)?.bars.map(({ name }) => name)).not.toContain('To the laboratory');
    expect(decayCourse(fetched)?.marks).toEqual([]);
    const late = planWith({ hoursAnswered: false }, { closedSince: '2026-03-07T16:00:00-05:00' });
    const closed = timingReport(late).checks.find(({ rule }) => rule === 'closed-building')?.detail;
    expect(closed).toContain('where the instructions of the kit allow it');
    expect(closed).not.toMatch(/not past|may not be exposed/);
    const received = planWith({ hoursAnswered: false }, { received: '2026-03-12T09:00:00-04:00' });
    const levels = received.levels.map((level) => ({ model: { level }, reports: [] })) as never;
    const hints = timeHints(received, levels, Number.NaN).map(({ text }) => text);
    expect(hints).toContain('How long the kit may be exposed is not entered.');
    expect(hints).toContain('Within how many days the laboratory must have the kit is not entered.');
    expect(hints.join(' ')).not.toMatch(/picked up is not recorded|do not fit together/);
  });
});

describe('withKitFigure(kit, entered, figure, value)', () => {
  const fresh: Kit = { ...emptyPlan().kit, hoursAnswered: false };
  const entering = (...figures: readonly (readonly [KitFigure, number])[]) =>
    figures.reduce(
      ({ kit, entered }, [figure, value]) => ({
        kit: withKitFigure(kit, entered, figure, value),
        entered: new Set([...entered, figure]),
      }),
      { kit: fresh, entered: new Set<KitFigure>() },
    ).kit;

  it('takes one figure for an answer to no other: the test stays unknown', () => {
    for (const kit of [entering(['labDays', 3]), entering(['minimumHours', 48]), entering(['maximumHours', 72])]) {
      expect(testState(planWith(kit)).validity).toBe('unknown');
    }
    expect(entering(['labDays', 3])).toMatchObject({ hoursAnswered: false, labDaysAnswered: true });
  });

  it('takes both hours for an answer, and leaves the days open', () => {
    const kit = entering(['minimumHours', 48], ['maximumHours', 72]);
    expect(kit).not.toHaveProperty('hoursAnswered');
    expect(testState(planWith(kit)).validity).toBe('holds');
    const received = { end: '2026-03-10T09:00:00-04:00', received: '2026-03-14T09:00:00-04:00' };
    expect(testState(planWith(kit, received)).validity).toBe('unknown');
    const all = entering(['minimumHours', 48], ['maximumHours', 72], ['labDays', 5]);
    expect(all).toEqual({ ...emptyPlan().kit, maximumHours: 72 });
    expect(testState(planWith(all, received)).validity).toBe('holds');
  });

  it('comes back from a file', () => {
    const kit = entering(['labDays', 3]);
    const read = parsePlan(writePlan(planWith(kit)));
    expect(read.ok && read.plan.kit).toEqual(kit);
  });
});
