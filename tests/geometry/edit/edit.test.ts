import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkedPlan,
  duplicatedItems,
  type EditResult,
  ITEM_KINDS,
  itemById,
  itemPatched,
  itemsOf,
  movedItems,
  nextId,
  resizedItem,
  turnedItem,
  withDetectorAt,
  withItem,
  withItems,
  withLevel,
  withoutItems,
  withPlan,
  withWallEnds,
} from '../../../geometry/edit/index.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { howMany } from '../../helpers/how-many.ts';
import { planFile } from '../planfile/plans.ts';
import {
  desk,
  detector,
  done,
  fan,
  frozen,
  level,
  levelOf,
  plan,
  reasonOf,
  wall,
  wallOf,
  window,
} from './room-plan.ts';

describe('withItem(plan, levelId, kind, item)', () => {
  it('adds a thing at the end of its list', () => {
    const edited = done(withItem(plan, 'L1', 'object', { ...desk, id: 't2' }));
    expect(levelOf(edited).objects.map(({ id }) => id)).toEqual(['t1', 't2']);
  });

  it('puts a thing in the place of the one with its id, and leaves all else the same objects', () => {
    const edited = done(withItem(plan, 'L1', 'detector', { ...detector, base: 1000 }));
    expect(levelOf(edited).detectors.map(({ id, base }) => [id, base])).toEqual([
      ['d1', 1000],
      ['d2', 762],
      ['d3', 762],
    ]);
    expect(levelOf(edited).walls).toBe(level.walls);
    expect(levelOf(edited).detectors[1]).toBe(level.detectors[1]);
    expect(edited.site).toBe(plan.site);
  });

  it('gives the same plan back when the thing is the same', () => {
    expect(done(withItem(plan, 'L1', 'detector', detector))).toBe(plan);
  });

  it.each<[string, EditResult, string]>([
    [
      'a window past the end of its wall', // 4000 − 914.4 + 101.6
      withItem(plan, 'L1', 'opening', { ...window, offset: 3187.2 }),
      'The window reaches 4 in past the end of its wall. Slide it back or shorten it.',
    ],
    [
      'a door before the start of its wall',
      withItem(plan, 'L1', 'opening', { ...window, kind: 'door', offset: -304.8 }),
      'The door reaches 1 ft past the start of its wall. Slide it back or shorten it.',
    ],
    [
      'a passage wider than its wall', // 4000 mm are 13 ft 1.48 in, 4267.2 are 14 ft
      withItem(plan, 'L1', 'opening', { ...window, kind: 'passage', offset: 0, width: 4267.2 }),
      'The passage is 14 ft wide and its wall is only 13 ft 1 3/8 in long. Shorten it or put it on a longer wall.',
    ],
    [
      'a window on a wall that is not there',
      withItem(plan, 'L1', 'opening', { ...window, wall: 'w9' }),
      'The window has lost its wall. Put it on a wall of this level.',
    ],
    [
      'a wall too short for the windows in it',
      withItem(plan, 'L1', 'wall', wall('w1', [0, 0], [1500, 0])), // 1000 + 914.4 − 1500 = 414.4, 16.3 in
      'The window reaches 1 ft 4 3/8 in past the end of its wall. Slide it back or shorten it.',
    ],
    [
      'a top below the bottom',
      withItem(plan, 'L1', 'object', { ...desk, bottom: 914.4, top: 609.6 }),
      'Desk has its top at 2 ft, below its bottom at 3 ft. Swap the two or measure again.',
    ],
    [
      'an outline that crosses itself',
      withItem(plan, 'L1', 'object', {
        ...desk,
        name: '',
        shape: {
          polygon: {
            points: [
              [0, 0],
              [9, 9],
              [9, 0],
              [0, 9],
            ],
          },
        },
      }),
      'The object has an outline that touches itself: side 1–2 meets side 3–4. Move a corner away.',
    ],
    [
      'a number that cannot be',
      withItem(plan, 'L1', 'fixture', { ...fan, shape: { circle: { center: [0, 0], radius: -1 } } }),
      'The portable fan: "shape.circle.radius" is -1, needs a number of mm, 0 to 100000.',
    ],
    [
      'a point off the page',
      withDetectorAt(plan, 'L1', 'd1', [2e7, 0]),
      'Detector A1: "at.0" is 20000000, needs a number of mm, -10000000 to 10000000.',
    ],
    [
      'an id that something else has',
      withItem(plan, 'L1', 'object', { ...desk, id: 'w1' }),
      'The id "w1" belongs to something else already.',
    ],
  ])('refuses %s', (_, result, reason) => {
    expect(reasonOf(result)).toBe(reason);
  });

  it('refuses several at once as a whole', () => {
    const walls = [wall('w6', [0, 0], [0, 9]), { ...wall('w7', [0, 0], [9, 9]), thickness: -1 }];
    expect(reasonOf(withItems(plan, 'L1', 'wall', walls))).toBe(
      'The wall: "thickness" is -1, needs a number of mm, 0 to 10000.',
    );
    expect(levelOf(done(withItems(plan, 'L1', 'wall', walls.slice(0, 1)))).walls).toHaveLength(6);
  });

  it('throws when the plan has no such level: that is our mistake', () => {
    expect(() => withItem(plan, 'L9', 'object', desk)).toThrow('the plan has no level L9');
  });
});

describe('itemPatched(plan, levelId, kind, id, patch)', () => {
  it('changes some values and keeps the rest', () => {
    const edited = done(itemPatched(plan, 'L1', 'wall', 'w1', { side: 'inside' }));
    expect(wallOf(edited, 'w1')).toEqual({ ...wall('w1', [0, 0], [4000, 0]), side: 'inside' });
  });

  it('throws when the level has no such thing: that is our mistake', () => {
    expect(() => itemPatched(plan, 'L1', 'wall', 'o1', {})).toThrow('level L1 has no wall o1');
  });
});

describe('itemById(level, id) and nextId(plan, prefix)', () => {
  it('find a thing of any kind', () => {
    expect(itemById(level, 't1')).toEqual({ kind: 'object', item: desk });
    expect(itemById(level, 'o1')).toEqual({ kind: 'opening', item: window });
    expect(itemById(level, 'w9')).toBe(null);
  });

  it('name the smallest number that nothing has', () => {
    expect(nextId(plan, 'w')).toBe('w6');
    expect(nextId(withoutItems(plan, 'L1', ['w2']), 'w')).toBe('w2');
    expect(nextId(plan, 'L')).toBe('L2');
  });
});

describe('withoutItems(plan, levelId, ids)', () => {
  it('takes the openings with their wall, and leaves the others', () => {
    const edited = withoutItems(plan, 'L1', ['w1']);
    expect(levelOf(edited).openings.map(({ id }) => id)).toEqual(['o2']);
    expect(levelOf(edited).detectors).toBe(level.detectors);
    expect(edited.readings).toBe(plan.readings);
  });

  it('takes the readings with their detector', () => {
    expect(withoutItems(plan, 'L1', ['d1', 't1']).readings).toEqual([{ detector: 'd2', value: 4, unit: 'pCi/L' }]);
  });

  it('takes the earlier results of its place with a detector: at another place they would mean something else', () => {
    const result = { at: null, value: 3, unit: 'pCi/L', term: 'short-term', note: '' } as const;
    const here = { ...result, detector: 'd1' };
    const more = { ...plan, readings: [], earlier: [here, { ...result, detector: 'd2' }, result] };
    expect(withoutItems(more, 'L1', ['d1']).earlier).toEqual([{ ...result, detector: 'd2' }, result]);
    expect('earlier' in withoutItems(plan, 'L1', ['d1'])).toBe(false);
  });

  it('gives the same plan back when nothing of it is there', () => {
    expect(withoutItems(plan, 'L1', ['w99'])).toBe(plan);
  });
});

describe('whatever is edited', () => {
  const number = fc.oneof(fc.integer({ min: -5000, max: 5000 }), fc.double({ min: -2e7, max: 2e7, noNaN: true }));
  const step = fc.record({
    how: fc.constantFrom('move', 'copy', 'turn', 'delete', 'lay', 'patch', 'resize', 'level', 'time'),
    picks: fc.array(fc.nat(), { minLength: 1, maxLength: 3 }),
    x: number,
    y: number,
  });
  type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;

  function edited(before: Plan, { how, picks, x, y }: Step): EditResult {
    const { id: levelId } = levelOf(before);
    const all = ITEM_KINDS.flatMap((kind) => itemsOf(levelOf(before), kind).map(({ id }) => id));
    const ids = all.length === 0 ? [] : picks.map((pick) => all[pick % all.length] as string);
    const found = itemById(levelOf(before), ids[0] ?? '');
    if (how === 'level') return withLevel(before, levelId, { ceiling: x, order: y });
    if (how === 'time')
      return withPlan(before, { visit: { ...before.visit, start: '2026-03-07T18:00:00Z' }, tapeTolerance: x });
    if (how === 'move') return movedItems(before, levelId, ids, x, y);
    if (how === 'copy') return duplicatedItems(before, levelId, ids, x, y);
    if (how === 'delete') return { ok: true, plan: withoutItems(before, levelId, ids) };
    if (!found) return { ok: true, plan: before };
    if (how === 'turn') return turnedItem(before, levelId, found.item.id, x);
    if (found.kind === 'wall') return withWallEnds(before, levelId, found.item.id, [x, y], found.item.to);
    if (found.kind === 'opening')
      return itemPatched(before, levelId, 'opening', found.item.id, { offset: x, width: y });
    if (found.kind === 'detector') return withDetectorAt(before, levelId, found.item.id, [x, y]);
    if (found.kind === 'room') return itemPatched(before, levelId, 'room', found.item.id, { at: [x, y] });
    return how === 'resize'
      ? resizedItem(before, levelId, found.item.id, { across: x, width: x, depth: y })
      : itemPatched(before, levelId, found.kind, found.item.id, { bottom: x, top: y });
  }

  it('nothing that goes in is changed, and what comes out is a plan that the reader reads back', () => {
    const counts = { done: 0, refused: 0 };
    fc.assert(
      fc.property(planFile, fc.array(step, { minLength: 1, maxLength: 8 }), (file, steps) => {
        const read = parsePlan(JSON.stringify(file));
        let current = read.ok ? read.plan : emptyPlan();
        fc.pre(current.levels.length > 0);
        for (const each of steps) {
          const result = edited(frozen(current), each);
          counts[result.ok ? 'done' : 'refused'] += 1;
          if (result.ok) current = result.plan;
          else expect(result.reason).toMatch(/^.+\.$/s);
        }
        const again = parsePlan(writePlan(current));
        expect(again.ok ? [] : again.problems.map(({ message }) => message)).toEqual([]);
      }),
      { numRuns: howMany(150, 400) },
    );
    expect(counts.done).toBeGreaterThan(300);
    expect(counts.refused).toBeGreaterThan(100);
  });

  it('checkedPlan agrees with the reader on levels that are changed in any way', () => {
    const wrong = fc.constantFrom<unknown>(null, -1, 0, 5, 1e8, 'w1', 'd1', '', [0, 0], [0], {
      circle: { center: [0, 0], radius: 1 },
    });
    fc.assert(
      fc.property(fc.constantFrom(...ITEM_KINDS), fc.nat(), wrong, (kind, pick, value) => {
        const items = itemsOf(level, kind);
        const item = items[pick % items.length] as object;
        const keys = Object.keys(item);
        const changed = { ...item, [keys[pick % keys.length] as string]: value };
        const list = `${kind}s` as 'walls';
        const after = {
          ...plan,
          levels: [{ ...level, [list]: items.map((each) => (each === item ? changed : each)) } as Level],
        };
        // Serialized with JSON.stringify, because the writer asserts what the reader checks here.
        expect(checkedPlan(plan, after).ok).toBe(parsePlan(JSON.stringify(after)).ok);
      }),
      { numRuns: howMany(60, 500) },
    );
  });
});
