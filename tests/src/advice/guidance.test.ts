import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Detector, Level, Plan, RoomLabel, Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import type { Hint } from '../../../src/advice/guidance/hint.ts';
import type { Stage } from '../../../src/advice/guidance.ts';
import { guidance, nextStep, stillToDo } from '../../../src/advice/guidance.ts';
import { CONDITION_ITEMS } from '../../../src/protocol/conditions/conditions-report.ts';
import { withLook } from '../../../src/protocol/conditions/edit-conditions.ts';
import { withLogEntry } from '../../../src/protocol/custody/log-entries.ts';
import { checkedLevels } from '../../../src/state/selectors.ts';
import { testStateOf } from '../../../src/state/test-state.ts';
import { EVERYTHING, GOOD_VISIT, houseLevel, validTestPlan } from '../../helpers/valid-test-plan.ts';

/** A forecast from before the start of `GOOD_VISIT`, with nothing against the test. */
const CALM = { at: '2026-03-07T08:00:00-05:00', source: 'weather service', sustained: 10, storm: false, note: '' };

const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 200, side: 'auto' });
const SQUARE: readonly Wall[] = [
  wall('w1', [0, 0], [8000, 0]),
  wall('w2', [8000, 0], [8000, 6000]),
  wall('w3', [8000, 6000], [0, 6000]),
  wall('w4', [0, 6000], [0, 0]),
];
const DEN: RoomLabel = { id: 'r1', name: 'Den', use: 'den', at: [4000, 3000] };
const detector = (id: string, label: string, pair: string | null, at: XY): Detector => ({
  id,
  label,
  at,
  base: 762,
  radius: 50.8,
  tall: 25.4,
  pair,
  support: 'stand',
});

function hintsOf(stage: Stage, level: Level, part: Partial<Plan> = {}, reports?: readonly DetectorReport[]) {
  const plan: Plan = { ...emptyPlan(), levels: [level], ...part };
  const model = buildLevel(level);
  const evaluated = reports ?? level.detectors.map((each) => checkDetector(plan, model, each));
  const state = guidance(plan, [{ model, reports: evaluated }], testStateOf(plan), level.id).find(
    (each) => each.stage === stage,
  );
  if (!state) throw new Error(`no stage ${stage}`);
  return state;
}
const texts = (hints: readonly Hint[]) => hints.map(({ text }) => text);
const missing = (hints: readonly Hint[]) => texts(hints.filter((hint) => hint.missing));

describe('the thickness of walls that nobody has measured', () => {
  const square = (open: number): Level => ({
    ...emptyLevel('L1'),
    walls: SQUARE.map((each, i) => (i < open ? { ...each, thicknessAnswered: false } : each)),
    rooms: [DEN],
    lookedFor: EVERYTHING,
  });

  it('is among what is to be measured, and leads to the first of them', () => {
    const { hints } = hintsOf('draw', square(4));
    expect(texts(hints)).toContain('The thickness of 4 walls is not measured. Assumed: 7 7/8 in.');
    expect(hints.find(({ text }) => text.startsWith('The thickness'))).toMatchObject({
      missing: false,
      action: { kind: 'show', label: 'Enter it', ids: ['w1'] },
    });
    expect(texts(hintsOf('draw', square(1)).hints)).toContain(
      'The thickness of 1 wall is not measured. Assumed: 7 7/8 in.',
    );
    expect(texts(hintsOf('draw', square(0)).hints).join(' ')).not.toContain('thickness');
  });

  it('waits for a room', () => {
    const open = { ...square(4), walls: square(4).walls.slice(1) };
    expect(texts(hintsOf('draw', open).hints).join(' ')).not.toContain('thickness');
  });
});

describe('an empty sheet', () => {
  const level = emptyLevel('L1');

  it('asks for the outline first, and offers the tool', () => {
    const { hints, done } = hintsOf('draw', level);
    expect(texts(hints)).toEqual(['Nothing is drawn on this level yet. Start with the outline.']);
    expect(hints[0]?.action).toMatchObject({ kind: 'tool', tool: { kind: 'room-box' } });
    expect(done).toBe('');
  });

  it('asks for a room before a detector', () => {
    expect(texts(hintsOf('place', level).hints)).toEqual(['Close a room first, then place a detector in it.']);
  });
});

describe('while it is drawn', () => {
  it('says how far two ends stop short, before anything else', () => {
    const open = [...SQUARE.slice(0, 3), wall('w4', [0, 6000], [0, 300])];
    const { hints } = hintsOf('draw', { ...emptyLevel('L1'), walls: open });
    expect(hints[0]?.text).toContain('so the room stays open');
    expect(hints[0]?.text).toMatch(/\d/); // with the length of the gap
    expect(hints[0]?.missing).toBe(true);
  });

  it('asks what a closed room is used for, and offers to name that very room', () => {
    const { hints, done } = hintsOf('draw', { ...emptyLevel('L1'), walls: SQUARE });
    expect(missing(hints)[0]).toBe(
      'A room has no use yet. Enter what it is used for: until then nothing in it can turn clear.',
    );
    const action = hints[0]?.action;
    if (action?.kind !== 'name-room') throw new Error('the hint offers no name');
    expect(action.at[0]).toBeGreaterThan(0);
    expect(action.at[0]).toBeLessThan(8000);
    expect(done).toBe('1 room.');
  });

  it('asks what was looked for, one press to each question of the walk round, until all of it is drawn or answered', () => {
    const named: Level = { ...emptyLevel('L1'), walls: SQUARE, rooms: [DEN] };
    const { hints } = hintsOf('draw', named);
    const says = (names: string) => `Not looked for yet: ${names}. Add what is there, or answer "none here".`;
    expect(missing(hints)).toEqual(
      ['exterior doors and windows', 'moving air', 'heat', 'sump pit and floor drain'].map(says),
    );
    expect(hints[3]?.action).toEqual({
      kind: 'question',
      label: 'Answer it',
      levelId: 'L1',
      question: 'wet',
      rule: 'sump',
    });
    expect(missing(hintsOf('draw', { ...named, lookedFor: EVERYTHING }).hints)).toEqual([]);
    const half = { ...named, lookedFor: EVERYTHING.filter((rule) => rule !== 'floor-drain') };
    expect(missing(hintsOf('draw', half).hints)).toEqual([says('floor drain')]);
  });

  it('is not done while one of its questions is not looked for, direct sun too', () => {
    const named: Level = { ...emptyLevel('L1'), living: 'lived-in', walls: SQUARE, rooms: [DEN] };
    const answered = (rules: readonly string[]) => hintsOf('draw', { ...named, lookedFor: rules });
    expect(answered(EVERYTHING).whole).toBe(true);
    const sunless = answered(EVERYTHING.filter((rule) => rule !== 'direct-sun'));
    expect(missing(sunless.hints)).toEqual([]); // it waits for a spot
    expect(sunless.whole).toBe(false);
  });
});

describe('the times', () => {
  const kit = emptyPlan().kit;

  it('asks for the hours of the kit, not for a pick-up that is recorded', () => {
    const level = houseLevel();
    const open = hintsOf('time', level, { visit: GOOD_VISIT, kit: { ...kit, hoursAnswered: false } });
    expect(missing(open.hints)).toEqual(['How long the kit may be exposed is not entered.']);
    const entered = hintsOf('time', level, { visit: GOOD_VISIT, kit: { ...kit, hoursAnswered: true } });
    expect(missing(entered.hints)).toEqual([]);
  });
});

describe('detectors', () => {
  const level: Level = {
    ...emptyLevel('L1'),
    walls: SQUARE,
    rooms: [{ id: 'r1', name: 'Den', use: 'den', at: [4000, 3000] }],
  };

  it('names each that is blocked, blocked before unknown', () => {
    const two = {
      ...level,
      detectors: [detector('d1', 'A1', null, [4000, 3000]), detector('d2', 'A2', null, [150, 150])],
    };
    const { hints, done } = hintsOf('place', two);
    expect(missing(hints)).toEqual([expect.stringMatching(/^A2 is blocked\. .+ exterior wall, needs 1 ft\.$/)]);
    expect(done).toBe('A1 clear of what is drawn, A2 blocked.');
    expect(texts(hintsOf('sheet', two).hints)).toEqual(['A2 is blocked. The plan sheet will state it.']);
  });

  it('misses the companion of a pair, and remarks on more than two', () => {
    const one = { ...level, detectors: [detector('d1', 'A1', 'A', [4000, 3000])] };
    expect(missing(hintsOf('place', one).hints)).toContain('A1 is marked as pair A, and its companion is missing.');
    const three = {
      ...level,
      detectors: ['A1', 'A2', 'A3'].map((label, i) => detector(`d${i}`, label, 'A', [3000 + 200 * i, 3000])),
    };
    // More than two may be set side by side on request: their checks say whether they stand so.
    const remark = 'Pair A has 3 detectors: A1, A2 and A3. Right where all of them stand side by side.';
    expect(texts(hintsOf('place', three).hints)).toContain(remark);
    expect(missing(hintsOf('place', three).hints)).not.toContain(remark);
  });

  it('tells two detectors with one label apart, and one with none', () => {
    const twice = {
      ...level,
      detectors: [detector('d1', 'A1', null, [3000, 3000]), detector('d2', 'A1', null, [5000, 3000])],
    };
    expect(missing(hintsOf('place', twice).hints)).toEqual(['Two detectors are labeled A1. Give each its own.']);
    const none = { ...level, detectors: [detector('d1', ' ', null, [3000, 3000])] };
    expect(missing(hintsOf('place', none).hints)).toEqual(['A detector has no label. The lab needs one.']);
  });
});

describe('the results', () => {
  const [first] = houseLevel().detectors;
  const level = houseLevel('L1', 'A', { detectors: first ? [{ ...first, id: 'd1', pair: null }] : [] });
  const visit = {
    closedSince: '2026-05-01T08:00:00Z',
    mitigationOnSince: null,
    start: '2026-05-02T08:00:00Z',
    end: '2026-05-04T08:00:00Z',
  };
  const conditions = CONDITION_ITEMS.map(({ id }) => ({ item: id, state: 'kept' as const, at: null, note: '' }));
  const readings = [{ detector: 'd1', value: 1, unit: 'pCi/L' as const }];
  const kept = { visit: { ...visit, mitigationOnSince: '2026-04-01T08:00:00Z' }, conditions };

  it('are not asked for before the detectors are picked up, and missing after that', () => {
    expect(hintsOf('read', level).hints).toEqual([]);
    expect(missing(hintsOf('read', level, { visit }).hints)).toEqual(['No result is entered yet.']);
  });

  it('name the next step where the test holds', () => {
    const { hints } = hintsOf('read', level, { ...kept, readings });
    expect(texts(hints)).toEqual([expect.stringMatching(/^A1: In this test the system kept the home below 4/)]);
    expect(missing(hints)).toEqual([]);
  });

  it('of a second place are missing while only the first has one', () => {
    const second = { ...detector('d2', 'B1', null, [2000, 3000]), support: 'stand' as const };
    const two = { ...level, detectors: [...level.detectors, second] };
    expect(missing(hintsOf('read', two, { ...kept, readings }).hints)).toEqual([
      expect.stringContaining('B1 has no result yet.'),
    ]);
  });

  it('name no step while it is not known to hold, and lead to what is missing', () => {
    const { hints } = hintsOf('read', level, { ...kept, conditions: [], readings });
    expect(missing(hints)).toEqual([expect.stringContaining('no result of it passes')]);
    expect(hints[0]?.action).toMatchObject({ kind: 'stage', stage: 'house' });
    const late = { ...kept.visit, end: '2026-05-04T07:59:00Z' };
    const broken = hintsOf('read', level, { ...kept, visit: late, readings }).hints;
    expect(missing(broken)).toEqual([expect.stringContaining('invalid')]);
    expect(broken[0]?.action).toMatchObject({ kind: 'stage', stage: 'time' });
  });
});

describe('what is not over yet', () => {
  const level = houseLevel();
  const [first] = level.detectors;
  const one = { ...level, detectors: first ? [{ ...first, pair: null }] : [] };
  const visit = { ...GOOD_VISIT, end: null };
  const stageOf = (change: Partial<Plan>, now: string) => {
    const plan = { ...validTestPlan([]), ...change, levels: [one] };
    const stages = guidance(plan, checkedLevels(plan), testStateOf(plan), 'L1', Date.parse(now));
    return stages.find(({ stage }) => stage === 'time');
  };

  it('is not finished: a pick-up that is planned, or recorded ahead of now', () => {
    const before = '2026-03-09T12:00:00-04:00';
    const planned = stageOf({ visit: { ...visit, plannedEnd: GOOD_VISIT.end } }, before);
    expect(planned).toMatchObject({ done: 'Pick-up planned, not picked up yet.', whole: false });
    expect(stageOf({ visit: GOOD_VISIT }, before)?.whole).toBe(false);
    const after = '2026-03-10T12:00:00-04:00';
    expect(stageOf({ visit: { ...GOOD_VISIT, forecast: CALM } }, after)?.whole).toBe(true);
    // A short test without a forecast from before the start: valid, and not done.
    const bare = stageOf({ visit: GOOD_VISIT }, after);
    expect(bare?.whole).toBe(false);
    expect(bare?.hints).toMatchObject([
      { text: 'No weather forecast from before the start is recorded.', missing: false },
    ]);
  });

  it('is not placed while the start lies ahead and no detector is recorded as placed', () => {
    const closing = '2026-03-06T12:00:00-05:00';
    expect(stageOf({ visit }, closing)).toMatchObject({
      done: 'Placement planned for Sat, Mar 7, 6:00 pm.',
      whole: false,
    });
    const placed = { detector: 'L1d1', serial: '', placed: true, placedBy: '', fetchedBy: '', sealed: null } as const;
    const log = [{ ...placed, tampering: 'unknown', note: '', photos: [], custody: [] } as const];
    expect(stageOf({ visit, log }, closing)?.done).toBe('Placed, not picked up yet.');
    expect(stageOf({ visit }, '2026-03-07T18:00:00-05:00')?.done).toBe('Placed, not picked up yet.');
  });

  it('is missing once it is overdue, by the plan or by the kit', () => {
    const planned = stageOf({ visit: { ...visit, plannedEnd: GOOD_VISIT.end } }, '2026-03-10T09:01:00-04:00');
    expect(missing(planned?.hints ?? [])).toEqual([expect.stringMatching(/^Overdue: pick-up Tue, Mar 10, 9:00 am/)]);
    const late = stageOf({ visit }, '2026-03-11T19:01:00-04:00');
    expect(missing(late?.hints ?? [])).toEqual([expect.stringMatching(/^Overdue: past its window/)]);
  });
});

describe('the site', () => {
  it('is never quiet about a loosened rule', () => {
    const loosened = { profile: 'home-short-term', overrides: [{ rule: 'sump', distance: 1000, note: 'agreed' }] };
    const { hints } = hintsOf('site', emptyLevel('L1'), { title: 'Here', protocol: loosened });
    expect(texts(hints)).toEqual(['Looser than published: sump pit. Every plan sheet states it.']);
  });

  it('says nothing of a tightened one', () => {
    const tightened = { profile: 'home-short-term', overrides: [{ rule: 'sump', distance: 3048, note: '' }] };
    expect(hintsOf('site', emptyLevel('L1'), { title: 'Here', protocol: tightened }).hints).toEqual([]);
  });
});

describe('a house of several levels', () => {
  const den: Level = {
    ...emptyLevel('L1'),
    name: 'Basement',
    walls: SQUARE,
    rooms: [{ id: 'r1', name: 'Den', use: 'den', at: [4000, 3000] }],
  };
  const main: Level = { ...emptyLevel('L2'), name: 'Main floor', order: 1, ground: 'none' };
  /** What is still to do with `inView` in view, the most important first. */
  const toDo = (levels: readonly Level[], inView: string, part: Partial<Plan> = {}) => {
    const plan: Plan = { ...emptyPlan(), title: 'Here', levels, ...part };
    const evaluated = [...levels]
      .sort((a, b) => a.order - b.order)
      .map((level) => {
        const model = buildLevel(level);
        return { model, reports: level.detectors.map((each) => checkDetector(plan, model, each)) };
      });
    return stillToDo(guidance(plan, evaluated, testStateOf(plan), inView));
  };

  it('asks for the level to test first, by its name, whichever is in view', () => {
    const bare = { ...den, walls: [], rooms: [] };
    const [first] = toDo([bare, { ...main, walls: SQUARE.map((each) => ({ ...each, id: `m${each.id}` })) }], 'L2');
    expect(first?.text).toBe(
      'Basement: This is a level to test, and nothing is drawn on it yet. Start with the outline.',
    );
    expect(first?.action).toMatchObject({ kind: 'tool', levelId: 'L1' });
  });

  it('says that none is lived in before all else', () => {
    const [first] = toDo(
      [
        { ...den, living: 'no' },
        { ...main, living: 'no' },
      ],
      'L1',
    );
    expect(first?.text).toBe('No level is noted as lived in, so none is to be tested. Select the one that is.');
    expect(first?.action).toMatchObject({ kind: 'level', levelId: 'L1' });
    expect(first?.missing).toBe(true);
  });

  it('asks for a detector where the test belongs, not on the level in view', () => {
    const missed = missing(toDo([den, main], 'L2'));
    expect(missed).toContain('Basement: No detector is placed on this level yet.');
    // A bare upper floor keeps nobody from the test.
    expect(missed.filter((text) => text.startsWith('Nothing is drawn'))).toEqual([]);
  });

  it('brings what is blocked on another level to the fore, with its level', () => {
    const wrong = { ...main, detectors: [detector('d9', 'B1', null, [4000, 3000])] };
    const right = { ...den, detectors: [detector('d1', 'A1', null, [4000, 3000])] };
    const hint = toDo([right, wrong], 'L1').find(({ text }) => text.includes('B1 is blocked'));
    expect(hint?.text).toMatch(/^Main floor: B1 is blocked\. [A-Z].+\.$/);
    expect(hint?.action).toEqual({ kind: 'show', label: 'Show it', levelId: 'L2', ids: ['d9'], at: null });
  });

  it('finds one label on two levels: the laboratory does not know the levels', () => {
    const below = { ...den, detectors: [detector('d1', 'A1', null, [4000, 3000])] };
    const above = { ...main, detectors: [detector('d2', 'A1', null, [4000, 3000])] };
    expect(missing(toDo([below, above], 'L1'))).toContain(
      'Main floor: Two detectors are labeled A1. Give each its own.',
    );
  });

  it('remarks on a lowest level that does not touch the soil', () => {
    const hint = toDo([main], 'L2').find(({ text }) => text.includes('not touching the soil'));
    expect([hint?.missing, hint?.action?.kind]).toEqual([false, 'level']);
  });

  it('has missing things before remarks, and each by its weight', () => {
    const all = toDo([{ ...den, rooms: [] }, main], 'L1', { title: '' });
    const order = all.map((hint) => [hint.missing ? 0 : 1, hint.weight] as const);
    expect(order).toEqual([...order].sort(([a, x], [b, y]) => a - b || x - y));
    expect(all.at(-1)?.text).toBe('The plan has no title yet.');
    expect(all[0]?.text).toContain('A room has no use yet');
  });

  it('says what was not run, for which detectors, and where to mend it', () => {
    const lit: Level = {
      ...den,
      openings: [{ id: 'o1', wall: 'w1', kind: 'window', offset: 500, width: 900, bottom: 900, top: 2000 }],
      detectors: [detector('d1', 'A1', null, [4000, 4000]), detector('d2', 'A2', null, [6000, 4000])],
    };
    const all = toDo([lit], 'L1');
    const place = all.find(({ action }) => action?.kind === 'field' && action.field === 'latitude');
    expect(place?.text).toBe('Direct sun is not worked out for A1 and A2: the location of the house is not entered.');
    expect(place?.missing).toBe(true);
    const sun = all.find(({ action }) => action?.kind === 'question' && action.question === 'sun');
    expect(sun?.text).toBe(
      'Direct sun is not run for A1 and A2. The location of the house and the times of the test are not given. Keep out of direct sun.',
    );
    // The times are known at the pick-up at the latest: until then it is still to come.
    expect(sun?.missing).toBe(false);
    const vouched = toDo([{ ...lit, lookedFor: ['direct-sun'] }], 'L1');
    expect(vouched.filter(({ text }) => text.startsWith('Direct sun'))).toEqual([]);
  });

  it('asks for north where light may come in, and for nothing that is entered', () => {
    const lit = (kind: 'window' | 'door'): Level => ({
      ...den,
      openings: [{ id: 'o1', wall: 'w1', kind, offset: 500, width: 900, bottom: 0, top: 2000 }],
      detectors: [detector('d1', 'A1', null, [4000, 4000])],
    });
    const site = { ...emptyPlan().site, latitude: 41, longitude: -75, northAnswered: false };
    const fields = (level: Level, more: Partial<Plan['site']> = {}) =>
      toDo([level], 'L1', { site: { ...site, ...more } }).flatMap(({ action, text }) =>
        action?.kind === 'field' && ['north', 'latitude'].includes(action.field) ? [[action.field, text]] : [],
      );
    const north = ['north', 'Direct sun is not worked out for A1: north is not entered.'];
    expect(fields(lit('window'))).toEqual([north]);
    expect(fields(lit('window'), { latitude: null }).map(([field]) => field)).toEqual(['latitude', 'north']);
    expect(fields(lit('door'))).toEqual([]);
    expect(fields(lit('window'), { northAnswered: true })).toEqual([]);
    expect(fields({ ...lit('window'), lookedFor: ['direct-sun'] })).toEqual([]);
  });

  it('asks what carries a detector, once for all of which nobody said it', () => {
    const bare = ['A1', 'A2'].map((label, i) => ({
      ...detector(`d${i}`, label, null, [3000 + 2000 * i, 3000]),
      support: null,
    }));
    const hints = toDo([{ ...den, detectors: bare }], 'L1').filter(({ action }) => action?.kind === 'support');
    expect(texts(hints)).toEqual([expect.stringMatching(/ is not run for A1 and A2\. Nothing drawn carries it/)]);
    expect(hints[0]?.action).toMatchObject({ levelId: 'L1', detectorId: 'd0' });
  });
});

describe('what is asked, not assumed', () => {
  const level: Level = { ...emptyLevel('L1'), walls: SQUARE, rooms: [DEN], livingAnswered: false };
  const site = { ...emptyPlan().site, purposeAnswered: false };

  it('leaves the site open until purpose and living are answered', () => {
    const { done, whole, hints } = hintsOf('site', level, { site });
    expect([done, whole]).toEqual(['', false]);
    expect(missing(hints)).toEqual([
      'Why the house is tested is not answered yet.',
      'Whether people live on Basement is not answered yet.',
    ]);
    expect(hints.map(({ action }) => action?.kind)).toContain('living');
    const { livingAnswered: _, ...answered } = level;
    expect(hintsOf('site', answered).whole).toBe(true);
  });
});

describe('nothing is missing', () => {
  const stages = (plan: Plan) => {
    const evaluated = plan.levels.map((level) => {
      const model = buildLevel(level);
      return { model, reports: level.detectors.map((each) => checkDetector(plan, model, each)) };
    });
    return guidance(plan, evaluated, testStateOf(plan), 'L1');
  };
  const written = {
    placedBy: 'R. Alder',
    fetchedBy: 'R. Alder',
    sealed: '2026-03-10T09:05:00-04:00',
    tampering: 'none' as const,
  };
  const posted = { ...validTestPlan().visit, posted: '2026-03-10T12:00:00-04:00', forecast: CALM };
  const signed = validTestPlan([1, 1.1], { title: 'Alder Court', visit: posted });
  const whole = ['L1d1', 'L1d2'].reduce(
    (plan, id, i) => withLogEntry(plan, id, { ...written, serial: `K-${i + 1}` }),
    withLook(signed, { by: 'R. Alder', at: GOOD_VISIT.end }),
  );

  it('is said of a plan of which nothing is', () => {
    expect(nextStep(stages(whole))).toEqual({ says: 'Nothing is missing for the verdict.', action: null });
  });

  it.each<[string, (plan: Plan) => Plan]>([
    [
      'a thing was not looked for',
      (plan) => withLevel(plan, { lookedFor: EVERYTHING.filter((rule) => rule !== 'heat') }),
    ],
    [
      'the sun was not run',
      (plan) => withLevel(plan, { lookedFor: EVERYTHING.filter((rule) => rule !== 'direct-sun'), openings: [WINDOW] }),
    ],
    [
      'nothing carries a detector',
      (plan) =>
        withLevel(plan, { detectors: plan.levels[0]?.detectors.map((each) => ({ ...each, support: null })) ?? [] }),
    ],
    ['nobody answered who lives there', (plan) => withLevel(plan, { livingAnswered: false })],
    ['nobody answered why', (plan) => ({ ...plan, site: { ...plan.site, purposeAnswered: false } })],
    ['the end is not recorded', (plan) => ({ ...plan, readings: [], visit: { ...plan.visit, end: null } })],
    [
      'nothing of the visit is recorded',
      (plan) => ({ ...plan, readings: [], visit: { ...plan.visit, start: null, end: null } }),
    ],
    [
      'an answer about the house has no observer',
      (plan) => ({ ...plan, conditions: plan.conditions.map((each) => ({ ...each, by: '' })) }),
    ],
    ['a condition of the house is not known', (plan) => ({ ...plan, conditions: plan.conditions.slice(1) })],
    ['the log has a gap', (plan) => ({ ...plan, log: [] })],
    ['no result is entered', (plan) => ({ ...plan, readings: [] })],
  ])('is not said while %s', (_, change) => {
    expect(nextStep(stages(change(whole))).says).toMatch(/^(Next|Still to come): /);
  });
});

const WINDOW = { id: 'o1', wall: 'L1w1', kind: 'window', offset: 500, width: 900, bottom: 900, top: 2000 } as const;
const withLevel = (plan: Plan, change: Partial<Level>): Plan => ({
  ...plan,
  levels: plan.levels.map((level) => ({ ...level, ...change })),
});
