import { describe, expect, it } from 'vitest';
import { parsePlan } from '../../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../../geometry/planfile/write.ts';
import { chainOf, holderOf } from '../../../../src/protocol/custody/chain.ts';
import { HOUSE } from '../../../../src/protocol/custody/chain-types.ts';
import { chainDiscrepancies } from '../../../../src/protocol/custody/describe-chain.ts';
import { allSame, listDetectors, namedDetectors, namesInLog } from '../../../../src/protocol/custody/detectors.ts';
import { detectorsOfHandOver, withHandOvers, withoutHandOver } from '../../../../src/protocol/custody/hand-overs.ts';
import {
  logEntryOf,
  withHandOver,
  withLogEntries,
  withLogEntry,
} from '../../../../src/protocol/custody/log-entries.ts';
import { detector, may, planOf, step } from '../../../helpers/custody.ts';

describe('several detectors', () => {
  const three = planOf(['A1', 'A2', 'A3']);
  const ids = ['d1', 'd2', 'd3'];

  it('are recorded in one, and what each has besides stays', () => {
    const plan = withLogEntries(withLogEntry(three, 'd2', { serial: 'C-2', note: 'on the shelf' }), ids, {
      placedBy: 'Ann Mill',
    });
    expect(ids.map((id) => logEntryOf(plan, id).placedBy)).toEqual(['Ann Mill', 'Ann Mill', 'Ann Mill']);
    expect(logEntryOf(plan, 'd2')).toMatchObject({ serial: 'C-2', note: 'on the shelf' });
  });

  it('are transferred as a box, each from whoever has it, and the file reads them back', () => {
    const fetched = withLogEntry(withLogEntries(three, ids, { fetchedBy: 'Ann Mill' }), 'd3', { fetchedBy: 'Bo Reed' });
    const plan = withHandOvers(fetched, ids, { at: may(5, '10:00'), from: null, to: 'Cy Dale', note: 'blue box' });
    expect(ids.map((id) => logEntryOf(plan, id).custody[0]?.from)).toEqual(['Ann Mill', 'Ann Mill', 'Bo Reed']);
    expect(ids.map((id) => holderOf(plan, id))).toEqual(['Cy Dale', 'Cy Dale', 'Cy Dale']);
    expect(ids.flatMap((id) => chainOf(plan, id).steps.flatMap((each) => each.discrepancies))).toEqual([]);
    const read = parsePlan(writePlan(plan));
    expect(read.ok && read.plan.log).toEqual(plan.log);
  });

  it('that went in one box are found by it, and it is removed for all of them or for some', () => {
    const box = { at: may(5, '10:00'), from: null, to: 'Cy Dale', note: 'blue box' };
    const plan = withHandOver(
      withHandOvers(three, ['d1', 'd3'], box),
      'd3',
      step(may(5, '11:00'), 'Cy Dale', 'Bo Reed'),
    );
    const gone = { ...box, from: '' };
    const together = detectorsOfHandOver(plan, gone);
    expect(together.map(({ name }) => name)).toEqual(['A1', 'A3']);
    const after = withoutHandOver(plan, together, gone);
    expect(ids.map((id) => logEntryOf(after, id).custody.map(({ to }) => to))).toEqual([[], [], ['Bo Reed']]);
    expect(withoutHandOver(after, together, gone)).toEqual(after);
  });

  it('say what does not fit with the detectors that it is said of, those that went together in one line', () => {
    const fetched = withLogEntry(withLogEntries(three, ids, { fetchedBy: 'Ann Mill' }), 'd3', { fetchedBy: 'Bo Reed' });
    const plan = withHandOvers(fetched, ids, { at: may(5, '10:00'), from: 'Ann Mill', to: 'Cy Dale', note: '' });
    expect(chainDiscrepancies(plan).map(({ text }) => text)).toEqual([
      'A3, Ann Mill to Cy Dale: According to the log Bo Reed had it, not Ann Mill.',
    ]);
    const early = withHandOvers(fetched, ['d1', 'd2'], { at: may(5, '08:00'), from: HOUSE, to: 'Cy Dale', note: '' });
    expect(chainDiscrepancies(early)[0]?.text).toMatch(/^A1 and A2, the house to Cy Dale: Before the pick-up/);
  });

  it('are named by label, by label and level where two have the same, and by id without one', () => {
    const plan = planOf(['A1', ' ']);
    const [cellar] = plan.levels;
    if (!cellar) throw new Error('no level');
    const upstairs = { ...cellar, id: 'level-2', name: 'First floor', order: 1, detectors: [detector('d9', 'A1')] };
    const named = namedDetectors({ ...plan, levels: [cellar, upstairs] });
    expect(named.map(({ name }) => name)).toEqual(['A1 (Basement)', 'd2', 'A1 (First floor)']);
  });

  it('are said in few words', () => {
    const all = namedDetectors(three);
    expect(listDetectors(all, all)).toBe('All 3 detectors');
    expect(listDetectors(all.slice(0, 2), all)).toBe('A1 and A2');
    expect([allSame([]), allSame(['a', 'a']), allSame(['a', 'b'])]).toEqual([true, true, false]);
  });

  it('offer the names of the log, each once', () => {
    const plan = withHandOver(
      withLogEntries(three, ids, { placedBy: 'Ann Mill ' }),
      'd1',
      step(null, 'Ann Mill', 'Bo Reed'),
    );
    expect(namesInLog(plan)).toEqual(['Ann Mill', 'Bo Reed']);
  });
});
