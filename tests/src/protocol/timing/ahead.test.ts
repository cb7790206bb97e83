import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { withLogEntry } from '../../../../src/protocol/custody/log-entries.ts';
import { asKnownAt } from '../../../../src/protocol/timing/ahead.ts';
import { timingReport } from '../../../../src/protocol/timing/timing-report.ts';
import { testHeadline } from '../../../../src/protocol/validity/headline.ts';
import { testState } from '../../../../src/protocol/validity/test-state.ts';
import { GOOD_VISIT, validTestPlan } from '../../../helpers/valid-test-plan.ts';

/** A minute before the pick-up of `GOOD_VISIT`, and the pick-up itself. */
const BEFORE = Date.parse('2026-03-10T08:59:00-04:00');
const PICK_UP = Date.parse(GOOD_VISIT.end ?? '');
const stateAt = (plan: Plan, now: number) => testState(plan, undefined, now);
const inYear = { site: { ...validTestPlan().site, timeZone: 'America/New_York' } };
const plan = validTestPlan([1, 1.1], {
  ...inYear,
  conditions: validTestPlan().conditions.map((each) => ({ ...each, at: GOOD_VISIT.end })),
});
const without = (): Plan => ({ ...plan, conditions: plan.conditions.map((each) => ({ ...each, at: null })) });

describe('an event that is recorded for later than now', () => {
  it('leaves the test unknown, and says so under Time; once it has come the test holds', () => {
    const state = stateAt(without(), BEFORE);
    expect(state.validity).toBe('unknown');
    expect(state.issues[0]).toMatchObject({
      stage: 'time',
      text: 'Recorded for later than now, and not known before then: "Picked up" (Tuesday, March 10, 2026, 9:00 am).',
    });
    expect(testHeadline(without(), state)).toMatchObject({ head: 'Unknown', stage: 'time' });
    expect(stateAt(without(), PICK_UP)).toMatchObject({ validity: 'holds', issues: [] });
  });

  it('counts without a clock: the command line has none', () => {
    expect(testState(plan).validity).toBe('holds');
  });

  it('never turns the exposure clear: the pick-up is only planned', () => {
    const known = asKnownAt(plan, BEFORE);
    expect(known.visit).toMatchObject({ end: null, plannedEnd: GOOD_VISIT.end });
    expect(timingReport(known)).toMatchObject({ planned: true });
    expect(asKnownAt(plan, PICK_UP)).toBe(plan);
  });

  it('is not "invalid" before it has come: a pick-up that would be too early can still be planned again', () => {
    const early = { ...without(), visit: { ...plan.visit, end: '2026-03-08T18:00:00-04:00' } };
    expect(stateAt(early, Date.parse('2026-03-08T12:00:00-04:00')).validity).toBe('unknown');
    expect(stateAt(early, PICK_UP).validity).toBe('not-evaluated');
  });

  it.each([
    ['House opened again', 'time', { visit: { ...plan.visit, closedUntil: '2026-03-11T09:00:00-04:00' } }],
    ['Mailed', 'time', { visit: { ...plan.visit, posted: '2026-03-11T09:00:00-04:00' } }],
    ['At the laboratory', 'time', { visit: { ...plan.visit, received: '2026-03-11T09:00:00-04:00' } }],
    [
      'Verified on',
      'house',
      { conditions: plan.conditions.map((each) => ({ ...each, at: '2026-03-11T09:00:00-04:00' })) },
    ],
    ['Sealed', 'log', withLogEntry(plan, 'L1d1', { sealed: '2026-03-11T09:00:00-04:00' })],
    [
      'Transferred',
      'log',
      withLogEntry(plan, 'L1d1', { custody: [{ at: '2026-03-11T09:00:00-04:00', from: 'Ann', to: 'Bo', note: '' }] }),
    ],
  ] as const)('"%s" is an issue of the stage %s, named once', (name, stage, change: Partial<Plan>) => {
    const state = stateAt({ ...plan, ...change }, PICK_UP);
    expect(state.validity).toBe('unknown');
    const text = `Recorded for later than now, and not known before then: "${name}" (Wednesday, March 11, 2026, 9:00 am).`;
    expect(state.issues).toContainEqual({ validity: 'unknown', stage, text, detectors: null });
  });

  it('placement and closing may lie ahead: they are plans', () => {
    const visit = {
      ...plan.visit,
      closedSince: '2026-03-12T06:00:00-04:00',
      start: '2026-03-12T18:00:00-04:00',
      end: null,
    };
    const state = stateAt({ ...without(), visit }, PICK_UP);
    expect(state.issues.filter(({ text }) => text.startsWith('Recorded for later'))).toEqual([]);
    expect(state.validity).toBe('unknown');
  });
});
