import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/plan/empty.ts';
import type { Detector, Level, Plan, Wall, XY } from '../../../geometry/plan/model.ts';
import { guidance, type Hint, type Stage } from '../../../src/state/guidance.ts';

const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 200, side: 'auto' });
const SQUARE: readonly Wall[] = [
  wall('w1', [0, 0], [8000, 0]),
  wall('w2', [8000, 0], [8000, 6000]),
  wall('w3', [8000, 6000], [0, 6000]),
  wall('w4', [0, 6000], [0, 0]),
];
const detector = (id: string, label: string, pair: string | null, at: XY): Detector => ({
  id,
  label,
  at,
  base: 762,
  radius: 50.8,
  tall: 25.4,
  pair,
});

function hintsOf(stage: Stage, level: Level, part: Partial<Plan> = {}, reports?: readonly DetectorReport[]) {
  const plan: Plan = { ...emptyPlan(), levels: [level], ...part };
  const model = buildLevel(level);
  const judged = reports ?? level.detectors.map((each) => checkDetector(plan, model, each));
  const state = guidance(plan, [{ model, reports: judged }], level.id).find((each) => each.stage === stage);
  if (!state) throw new Error(`no stage ${stage}`);
  return state;
}
const texts = (hints: readonly Hint[]) => hints.map(({ text }) => text);
const missing = (hints: readonly Hint[]) => texts(hints.filter((hint) => hint.missing));

describe('an empty sheet', () => {
  const level = emptyLevel('L1');

  it('asks for the outline first, and offers the tool', () => {
    const { hints, done } = hintsOf('draw', level);
    expect(texts(hints)).toEqual(['Nothing is drawn on this level yet. Begin with the outline.']);
    expect(hints[0]?.act).toMatchObject({ kind: 'tool', tool: { kind: 'room-box' } });
    expect(done).toBe('');
  });

  it('asks for a room before a detector', () => {
    expect(texts(hintsOf('place', level).hints)).toEqual(['Close a room first, then set a detector in it.']);
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
    expect(missing(hints)).toEqual([
      'A room has no use yet. Say what it is used for: until then nothing in it can turn clear.',
    ]);
    const act = hints[0]?.act;
    if (act?.kind !== 'name-room') throw new Error('the hint offers no name');
    expect(act.at[0]).toBeGreaterThan(0);
    expect(act.at[0]).toBeLessThan(8000);
    expect(done).toBe('1 room.');
  });

  it('only remarks on doors, windows and fixtures: a room may have none', () => {
    const named = {
      ...emptyLevel('L1'),
      walls: SQUARE,
      rooms: [{ id: 'r1', name: 'Den', use: 'den' as const, at: [4000, 3000] as XY }],
    };
    const { hints } = hintsOf('draw', named);
    expect(missing(hints)).toEqual([]);
    expect(hints).toHaveLength(2);
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
    expect(missing(hints)).toEqual(['A2 is blocked.']);
    expect(done).toBe('A1 clear, A2 blocked.');
    expect(texts(hintsOf('sheet', two).hints)).toEqual(['A2 is blocked. The sheet will say so.']);
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
    expect(missing(hintsOf('place', twice).hints)).toEqual(['Two detectors are labelled A1. Give each its own.']);
    const none = { ...level, detectors: [detector('d1', ' ', null, [3000, 3000])] };
    expect(missing(hintsOf('place', none).hints)).toEqual(['A detector has no label. The lab needs one.']);
  });
});

describe('the site', () => {
  it('is never quiet about a loosened rule', () => {
    const loosened = { profile: 'home-short-term', overrides: [{ rule: 'sump', distance: 1000, note: 'agreed' }] };
    const { hints } = hintsOf('site', emptyLevel('L1'), { title: 'Here', protocol: loosened });
    expect(texts(hints)).toEqual(['Looser than published: sump pit. Every sheet says so.']);
  });

  it('says nothing of a tightened one', () => {
    const tightened = { profile: 'home-short-term', overrides: [{ rule: 'sump', distance: 3048, note: '' }] };
    expect(hintsOf('site', emptyLevel('L1'), { title: 'Here', protocol: tightened }).hints).toEqual([]);
  });
});
