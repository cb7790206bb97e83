import { describe, expect, it } from 'vitest';
import type { Detector, Level, Opening, Plan } from '../../../../geometry/plan/model.ts';
import type { ConditionState } from '../../../../geometry/plan/test-record.ts';
import { conditionsReport } from '../../../../src/protocol/conditions/conditions-report.ts';
import { evaluateResults } from '../../../../src/protocol/results/evaluate-results.ts';
import { MOST_CAUTIOUS_FIRST, NEXT_STEPS } from '../../../../src/protocol/results/next-steps.ts';
import { testHeadline } from '../../../../src/protocol/validity/headline.ts';
import { homeStep } from '../../../../src/protocol/validity/home-step.ts';
import { testState } from '../../../../src/protocol/validity/test-state.ts';
import { issueText } from '../../../../src/protocol/validity/validity.ts';
import { EVERYTHING, GOOD_VISIT, houseLevel, pairAt, validTestPlan } from '../../../helpers/valid-test-plan.ts';

describe('a whole job', () => {
  it('of which nothing is missing holds', () => {
    const state = testState(validTestPlan());
    expect(state.issues.map(issueText)).toEqual([]);
    expect(state.validity).toBe('holds');
  });
});

const setsOf = (plan: Plan) => evaluateResults(plan, testState(plan));
const clearSteps = Object.values(NEXT_STEPS).flatMap(({ id, noActionPhrases }) =>
  noActionPhrases.length > 0 ? [id] : [],
);

describe('where a detector sits', () => {
  it('in a kitchen takes its result: not evaluated, no step that lets the home go', () => {
    const level = houseLevel('L1', 'A', {
      rooms: [{ id: 'r', name: 'Kitchen', use: 'kitchen', at: [1000, 1000] }],
    });
    const plan = validTestPlan([1, 1.1], { levels: [level] });
    const [set] = setsOf(plan);
    expect(testState(plan).validity).toBe('not-evaluated');
    expect(set?.state.validity).toBe('not-evaluated');
    expect(set?.next.text).toContain('A1 is blocked: No detector in a kitchen.');
    // It stood there: the record is not to be changed for the result.
    expect(set?.next.text).toContain('Recorded under Place: correct only what was recorded wrong.');
    expect(set?.next.text).not.toContain('Correct this under');
    expect(clearSteps).not.toContain(set?.next.id);
    expect(homeStep(plan, setsOf(plan)).step).toBe('unknown');
  });

  it('blocked, but without a result, leaves the test open and takes nothing from another location', () => {
    const level = houseLevel();
    const [first] = level.detectors;
    const inWall: Detector = { ...(first as Detector), id: 'B1', label: 'B1', pair: null, at: [150, 150] };
    const plan = validTestPlan([1, 1.1], { levels: [{ ...level, detectors: [...level.detectors, inWall] }] });
    expect(testState(plan).validity).toBe('unknown');
    expect(setsOf(plan).map(({ state }) => state.validity)).toEqual(['holds']);
  });

  it('in a room without a label cannot be decided: unknown', () => {
    const plan = validTestPlan([1, 1.1], { levels: [houseLevel('L1', 'A', { rooms: [] })] });
    expect(testState(plan).validity).toBe('unknown');
    expect(setsOf(plan)[0]?.next).toMatchObject({ id: 'unknown', text: expect.stringContaining('no label') });
  });

  it('tight holds, and is said', () => {
    const tight = houseLevel('L1', 'A', { detectors: pairAt('L1', 'A', 510) });
    const state = testState(validTestPlan([1, 1.1], { levels: [tight] }));
    expect(state.validity).toBe('holds');
    expect(state.notes).toEqual([
      expect.stringMatching(/^A1 is tight\./),
      expect.stringMatching(/^A2 is tight\./),
      expect.stringMatching(/^No weather forecast/),
    ]);
  });

  // Common practice, no published source: a result that a looser distance has let through says so.
  it('with a distance looser than published holds, and is said, also in the headline', () => {
    const overrides = [{ rule: 'sump' as const, distance: 914.4, note: 'Lid sealed.' }];
    const plan = validTestPlan([1, 1.1], { protocol: { profile: 'home-short-term', overrides } });
    const state = testState(plan);
    const said = 'LOOSENED: Sump pit: 3 ft instead of the published 7 ft (Lid sealed).';
    expect(state.validity).toBe('holds');
    expect(state.notes).toContain(said);
    expect(testHeadline(plan, state)).toMatchObject({ tone: 'tight', text: expect.stringContaining(said) });
    const tightened = [{ rule: 'sump' as const, distance: 3000, note: '' }];
    const strict = validTestPlan([1, 1.1], { protocol: { profile: 'home-short-term', overrides: tightened } });
    expect(testState(strict).notes.join(' ')).not.toContain('Sump');
  });

  it('no forecast on record holds, and is said of a short-term test of less than 96 h', () => {
    const noted = (change: Partial<Plan>) => {
      const { validity, notes } = testState(validTestPlan([1, 1.1], change));
      return [validity, notes.filter((words) => words.includes('forecast'))];
    };
    const note = 'No weather forecast from before the start is on record, which a test of less than 96 h requires.';
    expect(noted({})).toEqual(['holds', [note]]);
    const forecast = {
      at: '2026-03-07T08:00:00-05:00',
      source: 'weather service',
      sustained: 10,
      storm: false,
      note: '',
    };
    expect(noted({ visit: { ...GOOD_VISIT, forecast } })).toEqual(['holds', []]);
    // 96 h to the minute, over the change of clocks.
    expect(noted({ visit: { ...GOOD_VISIT, end: '2026-03-11T19:00:00-04:00' } })[1]).toEqual([]);
    expect(noted({ visit: { ...GOOD_VISIT, end: '2026-03-11T18:59:00-04:00' } })[1]).toEqual([note]);
    // Before the pick-up the times themselves are what is missing.
    expect(noted({ visit: { ...GOOD_VISIT, end: null } })[1]).toEqual([]);
  });

  const window = { id: 'o', wall: 'L1w1', kind: 'window', offset: 3000, width: 900, bottom: 1200, top: 2000 } as const;
  /** A plan with a window, on which somebody answered every question but that about direct sun. */
  const sunny = (glass: Opening = window): Plan => {
    const lookedFor = EVERYTHING.filter((rule) => rule !== 'direct-sun');
    return validTestPlan([1, 1.1], { levels: [houseLevel('L1', 'A', { openings: [glass], lookedFor })] });
  };

  it('not run is unknown, the sun included, until somebody vouches for it', () => {
    const open = testState(sunny());
    expect(open.validity).toBe('unknown');
    expect(open.issues[0]?.text).toMatch(/^Not run for A1 and A2: Direct sun/);
  });

  it('names the stage in which what the sun rule lacks is recorded', () => {
    const stageWith = (site: Partial<Plan['site']>, visit: Partial<Plan['visit']> = {}, glass: Opening = window) => {
      const plan = sunny(glass);
      const changed = { ...plan, site: { ...plan.site, ...site }, visit: { ...plan.visit, ...visit } };
      return testState(changed).issues.find(({ text }) => text.includes('Direct sun'))?.stage;
    };
    const here = { latitude: 41, longitude: -81, northAnswered: true };
    const unplanned = { end: null, plannedEnd: null };
    expect(stageWith({ ...here, latitude: null, longitude: null })).toBe('site');
    expect(stageWith({ ...here, northAnswered: false })).toBe('site');
    expect(stageWith(here, unplanned)).toBe('time');
    expect(stageWith({ ...here, northAnswered: false }, unplanned)).toBe('time');
    expect(stageWith(here, {}, { ...window, bottomAnswered: false })).toBe('draw');
  });
});

describe('a property transfer', () => {
  // 32 Ill. Adm. Code 422, Appendix B; ANSI/AARST MAH-2019, 2.5: two side by side, or a continuous monitor.
  const level = houseLevel();
  const one = { ...level, detectors: level.detectors.slice(0, 1).map((each) => ({ ...each, pair: null })) };
  const sale = (levels: readonly Level[], device: 'passive' | 'monitor' = 'passive') => {
    const plan = validTestPlan([1, 1.1], { levels, visit: { ...GOOD_VISIT, device } });
    return { ...plan, site: { ...plan.site, purpose: 'property-transfer' as const } };
  };

  it('is not decided by one passive detector', () => {
    const plan = sale([one]);
    expect(testState(plan).validity).toBe('not-evaluated');
    expect(setsOf(plan)[0]?.next.text).toContain('test again with a pair');
  });

  it('is decided by a pair, or by a monitor', () => {
    expect(testState(sale([level])).validity).toBe('holds');
    expect(testState(sale([one], 'monitor')).validity).toBe('holds');
  });
});

describe('the reason for the test, while nobody has answered it', () => {
  const open = (profile: string, levels = [houseLevel()]): Plan => {
    const plan = validTestPlan([1, 1.1], { levels, protocol: { profile, overrides: [] } });
    return { ...plan, site: { ...plan.site, purposeAnswered: false } };
  };
  const single = houseLevel('L1', 'A', {
    detectors: pairAt('L1', 'A')
      .slice(0, 1)
      .map((each) => ({ ...each, pair: null })),
  });

  // These lists choose the level whatever the reason; how many detectors a sale takes depends on it all the same.
  it.each(['illinois-422-130', 'pennsylvania-240-310'])('leaves a test under %s unknown', (profile) => {
    const plan = open(profile, [single]);
    const state = testState(plan);
    expect(state.validity).toBe('unknown');
    expect(state.issues.map(issueText)).toContainEqual(
      expect.stringMatching(/^Why the house is tested .*under Property\.$/),
    );
    expect(clearSteps).not.toContain(setsOf(plan)[0]?.next.id);
  });

  it('is asked for once where the choice of the level depends on it too', () => {
    const { issues } = testState(open('home-short-term'));
    expect(issues.filter(({ text }) => text.includes('why the house is tested'))).toHaveLength(1);
    expect(issues.filter(({ text }) => text.startsWith('Why the house is tested'))).toEqual([]);
  });
});

describe('a mitigation system that the report names', () => {
  const seenAs = (seen: 'none' | 'running' | 'not-running' | 'unknown') =>
    testState(validTestPlan([1, 1.1], { report: { mitigation: { seen, note: '' } } }));

  it.each(['running', 'not-running'] as const)('%s, asks for its hours, drawn or not', (seen) => {
    const { validity, issues } = seenAs(seen);
    expect(validity).toBe('unknown');
    expect(issues.map(({ text }) => text)).toContainEqual(
      expect.stringContaining('Since when the system has run is not recorded.'),
    );
  });

  it.each(['none', 'unknown'] as const)('%s, asks for nothing', (seen) => {
    expect(seenAs(seen).validity).toBe('holds');
  });

  // ANSI/AARST MAH-2019, 7.3.2, and the EPA checklist: it runs throughout. A record that says otherwise is no pass.
  it.each([
    ['running', 'holds'],
    ['unknown', 'holds'],
    ['not-running', 'unknown'],
    ['none', 'unknown'],
  ] as const)('%s, beside times and an answer that say it ran: %s', (seen, validity) => {
    const visit = { ...GOOD_VISIT, mitigationOnSince: '2026-03-01T09:00:00-05:00' };
    for (const of of ['own-household', 'after-mitigation'] as const) {
      const plan = validTestPlan([1, 1.1], { visit, report: { mitigation: { seen, note: '' } } });
      expect(testState({ ...plan, site: { ...plan.site, purpose: of } }).validity).toBe(validity);
    }
  });
});

describe('what is under the floor of another level, while nobody has answered it', () => {
  const twoLevels = (change: Partial<Level>, profile: string) => {
    const above = houseLevel('L2', 'B', { name: 'Main floor', order: 1, ground: 'none', detectors: [], ...change });
    return validTestPlan([1, 1.1], { levels: [houseLevel(), above], protocol: { profile, overrides: [] } });
  };
  const stepOf = (plan: Plan) => homeStep(plan, setsOf(plan));

  it('leaves the step for the house unknown, where each level on the ground is tested', () => {
    const open = stepOf(twoLevels({ groundAnswered: false }, 'pennsylvania-240-310'));
    expect(open.step).toBe('unknown');
    expect(open.text).toContain('what is under the floor of Main floor is not answered');
    expect(stepOf(twoLevels({}, 'pennsylvania-240-310')).step).toBe('retest-later');
    expect(stepOf(twoLevels({ groundAnswered: false, living: 'no' }, 'pennsylvania-240-310')).step).toBe(
      'retest-later',
    );
    expect(stepOf(twoLevels({ groundAnswered: false }, 'home-short-term')).step).toBe('retest-later');
  });
});

describe('the house', () => {
  const second = (change: Partial<Level> = {}) => houseLevel('L2', 'B', { order: 0, ground: 'slab', ...change });
  const pennsylvania = (values: readonly number[]) =>
    validTestPlan(values, {
      levels: [houseLevel(), second({ order: 1 })],
      protocol: { profile: 'pennsylvania-240-310', overrides: [] },
    });

  // 25 Pa. Code 240.310(a)(3): the lowest livable level of each zone that touches the soil.
  it('is unknown while a zone on the ground has no valid result', () => {
    const plan = pennsylvania([1, 1.1]);
    const house = homeStep(plan, setsOf(plan));
    expect(house).toMatchObject({ step: 'unknown', text: expect.stringContaining('Level L2 has no valid result') });
  });

  it('has the most cautious step of all its locations', () => {
    const plan = pennsylvania([1, 1.1, 9, 9.1]);
    expect(setsOf(plan).map(({ next }) => next.id)).toEqual(['retest-later', 'second-test-now']);
    expect(homeStep(plan, setsOf(plan)).step).toBe('second-test-now');
  });

  it('has the step of a valid location that calls for action, whatever is wrong at another one that nobody asks for', () => {
    const level = houseLevel();
    const atTheWall = pairAt('w', 'B').map((each) => ({ ...each, at: [each.at[0], 250] as const }));
    const plan = (values: readonly number[]) =>
      validTestPlan(values, { levels: [{ ...level, detectors: [...level.detectors, ...atTheWall] }] });
    const act = plan([9, 9.1, 1, 1.1]);
    expect(setsOf(act).map(({ next }) => next.id)).toEqual(['second-test-now', 'not-evaluated']);
    expect(homeStep(act, setsOf(act))).toMatchObject({
      step: 'second-test-now',
      text: expect.stringMatching(/ Not every location has a valid result\.$/),
    });
    // Never the other way round: no all-clear beside a location that is not valid.
    for (const values of [
      [1, 1.1, 9, 9.1],
      [3, 3.1, 1, 1.1],
    ]) {
      const open = plan(values);
      expect(homeStep(open, setsOf(open)).step).toBe('unknown');
    }
  });

  it('says what stands already where it asks for something', () => {
    const plan = pennsylvania([9, 9.1]);
    expect(homeStep(plan, setsOf(plan)).text).toContain('second short-term test at once');
  });

  // 32 Ill. Adm. Code 422.130(a)(1)(C): one more location for each further 2,000 sq ft.
  it('is unknown while a large level has fewer locations than its area asks for', () => {
    const corners = [
      [0, 0],
      [16000, 0],
      [16000, 13000],
      [0, 13000],
    ] as const;
    const walls = corners.map((from, i) => {
      const to = corners[(i + 1) % 4] ?? from;
      return { id: `w${i}`, from, to, thickness: 203.2, side: 'auto' as const };
    });
    const plan = validTestPlan([1, 1.1], { levels: [houseLevel('L1', 'A', { walls })] });
    expect(testState(plan).validity).toBe('holds');
    const house = homeStep(plan, setsOf(plan));
    expect(house).toMatchObject({ step: 'unknown', text: expect.stringContaining('1 of 2 locations') });
    // ANSI/AARST MAH-2019, 8.5.2(d): within 8 in they are one location, marked as a pair or not.
    const unmarked = plan.levels.map((level) => ({
      ...level,
      detectors: level.detectors.map((one) => ({ ...one, pair: null })),
    }));
    const single = { ...plan, levels: unmarked };
    expect(testState(single).validity).toBe('holds');
    expect(homeStep(single, setsOf(single))).toMatchObject({
      step: 'unknown',
      text: expect.stringContaining('1 of 2 locations'),
    });
  });

  it('ranks every step', () => {
    expect([...MOST_CAUTIOUS_FIRST].sort()).toEqual(Object.keys(NEXT_STEPS).sort());
  });
});

/** The item about machines near a detector. */
const MACHINES_OFF = 'room-machines-off';

describe('a machine that is drawn near a detector', () => {
  const machine = (kind: 'dehumidifier' | 'portable-fan', x: number) =>
    ({
      id: 'm1',
      kind,
      name: '',
      shape: { box: { center: [x, 4500], width: 300, depth: 300, turn: 0 } },
      bottom: 0,
      top: 600,
      stream: { direction: 90, spread: 30, reach: 900 },
    }) as const;
  const house = (kind: 'dehumidifier' | 'portable-fan', state: ConditionState, profile = 'home-short-term') => {
    const plan = validTestPlan([1, 1.1], { levels: [houseLevel('L1', 'A', { fixtures: [machine(kind, 6500)] })] });
    const conditions = plan.conditions.map((each) => (each.item === MACHINES_OFF ? { ...each, state } : each));
    return { ...plan, conditions, protocol: { profile, overrides: [] } };
  };
  const question = (plan: Plan) => conditionsReport(plan).rows.find(({ item }) => item.id === MACHINES_OFF);

  // Copies of 32 Ill. Adm. Code 422.130, closed-building list: off within 20 ft.
  it('is named by the question about machines, which "the house has none" does not answer', () => {
    expect(question(house('dehumidifier', 'unknown'))?.drawnItems).toBe(
      'Drawn within 20 ft (6.1 m): the dehumidifier near A1.',
    );
    expect(question(house('dehumidifier', 'not-applicable'))).toMatchObject({ state: 'unknown', canBeAbsent: false });
    expect(testState(house('dehumidifier', 'not-applicable')).validity).toBe('unknown');
  });

  it('leaves the test open until it was kept off, and then no more', () => {
    expect(testState(house('portable-fan', 'kept', 'illinois-422-130')).issues.map(({ text }) => text)).toEqual([]);
    const open = testState(house('portable-fan', 'unknown', 'illinois-422-130'));
    expect(open.issues.map(({ stage }) => stage)).toContain('house');
  });
});

describe('a long-term test', () => {
  const long = (values: readonly number[]) => {
    const plan = validTestPlan(values, {
      levels: [houseLevel('L1', 'A', { ceiling: 2600, detectors: pairAt('L1', 'A', 1000) })],
      protocol: { profile: 'health-canada-long-term', overrides: [] },
      visit: { ...GOOD_VISIT, closedSince: null, end: '2026-06-20T09:00:00-04:00' },
    });
    const readings = plan.readings.map((each) => ({ ...each, unit: 'Bq/m3' as const }));
    return { ...plan, readings, conditions: [], kit: { ...plan.kit, minimumHours: 2184, maximumHours: 8784 } };
  };
  const undisturbed = (values: readonly number[]): Plan => ({
    ...long(values),
    conditions: [{ item: 'not-disturbed', state: 'kept', at: null, note: '' }],
  });

  // Health Canada: above 200 Bq/m3; above 600 within a year (from memory).
  it.each([
    [[200, 200], 'below-long'],
    [[200, 201], 'reduce-long'],
    [[600, 600], 'reduce-long'],
    [[600, 601], 'reduce-soon-long'],
    // One above the level, the other not, and twice as high.
    [[110, 220], 'retest-straddles-long'],
    [[200, 400], 'retest-straddles-long'],
    // On either side of 148 Bq/m3, which is no level of this list.
    [[90, 185], 'retest-spread'],
  ] as const)('of %j Bq/m3: %s', (values, step) => {
    const plan = undisturbed(values);
    expect(testState(plan).issues.map(issueText)).toEqual([]);
    expect(setsOf(plan)[0]?.next.id).toBe(step);
    // The action level of a short-term test is none of this list, in neither unit.
    expect(setsOf(plan)[0]?.next.text).not.toMatch(/\b(4 pCi|148 Bq)/);
  });

  it('is open until somebody says that nobody touched it', () => {
    expect(testState(long([100, 101])).validity).toBe('unknown');
  });
});

describe('doors that were opened before the start', () => {
  it('mean a later start, and nothing to repeat', () => {
    const plan = validTestPlan([]);
    const conditions = plan.conditions.map((each) =>
      each.item === 'doors-closed' ? { ...each, state: 'broken' as const, at: '2026-03-07T08:00:00-05:00' } : each,
    );
    const before = { ...plan, conditions, visit: { ...GOOD_VISIT, end: null } };
    const { text } = conditionsReport(before);
    expect(text).toContain('start later');
    expect(text).not.toMatch(/test again/i);
    const row = conditionsReport(before).rows.find(({ item }) => item.id === 'doors-closed');
    expect(row?.text).toContain('not before Saturday, March 7, 8:00 pm');
    // Once it was measured the test is lost.
    expect(conditionsReport({ ...before, visit: GOOD_VISIT }).text).toContain('test again');
  });
});
