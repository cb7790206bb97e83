import { describe, expect, it } from 'vitest';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { guidance } from '../../../src/advice/guidance.ts';
import { CONDITION_ITEMS } from '../../../src/protocol/conditions/conditions-report.ts';
import { checkedLevels } from '../../../src/state/selectors.ts';
import { testStateOf } from '../../../src/state/test-state.ts';
import { EVERYTHING, GOOD_VISIT, houseLevel, validTestPlan } from '../../helpers/valid-test-plan.ts';
import { DEN, detector, hintsOf, missing, SQUARE, texts, wall } from './guidance-hints.ts';

/** A forecast from before the start of `GOOD_VISIT`, with nothing against the test. */
const CALM = { at: '2026-03-07T08:00:00-05:00', source: 'weather service', sustained: 10, storm: false, note: '' };

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
