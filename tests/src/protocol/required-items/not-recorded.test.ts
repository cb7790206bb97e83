import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { notRecorded } from '../../../../src/protocol/required-items/not-recorded.ts';
import { headlineSentence } from '../../../../src/protocol/validity/headline-sentence.ts';
import { testState } from '../../../../src/protocol/validity/test-state.ts';
import { fullReportPlan } from '../../../helpers/full-report-plan.ts';
import { validTestPlan } from '../../../helpers/valid-test-plan.ts';

const full = fullReportPlan();
const withLog = (change: object): Plan => ({
  ...full,
  log: (full.log ?? []).map((entry) => ({ ...entry, ...change })),
});
const headline = (plan: Plan) => headlineSentence(plan, testState(plan));

describe('what published lists require and nobody recorded, beside the word "valid"', () => {
  it('is nothing where all is on record', () => {
    expect(notRecorded(full)).toEqual({ short: '', brief: '', named: '' });
    expect(headline(full)).toMatch(/^The test: valid[^.]*\.$/);
  });

  it('is counted, the first three are named, and says what a missing serial number means', () => {
    const plan = withLog({ serial: '', placedBy: '', fetchedBy: '' });
    // Without names nobody is known whose license could be.
    expect(notRecorded(plan)).toEqual({
      short: '4 required items are not recorded.',
      brief: '4 items not recorded',
      named:
        'Not recorded: serial number of each detector; who placed the detectors; who picked the detectors up; and 1 more. Published lists require them of the report. Without its serial number a result cannot be tied to a device: A1 and A2.',
    });
    expect(headline(plan)).toMatch(/^The test: valid[^.]*\. 4 required items are not recorded\.$/);
  });

  it('names one alone, and the detectors that it concerns', () => {
    const [first, ...others] = full.log ?? [];
    const plan: Plan = { ...full, log: [...(first ? [{ ...first, serial: ' ' }] : []), ...others] };
    expect(notRecorded(plan).short).toBe('1 required item is not recorded.');
    expect(notRecorded(plan).brief).toBe('1 item not recorded');
    expect(notRecorded(plan).named).toBe(
      'Not recorded: serial number of each detector. Published lists require it of the report. Without its serial number a result cannot be tied to a device: A1.',
    );
  });

  it('puts what ties a result to a device and to people before addresses', () => {
    const { named } = notRecorded(validTestPlan());
    expect(named).toMatch(
      /^Not recorded: serial number of each detector; who placed .*; who picked .*; and \d+ more\. Published/,
    );
  });

  it('stands beside no other word: a test that is not known to be valid says so itself', () => {
    expect(headline({ ...validTestPlan(), conditions: [] })).toBe('The test: unknown.');
  });
});
