import { beforeEach, describe, expect, it } from 'vitest';
import { withGround, withLiving, withNoneHere, withPurpose } from '../../../geometry/edit/index.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Fixture, Level, Opening, Plan } from '../../../geometry/plan/model.ts';
import { PROFILES } from '../../../geometry/rules/profiles.ts';
import { looksOf, questionOf, rulesOf } from '../../../src/advice/walk-round.ts';
import { withoutContradictions } from '../../../src/state/contradictions.ts';
import { selectReports } from '../../../src/state/selectors.ts';
import { useAppStore } from '../../../src/state/store.ts';
import { answerNone, signLooks, takeBackNone } from '../../../src/ui/questions/answer-none.ts';
import { EVERYTHING, houseLevel, validTestPlan } from '../../helpers/valid-test-plan.ts';

const NOON = '2026-03-07T12:00:00-05:00';
const planWith = (level: Level): Plan => ({ ...validTestPlan(), levels: [level] });
const statesOf = (level: Level) =>
  Object.fromEntries(looksOf(planWith(level), buildLevel(level), []).map(({ rule, state }) => [rule.id, state]));
const fixture = (kind: Fixture['kind']): Fixture => ({
  id: 'f1',
  kind,
  name: '',
  shape: { circle: { center: [7000, 5000], radius: 200 } },
  bottom: 0,
  top: 1000,
  stream: null,
});
const window: Opening = { id: 'o1', wall: 'L1w1', kind: 'window', offset: 500, width: 900, bottom: 900, top: 2000 };

describe('the questions and what they look for', () => {
  it('answer every rule that a profile lets "none here" answer, each by one question', () => {
    for (const profile of PROFILES) {
      for (const { id, absent } of profile.rules) expect(questionOf(id) !== null, id).toBe(absent !== null);
    }
  });

  it('ask sump and floor drain each on its own', () => {
    expect(rulesOf('wet')).toEqual(['sump', 'floor-drain']);
    expect(rulesOf('stands')).toEqual([]);
  });
});

describe('looksOf(plan, model, reports)', () => {
  it('is open where nothing is drawn and nobody answered', () => {
    const states = statesOf(houseLevel('L1', 'A', { lookedFor: [] }));
    expect(states).toEqual({
      'outside-opening': 'open',
      'moving-air': 'open',
      heat: 'open',
      sump: 'open',
      'floor-drain': 'open',
      'direct-sun': 'open',
    });
  });

  it('is answered by "none here", with who and when', () => {
    const level = houseLevel('L1', 'A', {
      lookedFor: ['heat'],
      lookedForBy: [{ rule: 'heat', by: 'R. Alder', at: NOON }],
    });
    const row = looksOf(planWith(level), buildLevel(level), []).find(({ rule }) => rule.id === 'heat');
    expect(row).toMatchObject({ state: 'none', by: 'R. Alder', at: NOON });
  });

  it.each([
    ['furnace', 'heat'],
    ['dehumidifier', 'moving-air'],
    ['sump-pit', 'sump'],
    ['floor-drain', 'floor-drain'],
  ] as const)('a %s that is drawn counts beside an answer "none here"', (kind, rule) => {
    expect(statesOf(houseLevel('L1', 'A', { fixtures: [fixture(kind)] }))[rule]).toBe('drawn');
  });

  it('takes a window in an exterior wall for an opening, and one in a partition for none', () => {
    expect(statesOf(houseLevel('L1', 'A', { openings: [window] }))['outside-opening']).toBe('drawn');
    const level = houseLevel();
    const inner = { id: 'p1', from: [3000, 0], to: [3000, 6000], thickness: 115, side: 'auto' } as const;
    const parted = { ...level, walls: [...level.walls, inner], openings: [{ ...window, wall: 'p1' }] };
    expect(statesOf(parted)['outside-opening']).toBe('none');
  });
});

describe('what is drawn against an answer', () => {
  const all = houseLevel('L1', 'A', { lookedFor: EVERYTHING });
  const drawn = (change: Partial<Level>) => withoutContradictions(planWith(all), planWith({ ...all, ...change }));

  it('takes that answer back in the same edit, and says so', () => {
    const { plan, words } = drawn({ fixtures: [fixture('sump-pit')] });
    expect(plan.levels[0]?.lookedFor).toEqual(EVERYTHING.filter((rule) => rule !== 'sump'));
    expect(words).toBe('The answer "No sump pit" is taken back: it does not fit what is drawn now.');
  });

  it('leaves all answers where nothing contradicts them', () => {
    const changed = planWith({ ...all, fixtures: [fixture('washer')] });
    expect(withoutContradictions(planWith(all), changed)).toEqual({ plan: changed, words: '' });
  });

  it('asks again about the sun at a spot that nobody vouched for, not when a detector goes', () => {
    const [first, second] = all.detectors as [(typeof all.detectors)[0], (typeof all.detectors)[0]];
    const moved = drawn({ detectors: [{ ...first, at: [2000, 3000] }, second] });
    expect(moved.plan.levels[0]?.lookedFor).not.toContain('direct-sun');
    expect(drawn({ detectors: [first] }).words).toBe('');
  });
});

describe('the word that no sun reaches the spot', () => {
  const lit: Opening = { ...window, shade: 'well' };
  const before = houseLevel('L1', 'A', {
    lookedFor: ['direct-sun'],
    openings: [lit, { ...window, id: 'o2', offset: 3000 }],
  });
  const stays = (change: Partial<Level>) =>
    withoutContradictions(planWith(before), planWith({ ...before, ...change })).plan.levels[0]?.lookedFor?.includes(
      'direct-sun',
    ) ?? false;
  const [first, ...others] = before.walls as [(typeof before.walls)[0], ...typeof before.walls];
  const open = before.openings[1] as Opening;

  it.each<[string, Partial<Level>]>([
    ['a window is new', { openings: [...before.openings, { ...window, id: 'o3', offset: 5000 }] }],
    ['a window is as large as measured now', { openings: [lit, { ...open, top: 2200 }] }],
    ['a window lies elsewhere', { openings: [lit, { ...open, offset: 3200 }] }],
    ['a window is in no well after all', { openings: [{ ...lit, shade: null }, open] }],
    ['a door has glass after all', { openings: [lit, { ...open, kind: 'door', glazed: true }] }],
    ['a wall lies elsewhere', { walls: [{ ...first, from: [0, -300] }, ...others] }],
    ['a wall is gone', { walls: others, openings: [] }],
  ])('is taken back where light could come in another way: %s', (_, change) => {
    expect(stays(change)).toBe(false);
  });

  it.each<[string, Partial<Level>]>([
    ['a window is covered', { openings: [lit, { ...open, shade: 'covered' }] }],
    ['a window is gone', { openings: [lit] }],
    ['a partition is new', { walls: [...before.walls, { ...first, id: 'p', from: [3000, 0], to: [3000, 6000] }] }],
    ['a room is named', { rooms: [] }],
  ])('stays where none more can come in: %s', (_, change) => {
    expect(stays(change)).toBe(true);
  });
});

/** How far a visit may move: common practice, no published source. */
describe('the word that no sun reaches the spot, and when and where it was given', () => {
  const SUN = ['direct-sun'] as const;
  const at = (day: string, hour = '18:00') => `2026-${day}T${hour}:00-05:00`;
  const december = { start: at('12-01'), end: at('12-03'), startPlanned: true };
  const place = { latitude: 41.2, longitude: -75.9, north: 15 };
  const planIn = (visit: Partial<Plan['visit']>, site: Partial<Plan['site']> = place, level: Partial<Level> = {}) => {
    const plan = planWith(houseLevel('L1', 'A', { lookedFor: [], ...level }));
    return { ...plan, visit: { ...plan.visit, start: null, end: null, ...visit }, site: { ...plan.site, ...site } };
  };
  /** Given in the app while these were the times and the place. */
  const given = (plan: Plan, when: string | null = null) =>
    withNoneHere(plan, 'L1', 'direct-sun', { by: 'R. Alder', at: when });
  const moved = (plan: Plan, visit: Partial<Plan['visit']>, site: Partial<Plan['site']> = {}) =>
    withoutContradictions(plan, { ...plan, visit: { ...plan.visit, ...visit }, site: { ...plan.site, ...site } });
  const stands = ({ plan }: { readonly plan: Plan }) => plan.levels[0]?.lookedFor?.includes('direct-sun') ?? false;

  it.each<[string, Partial<Plan['visit']>]>([
    ['to June', { start: at('06-01'), end: at('06-03') }],
    ['by a week', { start: at('12-08'), end: at('12-10') }],
    ['by four days back', { start: '2026-11-27T18:00:00-05:00', end: '2026-11-29T18:00:00-05:00' }],
    ['in its end alone, to a test of weeks', { end: at('12-20') }],
    ['in its planned end alone', { end: null, plannedEnd: at('12-20') }],
  ])('is taken back where the visit moves %s', (_, visit) => {
    const changed = moved(given(planIn(december)), visit);
    expect([stands(changed), changed.words]).toEqual([
      false,
      'The answer "No direct sun where a detector stands" is taken back: it was given for other days. Answer it again.',
    ]);
  });

  it.each<[string, Partial<Plan['visit']>]>([
    ['the start is recorded two hours late', { start: at('12-01', '20:00'), startPlanned: false }],
    ['the pick-up is recorded a day late', { end: at('12-04', '17:00') }],
    ['the visit is put off by two days', { start: at('12-03'), end: at('12-05') }],
    ['the test is shorter', { end: at('12-02') }],
    ['the dates are taken out', { start: null, end: null }],
  ])('stands where %s', (_, visit) => {
    expect(stands(moved(given(planIn(december)), visit))).toBe(true);
  });

  it('is taken back by many small moves, as by a large one', () => {
    let plan = given(planIn(december));
    for (const day of ['12-02', '12-03', '12-04']) {
      const changed = moved(plan, { start: at(day), end: at(`12-0${Number(day.slice(3)) + 2}`) });
      expect(stands(changed), day).toBe(true);
      plan = changed.plan;
    }
    expect(stands(moved(plan, { start: at('12-05'), end: at('12-07') }))).toBe(false);
  });

  it('is taken back by many small moves also in a file that does not say for when it was given', () => {
    let plan: Plan = planIn(december, place, { lookedFor: SUN });
    for (const day of ['12-02', '12-03', '12-04'])
      plan = moved(plan, { start: at(day), end: at(`12-0${Number(day.slice(3)) + 2}`) }).plan;
    expect(stands({ plan })).toBe(true);
    expect(stands(moved(plan, { start: at('12-05'), end: at('12-07') }))).toBe(false);
  });

  it('is taken back by dates that are taken out and entered anew', () => {
    const { plan } = moved(given(planIn(december)), { start: null, end: null });
    expect(stands(moved(plan, { start: at('06-01'), end: at('06-03') }))).toBe(false);
    expect(stands(moved(plan, { start: at('12-02'), end: at('12-04') }))).toBe(true);
  });

  it('given before there were dates, it is for a visit that begins about when somebody looked', () => {
    const plan = given(planIn({}), at('12-01', '10:00'));
    expect(stands(moved(plan, { start: at('12-01'), end: at('12-05') }))).toBe(true);
    expect(stands(moved(plan, { start: at('06-01'), end: at('06-05') }))).toBe(false);
    expect(stands(moved(given(planIn({})), { start: at('06-01'), end: at('06-05') }))).toBe(true);
  });

  it.each<[string, Partial<Plan['site']>]>([
    ['the house stands elsewhere', { latitude: 33.4, longitude: -112 }],
    ['north is another one', { north: 105 }],
    ['north is another one, past 360', { north: 352 }],
  ])('is taken back where %s', (_, site) => {
    const changed = moved(given(planIn(december)), {}, site);
    expect([stands(changed), changed.words]).toEqual([
      false,
      'The answer "No direct sun where a detector stands" is taken back: it was given for another place or north. Answer it again.',
    ]);
  });

  it.each<[string, Partial<Plan['site']>]>([
    ['the place is the exact one of the same town', { latitude: 41.25, longitude: -75.88 }],
    ['north is read again', { north: 18 }],
    ['north is told the other way round', { north: 375 }],
    ['the label is another one', { label: 'Alder Court' }],
  ])('stands where %s', (_, site) => {
    expect(stands(moved(given(planIn(december)), {}, site))).toBe(true);
  });

  it('stands where place and north become known: it was given at the spot', () => {
    const unknown = { latitude: null, longitude: null, north: 0, northAnswered: false };
    const { northAnswered: _, ...answered } = { ...unknown, ...place };
    const plan = given(planIn(december, unknown));
    const { northAnswered: __, ...site } = plan.site;
    expect(stands(withoutContradictions(plan, { ...plan, site: { ...site, ...answered } }))).toBe(true);
  });

  it('of a file is checked as before while nothing of it is changed', () => {
    const june = { start: at('06-01'), end: at('06-03') };
    const plan = { ...given(planIn(december)), visit: { ...planIn(december).visit, ...june } };
    expect(stands(withoutContradictions(plan, { ...plan, title: 'Another title' }))).toBe(true);
  });
});

describe('the answers in the app', () => {
  const level = () => useAppStore.getState().plan.levels[0];
  const { undo } = useAppStore.getState();
  beforeEach(() => {
    useAppStore.getState().openPlan(planWith(houseLevel('L1', 'A', { lookedFor: [] })));
    useAppStore.getState().setWalk({ by: '', at: null });
  });

  it('are one press and one step of history, with who and when of the walk', () => {
    useAppStore.getState().setWalk({ by: 'R. Alder', at: NOON });
    answerNone('heat');
    expect(level()).toMatchObject({ lookedFor: ['heat'], lookedForBy: [{ rule: 'heat', by: 'R. Alder', at: NOON }] });
    undo();
    expect(level()?.lookedFor).toEqual([]);
  });

  it('are taken back by a second press, and signed later', () => {
    answerNone('heat');
    answerNone('sump');
    takeBackNone('heat');
    useAppStore.getState().setWalk({ by: 'R. Alder', at: NOON });
    signLooks();
    expect(level()).toMatchObject({ lookedFor: ['sump'], lookedForBy: [{ rule: 'sump', by: 'R. Alder', at: NOON }] });
  });

  it('leave no trace once the last one is taken back', () => {
    answerNone('heat');
    takeBackNone('heat');
    expect([level()?.lookedFor, level()?.lookedForBy]).toEqual([undefined, undefined]);
  });

  it('are those of purpose, living and ground too', () => {
    useAppStore.getState().newPlan();
    expect(useAppStore.getState().plan.site.purposeAnswered).toBe(false);
    expect(useAppStore.getState().run((plan) => withPurpose(plan, 'after-mitigation'))).toBe('');
    expect(useAppStore.getState().run((plan) => withLiving(plan, 'L1', 'could-be'))).toBe('');
    expect(level()?.groundAnswered).toBe(false);
    expect(useAppStore.getState().run((plan) => withGround(plan, 'L1', 'slab'))).toBe('');
    expect(level()).toMatchObject({ ground: 'slab' });
    expect(level()).not.toHaveProperty('groundAnswered');
    useAppStore.getState().addLevel('above');
    expect(useAppStore.getState().plan.levels.at(-1)).toMatchObject({ ground: 'none', groundAnswered: false });
    expect(useAppStore.getState().plan.site).not.toHaveProperty('purposeAnswered');
    expect(level()).not.toHaveProperty('livingAnswered');
  });

  it('turn a verdict from "not run" to clear, and a thing that is drawn takes one back with a word', () => {
    for (const rule of EVERYTHING) answerNone(rule);
    const isAllRun = () => selectReports(useAppStore.getState()).every(({ checks }) => checks.every((c) => !c.notRun));
    expect(isAllRun()).toBe(true);
    const { id: _, ...drain } = fixture('floor-drain');
    useAppStore.getState().addItem('fixtures', drain);
    expect(level()?.lookedFor).not.toContain('floor-drain');
    expect(useAppStore.getState().message).toContain('"No floor drain" is taken back');
    // The drawn drain counts, so nothing is open again.
    expect(isAllRun()).toBe(true);
    undo();
    expect(level()?.lookedFor).toContain('floor-drain');
  });
});
