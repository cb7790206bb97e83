import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkedLevelEdit,
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
  withNewLevel,
  withoutItems,
  withoutLevel,
  withPlan,
  withSite,
  withWallEnds,
} from '../../../geometry/edit/index.ts';
import type { Detector, Fixture, Level, Opening, Plan, PlanObject, Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { planFile } from '../planfile/plans.ts';

/** Mutation of an input throws. */
function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) for (const each of Object.values(Object.freeze(value))) frozen(each);
  return value;
}
function done(result: EditResult | { readonly ok: true; readonly plan: Plan }): Plan {
  if (!result.ok) throw new Error(result.reason);
  return result.plan;
}
const reasonOf = (result: EditResult) => (result.ok ? 'done' : result.reason);
function levelOf(plan: Plan): Level {
  const [level] = plan.levels;
  if (!level) throw new Error('no level');
  return level;
}

const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 100, side: 'auto' });
const window: Opening = { id: 'o1', wall: 'w1', kind: 'window', offset: 1000, width: 914.4, bottom: 1200, top: 2000 };
const detector: Detector = { id: 'd1', label: 'A1', at: [2000, 1500], base: 762, radius: 50.8, tall: 25.4, pair: null };
const desk: PlanObject = {
  id: 't1',
  name: 'Desk',
  shape: { box: { center: [1000, 1000], width: 1200, depth: 600, turn: 0 } },
  bottom: 0,
  top: 762,
}; // prettier-ignore
const fan: Fixture = {
  id: 'f1',
  kind: 'portable-fan',
  name: '',
  shape: { circle: { center: [500, 500], radius: 200 } },
  bottom: 0,
  top: 900,
  stream: { direction: 350, spread: 30, reach: 1500 },
}; // prettier-ignore
/** A room of 4 m by 3 m (w1 top, w2 right, w3 bottom, w4 left), and a partition w5 from the middle of the top to that of the bottom. */
const plan: Plan = frozen({
  ...emptyPlan(),
  levels: [
    {
      ...emptyLevel('L1'),
      walls: [
        wall('w1', [0, 0], [4000, 0]),
        wall('w2', [4000, 0], [4000, 3000]),
        wall('w3', [4000, 3000], [0, 3000]),
        wall('w4', [0, 3000], [0, 0]),
        wall('w5', [2000, 0], [2000, 3000]),
      ],
      openings: [window, { ...window, id: 'o2', wall: 'w4' }],
      rooms: [{ id: 'r1', name: 'Den', use: 'den', at: [500, 500] }],
      fixtures: [fan],
      objects: [desk],
      detectors: [
        detector,
        { ...detector, id: 'd2', label: 'A2', pair: 'A' },
        { ...detector, id: 'd3', label: 'A3', pair: 'A' },
      ],
    },
  ],
  readings: [
    { detector: 'd1', value: 3, unit: 'pCi/L' },
    { detector: 'd2', value: 4, unit: 'pCi/L' },
  ],
} as const);
const level = levelOf(plan);
const wallOf = (edited: Plan, id: string) => levelOf(edited).walls.find((each) => each.id === id);
const openingOf = (edited: Plan, id: string) => levelOf(edited).openings.find((each) => each.id === id);

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
    ]); // prettier-ignore
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
      }), // prettier-ignore
      'The object has an outline that touches itself: side 1–2 meets side 3–4. Move a corner away.',
    ],
    [
      'a number that cannot be',
      withItem(plan, 'L1', 'fixture', { ...fan, shape: { circle: { center: [0, 0], radius: -1 } } }),
      'The portable fan: "shape.circle.radius" is -1, needs a number of mm, 0 to 10000000.',
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
      'The wall: "thickness" is -1, needs a number of mm, 0 to 10000000.',
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

describe('movedItems(plan, levelId, ids, dx, dy)', () => {
  it('moves whole things, and nothing else', () => {
    const edited = done(movedItems(plan, 'L1', ['t1', 'd1', 'r1'], 10, -20));
    expect(levelOf(edited).objects[0]?.shape).toEqual({
      box: { center: [1010, 980], width: 1200, depth: 600, turn: 0 },
    });
    expect(levelOf(edited).detectors[0]?.at).toEqual([2010, 1480]);
    expect(levelOf(edited).rooms[0]?.at).toEqual([510, 480]);
    expect(levelOf(edited).walls).toBe(level.walls);
    expect(levelOf(edited).fixtures).toBe(level.fixtures);
    expect(levelOf(edited).openings).toBe(level.openings);
  });

  it('keeps a room closed: ends that meet a moved wall come along, and so does a partition that butts against it', () => {
    const edited = done(movedItems(plan, 'L1', ['w1'], 0, -500));
    expect(wallOf(edited, 'w1')).toMatchObject({ from: [0, -500], to: [4000, -500] });
    expect(wallOf(edited, 'w2')).toMatchObject({ from: [4000, -500], to: [4000, 3000] });
    expect(wallOf(edited, 'w4')).toMatchObject({ from: [0, 3000], to: [0, -500] });
    expect(wallOf(edited, 'w5')).toMatchObject({ from: [2000, -500], to: [2000, 3000] });
    expect(wallOf(edited, 'w3')).toBe(level.walls[2]);
  });

  it('leaves openings where they are: at their place on the wall that moves, at their place on the page in one that is stretched', () => {
    const edited = done(movedItems(plan, 'L1', ['w3'], 0, 500)); // the start of w4 goes down by 500
    expect(openingOf(edited, 'o1')?.offset).toBe(1000);
    expect(openingOf(edited, 'o2')?.offset).toBe(1500);
  });

  it('slides an opening along its wall, as far as the wall goes', () => {
    expect(openingOf(done(movedItems(plan, 'L1', ['o1'], 300, 999)), 'o1')?.offset).toBe(1300);
    expect(openingOf(done(movedItems(plan, 'L1', ['o1'], 1e6, 0)), 'o1')?.offset).toBe(4000 - 914.4);
    expect(openingOf(done(movedItems(plan, 'L1', ['o1'], -1e6, 0)), 'o1')?.offset).toBe(0);
    expect(openingOf(done(movedItems(plan, 'L1', ['o2'], 0, -250)), 'o2')?.offset).toBe(1250); // w4 runs up the page
  });

  it('refuses to make a wall too short for its window', () => {
    expect(reasonOf(movedItems(plan, 'L1', ['w3'], 0, -2500))).toBe(
      'The window is 3 ft wide and its wall is only 1 ft 7 5/8 in long. Shorten it or put it on a longer wall.', // 500 mm are 19.69 in
    );
  });

  it('gives the same plan back for no move', () => {
    expect(done(movedItems(plan, 'L1', ['w1'], 0, 0))).toBe(plan);
    expect(done(movedItems(plan, 'L1', [], 5, 5))).toBe(plan);
  });
});

describe('withWallEnds(plan, levelId, wallId, from, to)', () => {
  it('takes the ends that meet it along, also when one end lands where the other was', () => {
    const edited = done(withWallEnds(plan, 'L1', 'w1', [4000, 0], [8000, 0]));
    expect(wallOf(edited, 'w1')).toMatchObject({ from: [4000, 0], to: [8000, 0] });
    expect(wallOf(edited, 'w4')).toMatchObject({ to: [4000, 0] });
    expect(wallOf(edited, 'w2')).toMatchObject({ from: [8000, 0] });
    expect(wallOf(edited, 'w3')).toBe(level.walls[2]);
  });
});

describe('duplicatedItems(plan, levelId, ids, dx, dy)', () => {
  const copied = (ids: readonly string[]) => {
    const result = duplicatedItems(plan, 'L1', ids, 300, 100);
    if (!result.ok) throw new Error(result.reason);
    return result;
  };

  it('puts copies with new ids beside the originals, and leaves those where they are', () => {
    const { plan: edited, ids } = copied(['t1', 'f1', 'r1']);
    expect(ids).toEqual(['t2', 'f2', 'r2']);
    expect(levelOf(edited).objects[0]).toBe(level.objects[0]);
    expect(levelOf(edited).objects[1]).toEqual({
      ...desk,
      id: 't2',
      shape: { box: { center: [1300, 1100], width: 1200, depth: 600, turn: 0 } },
    }); // prettier-ignore
    expect(levelOf(edited).fixtures[1]?.stream).toEqual(fan.stream);
    expect(levelOf(edited).rooms[1]?.at).toEqual([800, 600]);
  });

  it('copies a wall with its openings, and drags no neighbor along', () => {
    const { plan: edited, ids } = copied(['w1']);
    expect(ids).toEqual(['w6']);
    expect(wallOf(edited, 'w6')).toMatchObject({ from: [300, 100], to: [4300, 100] });
    expect(openingOf(edited, 'o3')).toEqual({ ...window, id: 'o3', wall: 'w6' });
    expect(levelOf(edited).walls.slice(0, 5)).toEqual(level.walls);
  });

  it('sets a copy of an opening in the nearest free place of its wall', () => {
    expect(openingOf(copied(['o1']).plan, 'o3')?.offset).toBeCloseTo(1914.4, 9); // right beside the one at 1000
    const wide = done(itemPatched(plan, 'L1', 'opening', 'o1', { width: 2000 }));
    const result = duplicatedItems(wide, 'L1', ['o1'], 0, 0);
    expect(result.ok ? 'done' : result.reason).toBe('The window has no free place for a copy on its wall.');
  });

  it('makes a new pair of a pair, and a single detector of half a pair', () => {
    const pair = levelOf(copied(['d2', 'd3']).plan).detectors.slice(3);
    expect(pair.map((one) => [one.id, one.label, one.pair])).toEqual([
      ['d4', 'A4', 'B'],
      ['d5', 'A5', 'B'],
    ]); // prettier-ignore
    const [single] = levelOf(copied(['d3']).plan).detectors.slice(3);
    expect(single).toMatchObject({ id: 'd4', label: 'A4', pair: null, at: [2300, 1600] });
  });

  it('copies no reading', () => {
    expect(copied(['d1']).plan.readings).toBe(plan.readings);
  });

  it.each([
    ['', ''],
    ['Attic', 'Attic 2'],
    ['B9', 'B10'],
    ['7', '8'],
  ])('labels the copy of %j %j', (label, next) => {
    const marked = done(itemPatched(plan, 'L1', 'detector', 'd1', { label }));
    const result = duplicatedItems(marked, 'L1', ['d1'], 0, 0);
    expect(result.ok && levelOf(result.plan).detectors[3]?.label).toBe(next);
  });

  it('gives the same plan back when nothing is there to copy', () => {
    expect(copied([]).plan).toBe(plan);
  });
});

describe('turnedItem(plan, levelId, id, degrees)', () => {
  it('turns a box, and the stream of a fixture, and keeps angles below 360', () => {
    expect(levelOf(done(turnedItem(plan, 'L1', 't1', -90))).objects[0]?.shape).toMatchObject({ box: { turn: 270 } });
    expect(levelOf(done(turnedItem(plan, 'L1', 'f1', 90))).fixtures[0]).toEqual({
      ...fan,
      stream: { ...fan.stream, direction: 80 },
    });
  });

  it('turns an outline about its middle: four quarter turns bring it back to the last digit', () => {
    const points: readonly XY[] = [
      [0, 0],
      [400, 0],
      [0, 200],
    ]; // prettier-ignore
    let edited = done(withItem(plan, 'L1', 'object', { ...desk, shape: { polygon: { points } } }));
    edited = done(turnedItem(edited, 'L1', 't1', 90));
    expect(levelOf(edited).objects[0]?.shape).toEqual({
      polygon: {
        points: [
          [300, -100],
          [300, 300],
          [100, -100],
        ],
      },
    }); // prettier-ignore
    for (let i = 0; i < 3; i++) edited = done(turnedItem(edited, 'L1', 't1', 90));
    expect(levelOf(edited).objects[0]?.shape).toEqual({ polygon: { points } });
  });

  it('turns a wall about its middle with what meets its ends, its own openings in their place along it', () => {
    const edited = done(turnedItem(plan, 'L1', 'w1', 180));
    expect(wallOf(edited, 'w1')).toMatchObject({ from: [4000, 0], to: [0, 0] });
    expect(wallOf(edited, 'w2')).toMatchObject({ from: [0, 0] });
    expect(openingOf(edited, 'o1')?.offset).toBe(1000);
  });

  it.each([
    ['o1', 'The window turns with its wall. Turn the wall.'],
    ['d1', 'Detector A1 has no direction: there is nothing to turn.'],
    ['r1', 'Den has no direction: there is nothing to turn.'],
  ])('refuses %s', (id, reason) => {
    expect(reasonOf(turnedItem(plan, 'L1', id, 90))).toBe(reason);
  });
});

describe('resizedItem(plan, levelId, id, size)', () => {
  it('keeps the middle', () => {
    expect(levelOf(done(resizedItem(plan, 'L1', 't1', { width: 1500 }))).objects[0]?.shape).toEqual({
      box: { center: [1000, 1000], width: 1500, depth: 600, turn: 0 },
    });
    expect(levelOf(done(resizedItem(plan, 'L1', 'f1', { across: 500 }))).fixtures[0]?.shape).toEqual({
      circle: { center: [500, 500], radius: 250 },
    });
    const points: readonly XY[] = [
      [0, 0],
      [400, 0],
      [0, 200],
    ]; // prettier-ignore
    const outline = done(withItem(plan, 'L1', 'object', { ...desk, shape: { polygon: { points } } }));
    expect(levelOf(done(resizedItem(outline, 'L1', 't1', { width: 800 }))).objects[0]?.shape).toEqual({
      polygon: {
        points: [
          [-200, 0],
          [600, 0],
          [-200, 200],
        ],
      },
    }); // prettier-ignore
  });

  it('refuses a size below zero', () => {
    expect(reasonOf(resizedItem(plan, 'L1', 't1', { width: -1 }))).toBe(
      'Desk: "shape.box.width" is -1, needs a number of mm, 0 to 10000000.',
    );
  });
});

describe('the edits of levels and sections', () => {
  it('change a level, add one, take one away with its readings', () => {
    expect(levelOf(done(withLevel(plan, 'L1', { ceiling: 2400 })))).toEqual({ ...level, ceiling: 2400 });
    const two = done(withNewLevel(plan, emptyLevel('L2')));
    expect(two.levels.map(({ id }) => id)).toEqual(['L1', 'L2']);
    expect(two.levels[0]).toBe(level);
    expect(withoutLevel(two, 'L1')).toEqual({ ...two, levels: [emptyLevel('L2')], readings: [] });
    expect(done(checkedLevelEdit(plan, 'L1', (same) => same))).toBe(plan);
  });

  it('change the site and the sections', () => {
    expect(done(withSite(plan, { north: 15 })).site).toEqual({ ...plan.site, north: 15 });
    expect(done(withPlan(plan, { title: 'Alder Court' }))).toEqual({ ...plan, title: 'Alder Court' });
  });

  it.each<[string, EditResult, string]>([
    [
      'a ceiling on the floor',
      withLevel(plan, 'L1', { ceiling: 0 }),
      'The level: "ceiling" is 0, needs a number of mm, more than 0, at most 10000000.',
    ],
    ['two levels of one id', withNewLevel(plan, emptyLevel('L1')), 'The id "L1" belongs to something else already.'],
    [
      'a latitude',
      withSite(plan, { latitude: 95 }),
      'The site: "latitude" is 95, needs a number of degrees, -90 to 90, or null.',
    ],
    [
      'a time zone',
      withSite(plan, { timeZone: 'Nowhere' }),
      'The site has the time zone "Nowhere", which is not known here. Write one like America/New_York.',
    ],
    [
      'an end before the start',
      withPlan(plan, { visit: { ...plan.visit, start: '2026-03-07T18:00:00Z', end: '2026-03-07T17:00:00Z' } }),
      'The visit ends at 2026-03-07T17:00:00Z, not after its start at 2026-03-07T18:00:00Z. Look at both and at their offsets.',
    ],
    [
      'a looser rule without a note',
      withPlan(plan, { protocol: { ...plan.protocol, overrides: [{ rule: 'sump', distance: 1828.8, note: '' }] } }),
      'An override loosens the rule "sump" from 7 ft to 6 ft without a note. Say why in the note.',
    ],
    [
      'a profile',
      withPlan(plan, { protocol: { profile: 'moon', overrides: [] } }),
      'The protocol has the profile "moon", which this Stillspot does not know.',
    ],
    [
      'a kit',
      withPlan(plan, { kit: { ...plan.kit, minimumHours: 97 } }),
      "The kit may stay for at most 96 hours and must stay for at least 97. Look at the kit's instructions.",
    ],
    [
      'a condition at no time',
      withPlan(plan, { conditions: [{ item: 'windows-closed', state: 'kept', at: '2026-02-30T00:00:00Z', note: '' }] }),
      'A condition has "at" as "2026-02-30T00:00:00Z", which names a day that the calendar does not have.',
    ],
    [
      'a reading of no detector',
      withPlan(plan, { readings: [{ detector: 'd9', value: 1, unit: 'pCi/L' }] }),
      'A reading belongs to the detector "d9", which is not in the plan.',
    ],
    [
      'a detector lost with its reading left', // not by an edit of ours: by a function handed in
      checkedLevelEdit(plan, 'L1', (each) => ({ ...each, detectors: each.detectors.slice(1) })),
      'A reading belongs to the detector "d1", which is not in the plan.',
    ],
  ])('refuse %s', (_, result, reason) => {
    expect(reasonOf(result)).toBe(reason);
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
      { numRuns: 400 },
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
        // Through JSON by hand: the writer asserts what the reader is asked here.
        expect(checkedPlan(plan, after).ok).toBe(parsePlan(JSON.stringify(after)).ok);
      }),
      { numRuns: 500 },
    );
  });
});
