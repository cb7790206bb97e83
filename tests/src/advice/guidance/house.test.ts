import { beforeEach, describe, expect, it } from 'vitest';
import { buildLevel } from '../../../../geometry/level/build-level.ts';
import type { Detector, Plan } from '../../../../geometry/plan/model.ts';
import type { Condition, ConditionState, Visit } from '../../../../geometry/plan/test-record.ts';
import { emptyLevel, emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { type Hint, WEIGHT } from '../../../../src/advice/guidance/hint.ts';
import { houseHints, houseInWords } from '../../../../src/advice/guidance/house.ts';
import { CONDITION_ITEMS, conditionsReport } from '../../../../src/protocol/conditions/conditions-report.ts';
import { withLogEntry } from '../../../../src/protocol/custody/log-entries.ts';
import { useAppStore } from '../../../../src/state/store.ts';
import { answerLine, markOf } from '../../../../src/ui/stages/house/state-words.ts';
import { answer, signAnswers } from '../../../../src/ui/stages/house/walk.ts';

const START = '2026-05-02T09:00:00-04:00';
const VISIT: Visit = { closedSince: null, mitigationOnSince: null, start: START, end: null };
const DETECTOR: Detector = {
  id: 'd1',
  label: 'K1',
  at: [1000, 1000],
  base: 762,
  radius: 50.8,
  tall: 25.4,
  pair: null,
};
const placed = (part: Partial<Plan> = {}): Plan => ({
  ...emptyPlan(),
  levels: [{ ...emptyLevel('L1'), detectors: [DETECTOR] }],
  ...part,
});
const said = (item: string, state: ConditionState, seen: Partial<Condition> = {}): Condition => ({
  item,
  state,
  at: START,
  by: 'R. Alder',
  note: '',
  ...seen,
});
const allKept = (...others: readonly Condition[]): readonly Condition[] => [
  ...CONDITION_ITEMS.filter(({ id }) => !others.some(({ item }) => item === id)).map(({ id }) => said(id, 'kept')),
  ...others,
];
const hintsOf = (plan: Plan): readonly Hint[] =>
  houseHints(
    plan,
    plan.levels.map((level) => ({ plan, model: buildLevel(level), reports: [], toTest: true, inView: true })),
  );
const texts = (plan: Plan) => hintsOf(plan).map(({ text, missing }) => `${missing ? '! ' : ''}${text}`);

describe('what the House stage asks for', () => {
  it('nothing before a detector is placed, but a break is told at once', () => {
    expect(hintsOf(emptyPlan())).toEqual([]);
    const [hint] = hintsOf({ ...emptyPlan(), conditions: [said('windows-closed', 'broken')] });
    expect(hint).toMatchObject({
      text: 'Deviation: "Windows closed on every level". The test is invalid.',
      missing: true,
      weight: WEIGHT.houseBroken,
      action: { kind: 'stage', stage: 'house' },
    });
  });

  it('before the start what is open is a remark, after it something is missing', () => {
    expect(texts(placed())).toEqual(['15 conditions of the house not known yet.']);
    expect(texts(placed({ visit: VISIT }))).toEqual([
      '! 15 conditions of the house not known yet.',
      'The non-interference agreement is not signed yet.',
    ]);
  });

  it('once the walk has begun the rest of the list is missing', () => {
    expect(texts(placed({ conditions: [said('doors-closed', 'kept')] }))).toEqual([
      '! 14 conditions of the house not known yet.',
    ]);
  });

  it('names what is open where it is little', () => {
    const open = (...ids: readonly string[]) =>
      texts(placed({ conditions: allKept(...ids.map((id) => said(id, 'unknown'))) }));
    expect(open('fireplaces-off')).toEqual(['! 1 condition of the house not known yet: "Fireplaces off".']);
    expect(open('fireplaces-off', 'attic-fan-as-usual')[0]).toMatch(
      /^! 2 conditions of the house not known yet: "[^"]+" and "[^"]+"\.$/,
    );
  });

  it('leaves a break that may be looked at to a professional', () => {
    expect(texts(placed({ conditions: allKept(said('fireplaces-off', 'broken')) }))).toEqual([
      '! Deviation: "Fireplaces off". A certified or licensed professional decides whether the result may be used.',
    ]);
    expect(texts(placed({ conditions: allKept(said('attic-fan-as-usual', 'broken')) }))).toEqual([
      '! Deviation: "Attic fans as usual". A certified or licensed professional decides whether the result may be used.',
    ]);
  });

  it('counts the answers without who or when', () => {
    const bare = said('doors-closed', 'kept', { by: '' });
    const untimed = said('windows-closed', 'kept', { at: null });
    expect(texts(placed({ conditions: allKept(bare) }))).toEqual([
      '1 answer about the house without a name or a time.',
    ]);
    expect(texts(placed({ conditions: allKept(bare, untimed) }))).toEqual([
      '2 answers about the house without a name or a time.',
    ]);
  });

  it('says which answers the pick-up leaves open', () => {
    const end = '2026-05-05T09:00:00-04:00';
    const after = said('doors-closed', 'kept', { at: end });
    const [early] = texts(placed({ conditions: allKept(after), visit: { ...VISIT, end } }));
    expect(early).toBe('15 answers from before the pick-up: inspect again at the pick-up and answer again.');
    expect(texts(placed({ conditions: [after], visit: { ...VISIT, end } })).join()).not.toContain('before the pick-up');
  });

  it('asks no more for the agreement once it is signed or refused', () => {
    const agreement = { signedBy: '', at: START, refused: true, note: '' };
    const asked = (plan: Plan) => texts(plan).some((text) => /interfere/.test(text));
    expect(asked(placed({ visit: VISIT }))).toBe(true);
    expect(asked(placed({ visit: VISIT, agreement }))).toBe(false);
  });

  it('says in a few words how far it is', () => {
    expect(houseInWords(placed())).toBe('');
    expect(houseInWords(placed({ conditions: [said('doors-closed', 'kept')] }))).toBe('1 of 15 conditions answered.');
    expect(houseInWords(placed({ conditions: [said('doors-closed', 'broken')] }))).toBe(
      '1 of 15 conditions answered, invalid.',
    );
  });
});

describe('the line under an item', () => {
  const lineOf = (condition: Condition) => {
    const row = conditionsReport({ ...emptyPlan(), conditions: [condition] }).rows.find(
      ({ item }) => item.id === condition.item,
    );
    return row && answerLine(row, 'America/New_York');
  };
  it.each<[string, Condition]>([
    ['Met: R. Alder, Saturday, May 2, 9:00 am', said('doors-closed', 'kept')],
    ['Met: R. Alder; when not recorded', said('doors-closed', 'kept', { at: null })],
    ['Not met: Saturday, May 2, 9:00 am; who not recorded', said('doors-closed', 'broken', { by: ' ' })],
    ['Not applicable: who and when not recorded', said('fireplaces-off', 'not-applicable', { by: '', at: null })],
    ['Not known', said('doors-closed', 'unknown', { by: '', at: null })],
  ])('%s', (line, condition) => expect(lineOf(condition)).toBe(line));
});

describe('the line under an item that is known better', () => {
  const withTampering = (conditions: readonly Condition[]) =>
    conditionsReport(withLogEntry(placed({ conditions }), 'd1', { tampering: 'seen' })).rows.find(
      ({ item }) => item.id === 'not-disturbed',
    );
  it('names nobody for a deviation that only the log has', () => {
    const line = (row: ReturnType<typeof withTampering>) => row && answerLine(row, 'UTC');
    expect(line(withTampering([]))).toBe('Not met, according to the log');
    expect(line(withTampering([said('not-disturbed', 'kept')]))).toBe(
      'Not met, according to the log (the answer was: met)',
    );
    expect(line(withTampering([said('not-disturbed', 'broken')]))).toBe('Not met: R. Alder, Saturday 2 May, 13:00');
  });

  it('of what was seen before the pick-up says "so far", in the shape of what is not known', () => {
    const rowAt = (end: string) =>
      conditionsReport({
        ...emptyPlan(),
        visit: { ...VISIT, end },
        conditions: [said('doors-closed', 'kept')],
      }).rows.find(({ item }) => item.id === 'doors-closed');
    const [early, late] = [rowAt('2026-05-02T09:01:00-04:00'), rowAt(START)];
    expect(early && answerLine(early, 'America/New_York')).toBe('Met so far: R. Alder, Saturday, May 2, 9:00 am');
    expect(early && markOf(early)).toBe('unknown');
    expect(late && answerLine(late, 'America/New_York')).toBe('Met: R. Alder, Saturday, May 2, 9:00 am');
    expect(late && markOf(late)).toBe('clear');
  });

  it('says that "not applicable" is no answer to windows', () => {
    const plan = { ...emptyPlan(), conditions: [said('windows-closed', 'not-applicable')] };
    const row = conditionsReport(plan).rows.find(({ item }) => item.id === 'windows-closed');
    expect(row && answerLine(row, 'UTC')).toBe('Not known (the answer was: not applicable)');
  });
});

describe('the walk', () => {
  const conditions = () => useAppStore.getState().plan.conditions;
  const message = () => useAppStore.getState().message;
  beforeEach(() => {
    useAppStore.getState().openPlan(placed({ visit: VISIT }));
    useAppStore.getState().setWalk({ by: '', at: null });
  });

  it('records an answer without who and when, and says nothing of a kept item', () => {
    answer('doors-closed', 'kept');
    expect(conditions()).toEqual([{ item: 'doors-closed', state: 'kept', at: null, note: '' }]);
    expect(message()).toBe('');
  });

  it('puts its name and time on every answer, and on none that is taken back', () => {
    useAppStore.getState().setWalk({ by: 'R. Alder', at: START });
    answer('doors-closed', 'kept');
    answer('fireplaces-off', 'not-applicable');
    expect(conditions()).toMatchObject([
      { item: 'doors-closed', by: 'R. Alder', at: START },
      { item: 'fireplaces-off', by: 'R. Alder', at: START },
    ]);
    answer('doors-closed', 'unknown');
    expect(conditions()[0]).toEqual({ item: 'doors-closed', state: 'unknown', at: null, note: '' });
  });

  it('says of a deviation at once what it means, and one step of history takes it back', () => {
    answer('doors-closed', 'broken');
    expect(message()).toMatch(
      /^Exterior doors closed: This test is invalid: do not use the result\. Keep the record and test again\./,
    );
    useAppStore.getState().undo();
    expect(conditions()).toEqual([]);
    expect(message()).toBe('');
  });

  it('warns when a deviation of a test under way is turned into kept', () => {
    answer('doors-closed', 'broken');
    answer('doors-closed', 'kept');
    expect(message()).toMatch(/the deviation is withdrawn\. If it happened during the test, leave it as not met/);
  });

  it('signs the answers that lack it as one step', () => {
    answer('doors-closed', 'kept');
    answer('windows-closed', 'kept');
    useAppStore.getState().setWalk({ by: 'R. Alder', at: START });
    signAnswers();
    expect(conditions()).toMatchObject([{ by: 'R. Alder' }, { by: 'R. Alder' }]);
    useAppStore.getState().undo();
    expect(conditions()).toMatchObject([{ at: null }, { at: null }]);
  });

  it('of one house leaves its time to no other; the name stays', () => {
    useAppStore.getState().setWalk({ by: 'R. Alder', at: START });
    answer('doors-closed', 'kept');
    expect(useAppStore.getState().walk.at).toBe(START);
    useAppStore.getState().openPlan(placed());
    expect(useAppStore.getState().walk).toEqual({ by: 'R. Alder', at: null });
  });
});
