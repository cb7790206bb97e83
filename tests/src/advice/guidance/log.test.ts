import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../../geometry/level/build-level.ts';
import type { Detector, Plan } from '../../../../geometry/plan/model.ts';
import type { Visit } from '../../../../geometry/plan/test-record.ts';
import { emptyLevel, emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { logHints, logInWords } from '../../../../src/advice/guidance/log.ts';
import { withHandOver, withLogEntry } from '../../../../src/protocol/custody/log-entries.ts';

const START = '2026-05-02T09:00:00-04:00';
const VISIT: Visit = { closedSince: null, mitigationOnSince: null, start: START, end: null };
const detector = (id: string): Detector => ({
  id,
  label: id.toUpperCase(),
  at: [1000, 1000],
  base: 762,
  radius: 50.8,
  tall: 25.4,
  pair: null,
});
const planOf = (ids: readonly string[], visit: Visit = VISIT): Plan => ({
  ...emptyPlan(),
  visit,
  levels: [{ ...emptyLevel('L1'), detectors: ids.map(detector) }],
});
const hintsOf = (plan: Plan) =>
  logHints(
    plan,
    plan.levels.map((level) => ({ plan, model: buildLevel(level), reports: [], toTest: true, inView: true })),
  );

describe('what the Log stage asks for', () => {
  it('nothing before a detector is placed', () => {
    expect(hintsOf(planOf([]))).toEqual([]);
    expect(hintsOf(planOf(['k1'], { ...VISIT, start: null }))).toEqual([]);
  });

  it('afterwards every gap with every detector that has it, as remarks that lead to the log', () => {
    const remark = { missing: false, action: { kind: 'stage', stage: 'log' } };
    expect(hintsOf(planOf(['k1']))).toMatchObject([
      { text: 'K1 has no serial number yet.', ...remark },
      { text: 'Who placed K1 is not recorded.', ...remark },
    ]);
    const numbered = withLogEntry(planOf(['k1', 'k2', 'k3']), 'k2', { serial: 'C-2' });
    expect(hintsOf(numbered).map(({ text }) => text)).toEqual([
      'K1 and K3 have no serial number yet.',
      'Who placed K1, K2 and K3 is not recorded.',
    ]);
  });

  it('says first that a chain contradicts itself, and is not done with it', () => {
    const step = { at: '2026-05-05T08:00:00-04:00', from: 'Ann Mill', to: 'Bo Reed', note: '' };
    const fetched = { ...planOf(['k1', 'k2']), visit: { ...VISIT, end: '2026-05-05T09:00:00-04:00' } };
    const [first, second] = hintsOf(withHandOver(fetched, 'k1', step));
    expect(first).toMatchObject({
      text: 'Times or transfers in the chain of custody of K1 do not fit together.',
      missing: true,
    });
    expect(second).toMatchObject({ text: 'K1 and K2 have no serial number yet.', missing: false });
    expect(hintsOf(fetched).filter(({ missing }) => missing)).toEqual([]);
  });

  it('is not done with a serial number that stands twice', () => {
    const twice = withLogEntry(withLogEntry(planOf(['k1', 'k2']), 'k1', { serial: 'C-1' }), 'k2', { serial: 'c-1' });
    expect(hintsOf(twice)[0]).toMatchObject({
      text: expect.stringMatching(/^K1: K2 has the same serial number/),
      missing: true,
    });
  });

  it('counts the numbers of the detectors that are there, not of one that was removed', () => {
    expect(logInWords(planOf(['k1', 'k2']))).toBe('');
    const gone = withLogEntry(withLogEntry(planOf(['k1', 'k2']), 'k1', { serial: 'C-1' }), 'k9', { serial: 'C-9' });
    expect(logInWords(gone)).toBe('1 of 2 serial numbers.');
  });
});
