import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { guidance } from '../../../src/advice/guidance.ts';
import { stillToDo } from '../../../src/advice/stages.ts';
import { testStateOf } from '../../../src/state/test-state.ts';
import { detector, missing, SQUARE, texts } from './guidance-hints.ts';

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

  it('names the thing whose height nobody has measured, and leads to it', () => {
    // Within 4 in (101.6 mm) of the rim in plan, and below the detector by an assumed top only.
    const box = {
      id: 'box',
      name: 'Crate',
      shape: { circle: { center: [3150, 3000] as const, radius: 60 } },
      bottom: 0,
      top: 400,
      topAnswered: false,
    };
    const near = { ...den, objects: [box], detectors: [detector('d0', 'A1', null, [3000, 3000])] };
    const [hint, ...others] = toDo([near], 'L1').filter(
      ({ action }) => action?.kind === 'show' && action.field === 'top',
    );
    expect(others).toEqual([]);
    expect(hint?.text).toContain(' is not run for A1 against the crate. Nobody has measured how high it is.');
    expect(hint?.action).toMatchObject({ ids: ['box'] });
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
