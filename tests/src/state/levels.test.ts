import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { copyOutline } from '../../../src/state/copy-outline.ts';
import { checkedLevels, selectBelow, selectLevel, selectReports } from '../../../src/state/selectors.ts';
import { useAppStore } from '../../../src/state/store.ts';

const state = () => useAppStore.getState();
const pastSteps = () => useAppStore.temporal.getState().pastStates.length;
const sample = (name: string): Plan => {
  const read = parsePlan(readFileSync(`samples/${name}.plan.json`, 'utf8'));
  if (!read.ok) throw new Error('the sample does not open');
  return read.plan;
};
const levelNamed = (name: string): Level => {
  const level = state().plan.levels.find((each) => each.name === name);
  if (!level) throw new Error(`no level ${name}`);
  return level;
};
const names = () => [...state().plan.levels].sort((a, b) => a.order - b.order).map(({ name }) => name);

beforeEach(() => state().openPlan(sample('01-plain-basement')));

describe('a level that is added', () => {
  it('is named after its place, comes into view, and is one step', () => {
    const before = pastSteps();
    state().addLevel('above');
    expect(selectLevel(state())).toMatchObject({ name: 'Main floor', order: 1, ground: 'none' });
    expect(pastSteps()).toBe(before + 1);
    state().addLevel('above');
    state().addLevel('below');
    expect(names()).toEqual(['Basement', 'Main floor', 'Lower basement', 'Upper floor']);
    expect(
      state()
        .plan.levels.map(({ order }) => order)
        .sort(),
    ).toEqual([0, 1, 2, 3]);
  });

  it('below a level on the ground asks whether that still holds', () => {
    state().addLevel('below');
    expect(state().message).toMatch(/^Lower basement is added below Basement\. Basement is noted as .+: check whether/);
  });
});

describe('a level that is deleted', () => {
  it('goes with the readings of its detectors, and undo brings all of it back into view', () => {
    const [first] = selectLevel(state()).detectors;
    const basement = selectLevel(state());
    state().run((plan) => ({ ...plan, readings: [{ detector: first?.id ?? '', value: 3, unit: 'pCi/L' }] }));
    state().addLevel('above');
    state().setLevel(basement.id);
    state().deleteLevel(basement.id);
    expect(names()).toEqual(['Main floor']);
    expect(state().plan.readings).toEqual([]);
    expect(state().plan.levels[0]?.order).toBe(0);
    // 5 walls, 2 doors, 3 windows and what stands there: counted in the file.
    const things = [
      basement.walls,
      basement.openings,
      basement.rooms,
      basement.fixtures,
      basement.objects,
      basement.detectors,
    ];
    const count = things.reduce((sum, list) => sum + list.length, 0);
    expect(state().message).toBe(
      `Basement with ${count} things is deleted. Undo restores it. Its results and its entries in the log went with it.`,
    );
    state().undo();
    expect(selectLevel(state()).name).toBe('Basement');
    expect(selectLevel(state()).detectors).toHaveLength(basement.detectors.length);
    expect(state().plan.readings).toHaveLength(1);
  });

  it('is refused where it is the last one', () => {
    state().deleteLevel(selectLevel(state()).id);
    expect(names()).toEqual(['Basement']);
    expect(state().message).toBe('Basement is the only level. Add another one before you delete it.');
  });

  it('leaves another level in view where it was not the one', () => {
    state().addLevel('above');
    const { id } = levelNamed('Basement');
    state().deleteLevel(id);
    expect(selectLevel(state()).name).toBe('Main floor');
  });
});

describe('the order', () => {
  it('decides which level is tested, and the move says so', () => {
    state().addLevel('above');
    state().moveLevel('below');
    expect(names()).toEqual(['Main floor', 'Basement']);
    expect(state().message).toBe('Main floor is the lowest level now. It is a level to test.');
    // The detectors of the basement are no longer on the lowest lived-in level.
    const [, basement] = checkedLevels(state().plan);
    expect(basement?.reports.map(({ verdict }) => verdict)).toEqual(['blocked', 'blocked']);
    state().undo();
    expect(checkedLevels(state().plan)[0]?.reports.map(({ verdict }) => verdict)).toEqual(['clear', 'clear']);
  });

  it('has two levels at one height where it is said, and then takes both alike', () => {
    state().addLevel('below');
    state().putLevelWith(levelNamed('Basement').id);
    expect(state().message).toBe('Lower basement lies at the height of Basement now. It is a level to test.');
    expect(checkedLevels(state().plan).flatMap(({ reports }) => reports.map(({ verdict }) => verdict))).toEqual([
      'clear',
      'clear',
    ]);
  });

  it('is walked through level by level, and says where it ends', () => {
    state().addLevel('above');
    state().stepLevel('below');
    expect(selectLevel(state()).name).toBe('Basement');
    state().stepLevel('below');
    expect(state().message).toBe('Basement is the lowest level.');
    state().stepLevel('above');
    expect(selectLevel(state()).name).toBe('Main floor');
  });
});

describe('the outline of the level below', () => {
  it('is copied with doors and windows where asked, says how much, and closes a room', () => {
    const basement = levelNamed('Basement');
    state().addLevel('above');
    copyOutline(state(), basement.id, { openings: true, insideWalls: false });
    const main = selectLevel(state());
    expect(main.name).toBe('Main floor');
    expect(main.walls).toHaveLength(4);
    expect(buildLevel(main).rooms).toHaveLength(1);
    expect(state().message).toMatch(/^4 walls and \d+ openings copied from Basement\. Check with the tape/);
    copyOutline(state(), basement.id, { openings: true, insideWalls: false });
    expect(state().message).toBe('All of these walls of Basement are here already.');
  });

  it('takes the interior walls along', () => {
    const basement = levelNamed('Basement');
    state().addLevel('above');
    copyOutline(state(), basement.id, { openings: false, insideWalls: true });
    expect(selectLevel(state()).walls).toHaveLength(basement.walls.length);
    expect(selectLevel(state()).openings).toEqual([]);
  });

  it('says so where there is none', () => {
    state().addLevel('above');
    const { id } = selectLevel(state());
    state().addLevel('above');
    copyOutline(state(), id, { openings: false, insideWalls: false });
    expect(state().message).toBe('Main floor has no closed outline yet. Close its walls, then copy them.');
  });
});

describe('the level below', () => {
  it('shows under a level, not under the lowest, and not when it is switched off', () => {
    expect(selectBelow(state())).toBeNull();
    state().addLevel('above');
    expect(selectBelow(state())?.level.name).toBe('Basement');
    state().setShowBelow(false);
    expect(selectBelow(state())).toBeNull();
    state().setShowBelow(true);
  });
});

describe('what is evaluated once', () => {
  it('is evaluated again whenever the outcome could differ, and never before', () => {
    state().openPlan(sample('02-split-level'));
    const judge = (plan: Plan) =>
      plan.levels.map((level) => level.detectors.map((each) => checkDetector(plan, buildLevel(level), each)));
    const shown = (plan: Plan) =>
      plan.levels.map(({ id }) => checkedLevels(plan).find(({ model }) => model.level.id === id)?.reports);
    expect(shown(state().plan)).toEqual(judge(state().plan));
    const edits: ((plan: Plan) => Plan)[] = [
      (plan) => ({ ...plan, site: { ...plan.site, purpose: 'own-household' } }),
      (plan) => ({ ...plan, tapeTolerance: 300 }),
      (plan) => ({ ...plan, levels: plan.levels.map((each) => ({ ...each, living: 'no' as const })) }),
      (plan) => ({
        ...plan,
        levels: plan.levels.map((each, i) => ({ ...each, order: 5 - i, living: 'lived-in' as const })),
      }),
      (plan) => ({
        ...plan,
        protocol: { ...plan.protocol, overrides: [{ rule: 'outside-wall', distance: 3000, note: '' }] },
      }),
    ];
    for (const edit of edits) {
      state().run(edit);
      expect(shown(state().plan)).toEqual(judge(state().plan));
    }
    state().setLevel(state().plan.levels.find(({ detectors }) => detectors.length > 0)?.id ?? '');
    const before = selectReports(state());
    state().addItem('objects', {
      name: 'Chair',
      shape: { circle: { center: [0, 0], radius: 100 } },
      bottom: 0,
      top: 400,
    });
    expect(selectReports(state())).not.toBe(before);
    // What is drawn on one level does not judge the others anew.
    const other = state().plan.levels.find(({ id }) => id !== selectLevel(state()).id)?.id;
    const reportsOfOther = () => checkedLevels(state().plan).find(({ model }) => model.level.id === other)?.reports;
    const kept = reportsOfOther();
    state().undo();
    expect(reportsOfOther()).toBe(kept);
  });
});
