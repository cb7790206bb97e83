import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Agreement, Condition, ConditionState } from '../../../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { agreementState } from '../../../../src/protocol/conditions/agreement.ts';
import { describeAgreement } from '../../../../src/protocol/conditions/agreement-text.ts';
import { lacksObserverOrTime } from '../../../../src/protocol/conditions/condition-row.ts';
import {
  CONDITION_ITEMS,
  conditionsReport,
  furtherAnswers,
  recordedCondition,
} from '../../../../src/protocol/conditions/conditions-report.ts';
import { withAnswer, withCondition, withLook } from '../../../../src/protocol/conditions/edit-conditions.ts';

const MORNING = '2026-05-02T09:00:00-04:00';
const LATER = '2026-05-05T09:30:00-04:00';
const planWith = (conditions: readonly Condition[]): Plan => ({ ...emptyPlan(), conditions });
const DOORS: Condition = { item: 'doors-closed', state: 'kept', at: MORNING, by: 'R. Alder', note: 'garage too' };

const state = fc.constantFrom<ConditionState>('kept', 'broken', 'not-applicable', 'unknown');
const instant = fc.constantFrom(null, MORNING, LATER);
const condition = fc.record(
  {
    item: fc.constantFrom(...CONDITION_ITEMS.map(({ id }) => id), 'garage-door-shut'),
    state,
    at: instant,
    note: fc.constantFrom('', 'seen from outside'),
    by: fc.constantFrom('', 'R. Alder', '  '),
  },
  { requiredKeys: ['item', 'state', 'at', 'note'] },
);
const conditions = fc.array(condition, { maxLength: 12 });

describe('withAnswer(plan, item, state, look)', () => {
  it('writes down who and when of this look', () => {
    const plan = withAnswer(planWith([]), 'doors-closed', 'kept', { by: ' R. Alder ', at: MORNING });
    expect(plan.conditions).toEqual([{ item: 'doors-closed', state: 'kept', at: MORNING, by: 'R. Alder', note: '' }]);
  });

  it('lets nobody vouch for what was not seen then: without name and time the old ones go, the note stays', () => {
    const plan = withAnswer(planWith([DOORS]), 'doors-closed', 'broken', { by: '', at: null });
    expect(plan.conditions).toEqual([{ item: 'doors-closed', state: 'broken', at: null, note: 'garage too' }]);
  });

  it('keeps beside it what was met at an earlier inspection, and leaves every other item as it was', () => {
    fc.assert(
      fc.property(
        conditions,
        condition,
        fc.constantFrom<ConditionState>('kept', 'broken', 'not-applicable'),
        (before, { item }, next) => {
          const plan = withAnswer(planWith(before), item, next, { by: 'M. Brook', at: LATER });
          expect(recordedCondition(plan, item)).toMatchObject({ state: next, by: 'M. Brook', at: LATER });
          const stays = before.filter((each) => each.item === item && each.state === 'kept' && each.at === MORNING);
          expect(furtherAnswers(plan, item)).toEqual(next === 'not-applicable' ? [] : stays);
          const others = ({ conditions: all }: Plan) => all.filter((each) => each.item !== item);
          expect(others(plan)).toEqual(others(planWith(before)));
        },
      ),
    );
  });

  it('at the pick-up leaves the answer of the placement on record, with its observer, time and note', () => {
    const plan = withAnswer(planWith([DOORS]), 'doors-closed', 'kept', { by: 'M. Brook', at: LATER });
    expect(plan.conditions).toEqual([
      DOORS,
      { item: 'doors-closed', state: 'kept', at: LATER, by: 'M. Brook', note: '' },
    ]);
    const [row] = conditionsReport(plan).rows.filter(({ item }) => item.id === 'doors-closed');
    expect(row).toMatchObject({ state: 'kept', by: 'M. Brook', at: LATER, further: [DOORS] });
  });

  it('that the pick-up finds broken counts, whatever the placement found', () => {
    const found = withAnswer(planWith([DOORS]), 'doors-closed', 'broken', { by: 'M. Brook', at: LATER });
    expect(found.conditions).toHaveLength(2);
    const report = conditionsReport({ ...found, visit: { ...found.visit, start: MORNING, end: LATER } });
    expect(report.rows.find(({ item }) => item.id === 'doors-closed')?.state).toBe('broken');
    expect(report.validity).toBe('not-evaluated');
    // Pressed by mistake and corrected at once.
    const met = withAnswer(found, 'doors-closed', 'kept', { by: 'M. Brook', at: LATER });
    expect(met.conditions.map((each) => each.state)).toEqual(['kept', 'kept']);
  });

  it('corrects an answer of the same inspection, and takes a deviation back that was corrected before the start', () => {
    const soon = { by: 'R. Alder', at: '2026-05-02T20:59:00-04:00' };
    expect(withAnswer(planWith([DOORS]), 'doors-closed', 'kept', soon).conditions).toHaveLength(1);
    const open = planWith([{ ...DOORS, state: 'broken' }]);
    expect(withAnswer(open, 'doors-closed', 'kept', { by: 'M. Brook', at: LATER }).conditions).toEqual([
      { ...DOORS, by: 'M. Brook', at: LATER },
    ]);
  });

  it('taken back leaves that of the earlier inspection; the only one becomes not known, and its note stays', () => {
    const nobody = { by: '', at: null };
    const twice = withAnswer(planWith([DOORS]), 'doors-closed', 'kept', { by: 'M. Brook', at: LATER });
    const once = withAnswer(twice, 'doors-closed', 'unknown', nobody);
    expect(once.conditions).toEqual([DOORS]);
    expect(withAnswer(once, 'doors-closed', 'unknown', nobody).conditions).toEqual([
      { item: 'doors-closed', state: 'unknown', at: null, note: 'garage too' },
    ]);
  });
});

describe('withCondition(plan, item, change)', () => {
  it('changes what is named and nothing else of the entry', () => {
    const plan = withCondition(planWith([DOORS]), 'doors-closed', { note: 'shut again at once' });
    expect(plan.conditions).toEqual([{ ...DOORS, note: 'shut again at once' }]);
  });

  it('of several entries of one item goes on from the worst', () => {
    const plan = withCondition(planWith([DOORS, { ...DOORS, state: 'broken', by: 'M. Brook' }]), 'doors-closed', {
      note: '',
    });
    expect(plan.conditions).toEqual([{ ...DOORS, state: 'broken', by: 'M. Brook', note: '' }]);
  });

  it('changes the latest answer of two inspections, its time too, and leaves the earlier one', () => {
    const pickUp: Condition = { ...DOORS, at: LATER, by: 'M. Brook' };
    const plan = planWith([DOORS, pickUp]);
    expect(withCondition(plan, 'doors-closed', { by: 'N. Cole' }).conditions).toEqual([
      DOORS,
      { ...pickUp, by: 'N. Cole' },
    ]);
    // Set back to the first inspection it is the same answer once more.
    expect(withCondition(plan, 'doors-closed', { at: MORNING }).conditions).toEqual([{ ...pickUp, at: MORNING }]);
    expect(withCondition(planWith([DOORS]), 'doors-closed', { at: LATER }).conditions).toEqual([
      { ...DOORS, at: LATER },
    ]);
  });
});

describe('withLook(plan, look)', () => {
  it('puts name and time only where an answer has none', () => {
    const bare: Condition = { item: 'fireplaces-off', state: 'broken', at: null, note: '' };
    const timed: Condition = { item: 'windows-closed', state: 'kept', at: MORNING, note: '' };
    const plan = withLook(planWith([DOORS, bare, timed]), { by: 'M. Brook', at: LATER });
    expect(plan.conditions).toEqual([
      DOORS,
      { ...bare, by: 'M. Brook', at: LATER },
      { ...timed, by: 'M. Brook', at: MORNING },
    ]);
  });

  it('answers nothing: no state changes, and what is not known stays without who and when', () => {
    fc.assert(
      fc.property(conditions, (before) => {
        const plan = planWith(before);
        const after = withLook(plan, { by: 'M. Brook', at: LATER });
        expect(after.conditions.map((each) => each.state)).toEqual(before.map((each) => each.state));
        expect(after.conditions.filter((each) => each.state === 'unknown')).toEqual(
          before.filter((each) => each.state === 'unknown'),
        );
        expect(conditionsReport(after).validity).toBe(conditionsReport(plan).validity);
        expect(conditionsReport(after).rows.filter(lacksObserverOrTime)).toEqual([]);
      }),
    );
  });

  it('with nothing to put leaves the answers as they lack it', () => {
    const plan = planWith([{ item: 'fireplaces-off', state: 'kept', at: null, note: '' }]);
    expect(withLook(plan, { by: ' ', at: null }).conditions).toEqual(plan.conditions);
  });
});

describe('lacksWhoOrWhen(row)', () => {
  it.each<[string, ConditionState, string, string | null, boolean]>([
    ['an answer with both', 'kept', 'R. Alder', MORNING, false],
    ['no name', 'kept', '', MORNING, true],
    ['no time', 'broken', 'R. Alder', null, true],
    ['no answer yet', 'unknown', '', null, false],
  ])('%s', (_, state, by, at, lacks) => expect(lacksObserverOrTime({ state, answered: state, by, at })).toBe(lacks));

  it('an answer that the log overrules lacks nothing: it does not stand', () =>
    expect(lacksObserverOrTime({ state: 'broken', answered: 'kept', by: '', at: null })).toBe(false));
});

describe('the agreement', () => {
  const OPEN: Agreement = { signedBy: '', at: null, refused: false, note: '' };
  it.each<[Partial<Agreement>, string, RegExp]>([
    [{}, 'open', /^Not signed yet\. Ask/],
    [{ signedBy: '  ' }, 'open', /^Not signed yet/],
    [{ signedBy: 'M. Brook', at: MORNING }, 'signed', /^Signed\.$/],
    [{ signedBy: 'M. Brook' }, 'signed', /^Signed\. When is not recorded\.$/],
    [{ refused: true }, 'refused', /professional decides.* Who refused is not recorded\. When is not recorded\.$/],
    [{ refused: true, signedBy: 'M. Brook', at: MORNING }, 'refused', /whether the test continues\.$/],
  ])('%j: %s', (change, is, says) => {
    const agreement = { ...OPEN, ...change };
    expect(agreementState(agreement)).toBe(is);
    expect(describeAgreement({ ...emptyPlan(), agreement })).toMatch(says);
  });

  it('that the plan does not mention is not signed', () =>
    expect(describeAgreement(emptyPlan())).toMatch(/^Not signed/));
});
