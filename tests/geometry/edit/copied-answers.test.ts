import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { copiedInto } from '../../../geometry/edit/duplicate.ts';
import { clipOf, duplicatedItems, pastedItems, wallsCopied } from '../../../geometry/edit/index.ts';
import { itemsInRow } from '../../../geometry/edit/row.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Opening, Plan, Wall, WallSide } from '../../../geometry/plan/model.ts';
import { houseLevel, validTestPlan } from '../../helpers/valid-test-plan.ts';

const dark: Opening = {
  id: 'o1',
  wall: 'L1w1',
  kind: 'window',
  offset: 500,
  width: 900,
  bottom: 900,
  top: 2000,
  shade: 'well',
  glazed: false,
};
const lower = houseLevel('L1', 'A', { openings: [dark] });
const upper: Level = { ...houseLevel('L2', 'B', { order: 1, detectors: [] }), walls: [], rooms: [], openings: [] };
const plan: Plan = { ...validTestPlan(), levels: [lower, upper] };
const ID = 'L1d1';
const OF_ALL = [...lower.walls.map(({ id }) => id), ID];

const withSide = (side: WallSide): Plan => {
  const walls = lower.walls.map((wall) => (wall.id === 'L1w1' ? { ...wall, side } : wall));
  return { ...plan, levels: [{ ...lower, walls }, upper] };
};
const newOpenings = (after: Plan): readonly Opening[] =>
  after.levels.flatMap(({ openings }) => openings.filter(({ id }) => id !== 'o1'));

/** Every way to copy an opening, or a wall with it. */
const COPIES: readonly (readonly [string, () => { ok: boolean; plan?: Plan }])[] = [
  ['duplicated alone', () => duplicatedItems(plan, 'L1', ['o1'], 300, 300)],
  ['duplicated with its wall', () => duplicatedItems(plan, 'L1', ['L1w1'], 300, 300)],
  ['in a row', () => itemsInRow(plan, 'L1', ['o1'], { more: 2, spacing: 1200, direction: 0 })],
  ['pasted', () => pastedItems(plan, 'L2', clipOf(lower, OF_ALL), [0, 0])],
  ['copied as the outline of another level', () => wallsCopied(plan, 'L1', 'L2', new Set(OF_ALL), true)],
];

describe('a copy of an opening', () => {
  it.each(COPIES)('%s has no shade that nobody has looked at', (_, copy) => {
    const { ok, plan: after } = copy();
    expect(ok).toBe(true);
    const copies = newOpenings(after as Plan);
    expect(copies.length).toBeGreaterThan(0);
    for (const each of copies) {
      expect(each).toMatchObject({ kind: 'window', width: 900, bottom: 900, top: 2000 });
      expect(each).not.toHaveProperty('shade');
      expect(each).not.toHaveProperty('glazed');
      expect(each).toMatchObject({ bottomAnswered: false, topAnswered: false });
    }
  });

  it('keeps its glass, which lets the sun in', () => {
    const door: Opening = { ...dark, kind: 'door', bottom: 0, glazed: true };
    const glass: Plan = { ...plan, levels: [{ ...lower, openings: [door] }, upper] };
    const copied = wallsCopied(glass, 'L1', 'L2', new Set(OF_ALL), true);
    expect(copied.ok && newOpenings(copied.plan)).toMatchObject([{ kind: 'door', glazed: true }]);
  });
});

describe('a copy of a thing', () => {
  it('is not measured, except for what is on the floor', () => {
    const desk = {
      id: 't1',
      name: 'Desk',
      shape: { circle: { center: [2000, 2000], radius: 300 } },
      bottom: 0,
      top: 736,
    } as const;
    const sump = { ...desk, id: 'f1', kind: 'sump-pit', top: 0, stream: null } as const;
    const things: Plan = { ...plan, levels: [{ ...lower, objects: [desk], fixtures: [sump] }, upper] };
    const copies = duplicatedItems(things, 'L1', ['t1', 'f1'], 900, 0);
    const level = copies.ok ? copies.plan.levels[0] : undefined;
    expect(level?.objects).toMatchObject([desk, { id: 't2', top: 736, topAnswered: false }]);
    expect(level?.objects[0]).toBe(desk);
    expect(level?.objects[1]).not.toHaveProperty('bottomAnswered');
    expect(level?.fixtures[1]).not.toHaveProperty('topAnswered');
  });
});

describe('a copy of a wall', () => {
  // The neighbor's house adjoins below; nobody has said that it does above, or a foot aside.
  const party = withSide('inside');
  const ways = (from: Plan): readonly (readonly [string, { ok: boolean; plan?: Plan }])[] => {
    const source = from.levels[0] as Level;
    return [
      ['duplicated', duplicatedItems(from, 'L1', ['L1w1'], 300, 300)],
      ['in a row', itemsInRow(from, 'L1', ['L1w1'], { more: 2, spacing: 1200, direction: 0 })],
      ['pasted', pastedItems(from, 'L2', clipOf(source, OF_ALL), [0, 0])],
      ['copied as the outline of another level', wallsCopied(from, 'L1', 'L2', new Set(OF_ALL), true)],
    ];
  };
  const copiesIn = ({ plan: after }: { plan?: Plan }): readonly Wall[] =>
    (after?.levels ?? []).flatMap(({ walls }) => walls.filter(({ id }) => !lower.walls.some((wall) => wall.id === id)));

  it.each(ways(party))('%s is interior only where somebody says so, and not measured', (_, copied) => {
    const copies = copiesIn(copied);
    expect(copies.length).toBeGreaterThan(0);
    for (const each of copies) expect(each).toMatchObject({ side: 'auto', thicknessAnswered: false });
    expect(copied.plan?.levels[0]?.walls[0]).toBe(party.levels[0]?.walls[0]);
  });

  it.each(ways(withSide('outside')))('%s stays exterior: that allows less', (_, copied) => {
    expect(copiesIn(copied)[0]?.side).toBe('outside');
  });
});

describe('a copy of a detector', () => {
  it.each([
    ['beside it', 'L1'],
    ['on another level', 'L2'],
  ])('%s is carried by nothing that anybody has said', (_, levelId) => {
    const copies = copiedInto(plan, levelId, lower, [ID], [0, 600]);
    const level = copies.ok ? copies.plan.levels.find(({ id }) => id === levelId) : undefined;
    const copy = level?.detectors.at(-1);
    if (!(copies.ok && level && copy)) throw new Error('no copy');
    const row = checkDetector(copies.plan, buildLevel(level), copy).checks.find(({ rule }) => rule === 'support');
    expect(row).toMatchObject({ verdict: 'unknown', notRun: true });
    expect(copies.plan.levels[0]?.detectors[0]).toEqual(lower.detectors[0]);
  });
});
