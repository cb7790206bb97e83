import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { compareVerdicts } from '../../../geometry/check/measure.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Detector, Level, Plan, PlanObject } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { type Remedy, remediesFor } from '../../../src/advice/remedies.ts';
import { detectorAt, loop, rectangle } from '../../helpers/drawn.ts';
import { houseOf } from '../../helpers/sun-room.ts';
import { houseLevel, pairAt, validTestPlan } from '../../helpers/valid-test-plan.ts';

function sample(name: string): Plan {
  const read = parsePlan(readFileSync(`samples/${name}.plan.json`, 'utf8'));
  if (!read.ok) throw new Error(`${name} is not a plan`);
  return read.plan;
}

/** The ways out of one detector, and the verdict that each leads to. */
function waysOf(plan: Plan, detector: Detector) {
  const level = plan.levels.find(({ detectors }) => detectors.some(({ id }) => id === detector.id));
  if (!level) throw new Error('no such detector');
  const changed = { ...level, detectors: level.detectors.map((each) => (each.id === detector.id ? detector : each)) };
  const model = buildLevel(changed);
  const whole = { ...plan, levels: plan.levels.map((each) => (each.id === level.id ? changed : each)) };
  const ways = remediesFor(whole, model, detector, checkDetector(whole, model, detector));
  const after = (way: Remedy) => {
    if (way.kind === 'name-room' || way.kind === 'level' || way.kind === 'cover') return null;
    if (way.kind === 'pair') {
      const detectors = changed.detectors.map((each) => ({ ...each, at: way.places.get(each.id) ?? each.at }));
      const there = { ...model, level: { ...changed, detectors } };
      const pair = detectors.filter(({ id }) => way.places.has(id));
      return pair.map((each) => checkDetector(whole, there, each).verdict).sort(compareVerdicts)[0];
    }
    const moved = way.kind === 'move' ? { ...detector, at: way.at } : { ...detector, base: way.base };
    return checkDetector(whole, model, moved).verdict;
  };
  return ways.map((way) => ({ ...way, leadsTo: after(way) }));
}

const cellar = sample('03-crowded-utility');
const basement = sample('01-plain-basement');
const [c1, c2] = cellar.levels[0]?.detectors ?? [];
const [a1, a2] = basement.levels[0]?.detectors ?? [];
if (!c1 || !c2 || !a1 || !a2) throw new Error('the samples have lost their detectors');

describe('waysOut', () => {
  it('offers a blocked detector the nearest spot, tight, and the nearest with tape to spare, clear', () => {
    // Without the washer and the dryer, which leave it no spot near by.
    const levels = cellar.levels.map((level) => ({
      ...level,
      fixtures: level.fixtures.filter(({ kind }) => kind !== 'washer' && kind !== 'dryer'),
    }));
    const ways = waysOf({ ...cellar, levels }, c1);
    expect(ways.map(({ leadsTo }) => leadsTo)).toEqual(['tight', 'clear']);
    // 1 ft 2 in from the window, 3 ft needed: 1 ft 10 in straight away from it.
    expect(ways[0]?.words).toBe('Move it 1 ft 10 in toward the south wall, where nothing carries it');
    expect(ways[1]?.words).toBe(
      'Move it 1 ft 10 1/2 in toward the south wall, where nothing carries it, with tape to spare',
    );
  });

  it('asks for the use of a room that has none, and offers no spot instead', () => {
    expect(waysOf(cellar, c2).map(({ kind }) => kind)).toEqual(['name-room']);
  });

  it('raises what stands too low, lowers what hangs too high', () => {
    const onTheFloor = { ...a1, at: [2616.2, 3000] as const, pair: null }; // away from the desk
    const low = waysOf(basement, { ...onTheFloor, base: 18 * 25.4 });
    expect(low).toMatchObject([{ kind: 'height', words: 'Raise it 2 in' }]);
    expect(low[0]?.leadsTo).toBe('tight'); // just at the limit: look again with the tape
    const high = waysOf(basement, { ...onTheFloor, base: 73 * 25.4 });
    expect(high).toMatchObject([{ kind: 'height', words: 'Lower it 2 in' }]); // its top is at 74 in
  });

  it('sets one of a pair beside the other, at the distance that every published list takes', () => {
    const ways = waysOf(basement, { ...a1, at: [2616.2, 3000] });
    expect(ways).toMatchObject([{ kind: 'move', words: 'Place it beside A2, 5 in from rim to rim', leadsTo: 'clear' }]);
  });

  it('says why it is another distance: with a tape that may be off by more than an inch, 5 in is tight', () => {
    const doubtful = { ...basement, tapeTolerance: 38.1 };
    expect(waysOf(doubtful, { ...a1, at: [2616.2, 3000] })[0]?.words).toBe(
      'Place it beside A2, 6 in from rim to rim: 5 in would be tight here',
    );
  });

  it('moves a pair together: the spacing stays, and both pass', () => {
    // 4 in nearer to the outside wall in the west than the 12 in that it needs, both on stands.
    const level = houseLevel('L1', 'A', {
      detectors: pairAt('L1', 'A').map((each, i) => ({ ...each, at: [355.6 + i * 215.9, 3000] as const })),
    });
    const plan = validTestPlan([], { levels: [level] });
    const [one, two] = level.detectors;
    if (!one || !two) throw new Error('no pair');
    const ways = waysOf(plan, one);
    // Its rim is 203.2 mm (8 in) from the face of the wall: 4 in more, and an inch more than that with tape to spare. The pair keeps
    // its 4 1/2 in, which the tape cannot vouch for: no move makes that clear.
    expect(ways.map(({ words }) => words)).toEqual(['Move the pair together 4 in toward the east wall']);
    expect(ways.map(({ leadsTo }) => leadsTo)).toEqual(['tight']);
    const [way] = ways;
    if (way?.kind !== 'pair') throw new Error('no way for the pair');
    const [a, b] = [way.places.get(one.id), way.places.get(two.id)];
    expect((b?.[0] ?? 0) - (a?.[0] ?? 0)).toBeCloseTo(215.9, 6);
    // The other one is far enough and asks for the same move with it: nothing is wrong with it but the spacing.
    expect(waysOf(plan, two).map(({ kind }) => kind)).toEqual([]);
  });

  it('shows the level where the test belongs to one on a level that is not tested', () => {
    const sale = sample('02-split-level');
    const upstairs = sale.levels.flatMap(({ detectors }) => detectors).find(({ label }) => label === 'B3');
    if (!upstairs) throw new Error('the sample has lost its detector B3');
    // L1, "Lower level", is the lowest that could be lived in.
    expect(waysOf(sale, upstairs)).toMatchObject([
      { kind: 'level', words: 'Show Lower level, where the test belongs', levelId: 'L1' },
    ]);
  });

  describe('of one on a desk', () => {
    const desk = (center: readonly [number, number], width: number): PlanObject => {
      const shape = { box: { center, width, depth: 600, turn: 0 } };
      return { id: 'desk', name: 'Desk', shape, bottom: 0, top: 762 };
    };
    const walls = loop('a', rectangle(-100, -100, 8200, 6200));
    const rooms = [{ id: 'r', name: 'Den', use: 'den', at: [50, 50] }] as const;
    const planWith = (object: PlanObject, at: readonly [number, number]) => {
      const level: Level = { ...emptyLevel('L1'), walls, rooms, objects: [object], detectors: [detectorAt(at)] };
      return { plan: { ...emptyPlan(), levels: [level] }, detector: level.detectors[0] as Detector };
    };

    it('stays on it where there is room', () => {
      // Rim 149 from the west wall (12 in, 304.8 needed); the desk goes on to x = 1300.
      const { plan, detector } = planWith(desk([700, 3000], 1200), [200, 3000]);
      const ways = waysOf(plan, detector);
      expect(ways.map(({ words }) => words)).toEqual([
        'Move it 7 in toward the east wall, on the desk',
        'Move it 8 in toward the east wall, on the desk, with tape to spare',
      ]);
      expect(ways.map(({ leadsTo }) => leadsTo)).toEqual(['tight', 'clear']);
    });

    it('is told that nothing carries it where the desk is too small', () => {
      const { plan, detector } = planWith(desk([200, 3000], 300), [200, 3000]);
      const ways = waysOf(plan, detector);
      expect(ways[0]?.words).toBe('Move it 6 1/4 in toward the east wall, where nothing carries it');
      expect(ways.map(({ leadsTo }) => leadsTo)).toEqual(['tight', 'clear']);
    });
  });

  it('done to the letter leads to clear or tight, wherever one stands', () => {
    const at = fc.tuple(fc.integer({ min: 60, max: 10_300 }), fc.integer({ min: 60, max: 7250 }));
    fc.assert(
      fc.property(at, fc.constantFrom(762, 400, 1900), ([x, y], base) => {
        const ways = waysOf(cellar, { ...c1, at: [x, y], base, pair: null });
        for (const { kind, leadsTo } of ways) if (kind === 'move') expect(['tight', 'clear']).toContain(leadsTo);
      }),
      { numRuns: 60 },
    );
  });

  it('offers to cover the window whose sun is too near', () => {
    const at = [2500, 2200] as const;
    const rooms: Level['rooms'] = [{ id: 'r', name: '', use: 'den', at: [3000, 3000] }];
    const detector = { ...a1, at, pair: null };
    const plan = houseOf({ more: { rooms, detectors: [detector] } });
    const ways = waysOf(plan, detector);
    const cover = ways.find(({ kind }) => kind === 'cover');
    expect(cover).toMatchObject({ words: 'Keep the window covered during the test', ids: ['glass'] });
  });

  it('offers nothing to one that is clear', () => {
    expect(waysOf(basement, a1)).toEqual([]);
  });

  it('offers nothing where no spot on the level helps', () => {
    const cramped: Plan = {
      ...basement,
      protocol: { profile: 'home-short-term', overrides: [{ rule: 'outside-wall', distance: 20_000, note: '' }] },
    };
    expect(waysOf(cramped, { ...a1, pair: null })).toEqual([]);
  });
});
