import { beforeEach, describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Plan, PlanObject, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { findPlaces } from '../../../src/platform/worker/find-places.ts';
import { type BestPlace, type PlaceQuery, searchInputs } from '../../../src/platform/worker/place-query.ts';
import { selectLevel, selectReports } from '../../../src/state/selectors.ts';
import { blockedLast, describePlace, moveToPlace, setPlace } from '../../../src/state/spots.ts';
import { useAppStore } from '../../../src/state/store.ts';
import { loop, rectangle } from '../../helpers/drawn.ts';

const PROBE = { base: 762, radius: 50.8, tall: 25.4 };
const SINGLE: PlaceQuery = { probe: PROBE, members: 1, count: 5, onFurniture: false };

/** A den 8 m square from face to face, and whatever else is given. */
function denPlan(rest: Partial<Level> = {}): Plan {
  const walls = loop('a', rectangle(-100, -100, 8200, 8200));
  const level = { ...emptyLevel('L1'), walls, rooms: [{ id: 'r', name: 'Den', use: 'den', at: [5, 5] }], ...rest };
  return { ...emptyPlan(), levels: [level as Level] };
}

const desk: PlanObject = {
  id: 't',
  name: 'Desk',
  shape: { box: { center: [1500, 1500], width: 1200, depth: 600, turn: 0 } },
  bottom: 0,
  top: 736.6,
};

const state = () => useAppStore.getState();
const steps = () => useAppStore.temporal.getState().pastStates.length;
const best = (plan: Plan, wanted: Partial<PlaceQuery> = {}) => findPlaces(plan, 'L1', { ...SINGLE, ...wanted });
const [FIRST] = best(denPlan()) as [BestPlace];

describe('seekPlaces(plan, level, wanted)', () => {
  it('finds the middle of a bare den first: half its side less the rim and 12 in', () => {
    const places = best(denPlan());
    expect(places).toHaveLength(5);
    expect(Math.abs(FIRST.margin - (4000 - 50.8 - 304.8))).toBeLessThan(1.6);
    expect(FIRST.limitedBy?.rule).toBe('outside-wall');
  });

  it('offers nothing on a level that is not the one to test, whatever its distances', () => {
    const plan = denPlan();
    const [level] = plan.levels as [Level];
    const upper = {
      ...level,
      id: 'L2',
      order: 1,
      rooms: [],
      walls: level.walls.map((w) => ({ ...w, id: `${w.id}u` })),
    };
    const both = { ...plan, levels: [level, { ...upper, rooms: [{ ...level.rooms[0], id: 'r2' }] } as Level] };
    expect(findPlaces(both, 'L1', SINGLE)).toHaveLength(5);
    expect(findPlaces(both, 'L2', SINGLE)).toEqual([]);
    expect(findPlaces(both, 'nowhere', SINGLE)).toEqual([]);
  });

  it('puts furniture first when asked, at the height of its top', () => {
    const [first] = best(denPlan({ objects: [desk] }), { onFurniture: true });
    expect(first).toMatchObject({ on: 't', base: 736.6 });
    expect(best(denPlan({ objects: [desk] }))[0]?.on).toBeNull();
  });

  it('offers no place within a washer under a list that says nothing of it', () => {
    const washer = {
      id: 'f',
      kind: 'washer',
      name: '',
      shape: { box: { center: [4000, 4000], width: 700, depth: 700, turn: 0 } },
      bottom: 0,
      top: 965.2,
      stream: null,
    } as const;
    const plan = denPlan({ fixtures: [washer] });
    const places = best({ ...plan, protocol: { profile: 'ohio-3701-69-07', overrides: [] } });
    expect(places.length).toBeGreaterThan(0);
    for (const { axes } of places) {
      const [[x, y]] = axes as [readonly [number, number]];
      expect(Math.max(Math.abs(x - 4000), Math.abs(y - 4000))).toBeGreaterThanOrEqual(350);
    }
  });

  it('finds a pair side by side', () => {
    const [pair, ...others] = best(denPlan(), { members: 2, count: 1 });
    expect(pair?.axes).toHaveLength(2);
    expect(others).toEqual([]);
  });
});

describe('seekInputs(plan, level, wanted)', () => {
  const inputs = (plan: Plan, wanted = SINGLE) => searchInputs(plan, 'L1', wanted);
  const plan = denPlan();
  const [level] = plan.levels as [Level];

  it('do not change with a detector, the title or a reading', () => {
    const detectors = [{ id: 'd1', label: '', at: [0, 0], ...PROBE, pair: null }] as Level['detectors'];
    expect(inputs({ ...plan, title: 'Other', levels: [{ ...level, detectors }] })).toEqual(inputs(plan));
  });

  it.each<[string, Plan, PlaceQuery]>([
    ['a thing', { ...plan, levels: [{ ...level, objects: [desk] }] }, SINGLE],
    ['the purpose', { ...plan, site: { ...plan.site, purpose: 'property-transfer' } }, SINGLE],
    ['another level', { ...plan, levels: [level, emptyLevel('L2')] }, SINGLE],
    ['a rule', { ...plan, protocol: { ...plan.protocol, profile: 'ohio-3701-69-07' } }, SINGLE],
    ['the height', plan, { ...SINGLE, probe: { ...PROBE, base: 800 } }],
  ])('change with %s', (_, changed, wanted) => {
    const [before, after] = [inputs(plan), inputs(changed, wanted)];
    expect(after.length === before.length && after.every((one, index) => one === before[index])).toBe(false);
  });
});

describe('describePlace(plan, model, probe, place)', () => {
  const told = (plan: Plan, place: BestPlace) => describePlace(plan, buildLevel(plan.levels[0] as Level), PROBE, place);

  it('says the room, what there is to spare and at what, and the verdict of the checker', () => {
    const words = told(denPlan(), FIRST);
    expect(words).toMatchObject({ room: 'Den', on: '', tone: 'clear-of-drawn', taken: [] });
    // 4000 − 50.8 − 304.8 = 3644.4 mm = 11 ft 11 1/2 in, less a sixteenth of doubt.
    expect(words.spare).toMatch(/^11 ft 11 (3\/8|1\/2) in to spare at the (north|east|south|west) exterior wall$/);
    expect(words.limit?.rule).toBe('outside-wall');
  });

  it('names what carries it, and how high that is where the sheet is shaded for another height', () => {
    const plan = denPlan({ objects: [desk] });
    const [on] = best(plan, { onFurniture: true }) as [BestPlace];
    expect(told(plan, on).on).toBe('on the desk, 2 ft 5 in up');
    const level = plan.levels[0] as Level;
    expect(describePlace(plan, buildLevel(level), { ...PROBE, base: 736.6 }, on).on).toBe('on the desk');
  });

  it('says where nobody has measured how high what carries it is', () => {
    const plan = denPlan({ objects: [{ ...desk, topAnswered: false }] });
    const [on] = best(plan, { onFurniture: true }) as [BestPlace];
    expect(told(plan, on).assumed).toBe('The height of the desk is not measured: 2 ft 5 in is assumed.');
    expect(told(denPlan({ objects: [desk] }), on).assumed).toBe('');
    // Beside it, and at another height, the desk carries nothing.
    expect(told(plan, FIRST).assumed).toBe('');
  });

  it('says how many of several it carries', () => {
    const level = {
      ...(denPlan({
        objects: [
          desk,
          {
            ...desk,
            id: 'u',
            name: 'Bench',
            shape: { box: { center: [1500, 2200], width: 1200, depth: 600, turn: 0 } },
          },
        ],
      }).levels[0] as Level),
    };
    const words = (axes: BestPlace['axes']) =>
      describePlace(
        { ...denPlan(), levels: [level] },
        buildLevel(level),
        { ...PROBE, base: desk.top },
        {
          ...FIRST,
          base: desk.top,
          axes,
        },
      ).on;
    expect(
      words([
        [1500, 1500],
        [1700, 1500],
      ]),
    ).toBe('on the desk');
    expect(
      words([
        [1500, 1500],
        [2300, 1500],
      ]),
    ).toBe('1 of 2 on the desk');
    expect(
      words([
        [2300, 1500],
        [1500, 1500],
      ]),
    ).toBe('1 of 2 on the desk');
    expect(
      words([
        [1500, 1700],
        [1500, 2000],
      ]),
    ).toBe('on the desk and the bench');
  });

  it('says who stands there already', () => {
    const at = FIRST.axes[0] as readonly [number, number];
    const detectors: Level['detectors'] = [{ id: 'd1', label: 'A1', at: [at[0] + 100, at[1]], ...PROBE, pair: null }];
    expect(told(denPlan({ detectors }), FIRST).taken).toEqual(['A1']);
  });

  it('says what blocks a detector there, and nothing that it would have to spare', () => {
    const at = FIRST.axes[0] as readonly [number, number];
    const detectors: Level['detectors'] = [{ id: 'd1', label: 'A1', at: [at[0] + 190, at[1]], ...PROBE, pair: null }];
    const { tone, spare } = told(denPlan({ detectors }), FIRST);
    expect(tone).toBe('blocked');
    // 190 less two radii of 50.8 is 88.4 mm, 3.48 in: down to an eighth, 3 3/8 in.
    expect(spare.replaceAll('\u00a0', ' ')).toBe('3 3/8 in from detector A1, needs 4 in.');
  });

  it('judges a spot without the detector that would move there, and names it where it stands now', () => {
    const at = FIRST.axes[0] as readonly [number, number];
    for (const off of [0, 190]) {
      const one = { id: 'd1', label: 'A1', at: [at[0] + off, at[1]] as const, ...PROBE, pair: null };
      const plan = denPlan({ detectors: [one] });
      const model = buildLevel(plan.levels[0] as Level);
      const words = describePlace(plan, model, PROBE, FIRST, [one]);
      expect(words.tone).toBe('clear-of-drawn');
      expect(words.spare).toMatch(/^11 ft 11 (3\/8|1\/2) in to spare at the/);
      expect(words.taken).toEqual(off === 0 ? ['A1'] : []);
      // Another one that stands there is in its way still.
      const other = { ...one, id: 'd2', label: 'A2' };
      const both = denPlan({ detectors: [{ ...one, at: [300, 300] }, other] });
      expect(describePlace(both, buildLevel(both.levels[0] as Level), PROBE, FIRST, [one]).tone).toBe('blocked');
    }
  });

  it('leaves a spot beside a detector that stands to the end of the list, and the others in their order', () => {
    const plan = denPlan({ detectors: [{ id: 'd1', label: 'A1', at: FIRST.axes[0] as XY, ...PROBE, pair: null }] });
    const model = buildLevel(plan.levels[0] as Level);
    const places = best(plan).map((place) => ({ place, words: describePlace(plan, model, PROBE, place) }));
    expect(places.map(({ words }) => words.tone)).toEqual(['blocked', ...Array(4).fill('clear-of-drawn')]);
    const [first, ...others] = places;
    expect(blockedLast(places)).toEqual([...others, first]);
  });

  it('judges a place for a pair without the pair that would move there', () => {
    const [pair] = best(denPlan(), { members: 2, count: 1 }) as [BestPlace];
    const ones = pair.axes.map((at, i) => ({ id: `d${i + 1}`, label: `A${i + 1}`, at, ...PROBE, pair: 'A' }));
    const plan = denPlan({ detectors: ones });
    const model = buildLevel(plan.levels[0] as Level);
    expect(describePlace(plan, model, PROBE, pair).tone).toBe('blocked');
    const words = describePlace(plan, model, PROBE, pair, ones);
    expect(words.tone).toBe('clear-of-drawn');
    expect(words.taken).toEqual(['A1', 'A2']);
  });

  it('says so where no rule finds anything to measure', () => {
    expect(told(denPlan(), { ...FIRST, margin: Number.POSITIVE_INFINITY, limitedBy: null })).toMatchObject({
      spare: 'Nothing to keep away from',
      limit: null,
    });
  });
});

describe('setting at a place', () => {
  beforeEach(() => state().openPlan(denPlan()));

  it('sets a new detector in one step of history, selects it, and the verdict agrees', () => {
    expect(setPlace(FIRST, PROBE)).toBe('');
    const [only] = selectLevel(state()).detectors;
    expect(only).toMatchObject({ at: FIRST.axes[0], base: 762, label: 'A1', pair: null });
    expect(state().selection).toEqual([only?.id]);
    expect(selectReports(state()).map(({ verdict }) => verdict)).toEqual(['clear']);
    expect(steps()).toBe(1);
    state().undo();
    expect(selectLevel(state()).detectors).toEqual([]);
  });

  it('moves the one that stands, with its height', () => {
    const id = state().addDetector([300, 300]);
    const [detector] = selectLevel(state()).detectors;
    if (!detector) throw new Error('no detector was set');
    expect(moveToPlace([detector], { ...FIRST, base: 800 }, PROBE)).toBe('');
    expect(selectLevel(state()).detectors).toMatchObject([{ id, at: FIRST.axes[0], base: 800 }]);
    expect(steps()).toBe(2);
  });

  it('says that a detector stands there already, and makes no step of it', () => {
    setPlace(FIRST, PROBE);
    const { detectors } = selectLevel(state());
    const before = steps();
    expect(moveToPlace(detectors, FIRST, PROBE)).toBe('');
    expect(steps()).toBe(before);
    expect(state().message).toBe('A1 stands there already.');
  });

  it('sets a pair in one step under a letter of its own, each with an inch to spare', () => {
    const [pair] = best(denPlan(), { members: 2, count: 1 }) as [BestPlace];
    setPlace(pair, PROBE);
    const { detectors } = selectLevel(state());
    expect(detectors.map(({ label, pair: mark }) => [label, mark])).toEqual([
      ['A1', 'A'],
      ['A2', 'A'],
    ]);
    expect(selectReports(state()).map(({ verdict }) => verdict)).toEqual(['clear', 'clear']);
    expect(steps()).toBe(1);
    setPlace(pair, PROBE);
    expect(selectLevel(state()).detectors.map(({ pair: mark }) => mark)).toEqual(['A', 'A', 'B', 'B']);
  });
});
