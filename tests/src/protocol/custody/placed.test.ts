import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { parsePlan } from '../../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../../geometry/planfile/write.ts';
import { timedInWords, timeHints } from '../../../../src/advice/guidance/time.ts';
import { plannedStart, withVisitStart } from '../../../../src/protocol/custody/placed.ts';
import { requiredItems } from '../../../../src/protocol/required-items/item-states.ts';
import { timingReport } from '../../../../src/protocol/timing/timing-report.ts';
import { testState } from '../../../../src/protocol/validity/test-state.ts';
import { timeLine } from '../../../../src/report/notes.ts';
import { samplePlan } from '../../../helpers/sample-files.ts';

const START = '2026-03-07T18:00:00-05:00';
const LATER = Date.parse('2026-03-20T00:00:00-05:00');
const finished = samplePlan('06-sale-report');
const planned: Plan = { ...finished, visit: withVisitStart(finished.visit, finished.visit.start, true) };

describe('a placement that is only planned', () => {
  it('stays planned once its time has passed', () => {
    expect(plannedStart(planned, LATER)).toBe(Date.parse(finished.visit.start ?? ''));
    expect(plannedStart(finished, LATER)).toBeNull();
    expect(timedInWords(planned, LATER)).toMatch(/^Placement planned for /);
  });

  it('is no exposure, and no test with it is valid', () => {
    expect(testState(finished).validity).toBe('holds');
    const exposure = timingReport(planned).checks.find(({ rule }) => rule === 'exposure');
    expect(exposure).toMatchObject({ verdict: 'unknown', detail: expect.stringContaining('only a planned one') });
    expect(timingReport(planned).exposureHours).toBeNull();
    expect(testState(planned).validity).toBe('unknown');
  });

  it('is checked as planned for as long as the pick-up is ahead too', () => {
    const ahead = { ...planned, visit: { ...planned.visit, end: null, plannedEnd: finished.visit.end } };
    expect(timingReport(ahead).checks.find(({ rule }) => rule === 'exposure')?.detail).toMatch(/^Planned exposure of /);
  });

  it('is missing on the list of what a report requires, and on its papers', () => {
    const lacks = (plan: Plan) => requiredItems(plan).find(({ item }) => item.id === 'start-and-end')?.lacking;
    expect([lacks(finished), lacks(planned)]).toEqual([[], ['start']]);
    expect(timeLine({ plan: planned } as Parameters<typeof timeLine>[0])).toMatch(/^Detectors placed: planned for /);
  });

  it('is asked for once it is due', () => {
    const texts = timeHints(planned, [{ model: { level: planned.levels[0] } }] as never, LATER).map(({ text }) => text);
    expect(texts).toContain('Whether the detectors were placed as planned is not recorded.');
    expect(texts.filter((text) => text.startsWith('Placement planned') || text.startsWith('Overdue'))).toEqual([]);
  });

  it('is recorded by writing a start that is not planned, and survives a round trip until then', () => {
    const read = parsePlan(writePlan(planned));
    expect(read.ok && read.plan.visit.startPlanned).toBe(true);
    expect(withVisitStart(planned.visit, START, false)).not.toHaveProperty('startPlanned');
    expect(withVisitStart(planned.visit, null, true)).not.toHaveProperty('startPlanned');
  });
});
