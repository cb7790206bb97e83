import { describe, expect, it } from 'vitest';
import {
  withLiving,
  withLooksSigned,
  withNoneHere,
  withoutNoneHere,
  withPurpose,
} from '../../../geometry/edit/index.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';

const NOON = '2026-03-07T12:00:00-05:00';
const LOOK = { by: ' R. Alder ', at: NOON };
const levelOf = (plan: Plan): Level => plan.levels[0] as Level;

describe('withNoneHere(plan, levelId, rule, look)', () => {
  it('keeps the rule, who looked and when', () => {
    const { lookedFor, lookedForBy } = levelOf(withNoneHere(emptyPlan(), 'L1', 'heat', LOOK));
    expect(lookedFor).toEqual(['heat']);
    expect(lookedForBy).toEqual([{ rule: 'heat', by: 'R. Alder', at: NOON }]);
  });

  it('renews an answer that stood before, and leaves the others', () => {
    const two = withNoneHere(withNoneHere(emptyPlan(), 'L1', 'heat', LOOK), 'L1', 'sump', LOOK);
    const again = levelOf(withNoneHere(two, 'L1', 'heat', { by: '', at: null }));
    expect(again.lookedFor).toEqual(['sump', 'heat']);
    expect(again.lookedForBy).toEqual([
      { rule: 'sump', by: 'R. Alder', at: NOON },
      { rule: 'heat', by: '', at: null },
    ]);
  });

  it('writes a file that reads back as the same plan', () => {
    const plan = withNoneHere(emptyPlan(), 'L1', 'floor-drain', LOOK);
    expect(parsePlan(writePlan(plan))).toEqual({ ok: true, plan });
  });
});

describe('withoutNoneHere(plan, levelId, rules)', () => {
  it('takes an answer out with who gave it; the last one takes the keys along', () => {
    const before = emptyPlan();
    const two = withNoneHere(withNoneHere(before, 'L1', 'heat', LOOK), 'L1', 'sump', LOOK);
    const one = withoutNoneHere(two, 'L1', ['heat']);
    expect(levelOf(one)).toMatchObject({ lookedFor: ['sump'], lookedForBy: [{ rule: 'sump' }] });
    expect(withoutNoneHere(one, 'L1', ['sump'])).toEqual(before);
  });

  it('returns the plan itself where the rule was not answered', () => {
    const plan = withNoneHere(emptyPlan(), 'L1', 'heat', LOOK);
    expect(withoutNoneHere(plan, 'L1', ['sump'])).toBe(plan);
  });
});

describe('withLooksSigned(plan, levelId, look)', () => {
  it('puts who and when where they lack, and nothing over what is recorded', () => {
    const half = withNoneHere(emptyPlan(), 'L1', 'heat', { by: 'K. Brook', at: null });
    const bare = { ...half, levels: [{ ...levelOf(half), lookedFor: ['heat', 'sump'] }] };
    expect(levelOf(withLooksSigned(bare, 'L1', LOOK)).lookedForBy).toEqual([
      { rule: 'heat', by: 'K. Brook', at: NOON },
      { rule: 'sump', by: 'R. Alder', at: NOON },
    ]);
  });
});

describe('the purpose and who lives on a level', () => {
  const open: Plan = {
    ...emptyPlan(),
    site: { ...emptyPlan().site, purposeAnswered: false },
    levels: [{ ...levelOf(emptyPlan()), livingAnswered: false }],
  };

  it('stand as not answered in the file, and are kept so on a round trip', () => {
    expect(parsePlan(writePlan(open))).toEqual({ ok: true, plan: open });
  });

  it('are answered by an edit, which leaves no trace of having been asked', () => {
    const answered = withLiving(withPurpose(open, 'property-transfer'), 'L1', 'could-be');
    expect(answered.site).toEqual({ ...emptyPlan().site, purpose: 'property-transfer' });
    expect(levelOf(answered)).toEqual({ ...levelOf(emptyPlan()), living: 'could-be' });
  });
});
