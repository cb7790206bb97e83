import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { withItemsMoved } from '../../../geometry/edit/move-items.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { describeFurniture } from '../../../geometry/messages/index.ts';
import type { Level, PlanObject } from '../../../geometry/plan/model.ts';
import { furnitureVerdict } from '../../../geometry/search/furniture.ts';
import { drawn, loop, planOf, rectangle } from '../../helpers/drawn.ts';

const SIZE = { radius: 50.8, tall: 25.4 };
const INCH = 25.4;
const box = (
  id: string,
  name: string,
  center: readonly [number, number],
  width: number,
  depth: number,
  top = 762,
): PlanObject => ({
  id,
  name,
  shape: { box: { center, width, depth, turn: 0 } },
  bottom: 0,
  top,
});
/** A floor of 6000 × 5000; a sump pit of radius 200 in the corner at its origin. */
function den(objects: readonly PlanObject[]): Level {
  const walls = loop('a', rectangle(-100, -100, 6200, 5200));
  const rooms = [{ id: 'r', name: 'Den', use: 'den', at: [3000, 4900] }] as const;
  const pit = {
    id: 'f1',
    kind: 'sump-pit',
    name: '',
    shape: { circle: { center: [300, 300], radius: 200 } },
    bottom: 0,
    top: 0,
    stream: null,
  } as const;
  return drawn(walls, { rooms, ceiling: 2500, objects, fixtures: [pit] });
}
const judge = (level: Level, id: string, members: 1 | 2 = 1) => {
  const object = level.objects.find((each) => each.id === id) as PlanObject;
  const plan = planOf(level);
  const verdict = furnitureVerdict(plan, buildLevel(level), object, SIZE, members, INCH);
  return { verdict, plan, words: describeFurniture(verdict, object, members, plan, level) };
};

describe('a named piece of furniture', () => {
  it('that stands well is good for one and for a pair', () => {
    const level = den([box('t1', 'Desk', [4000, 3500], 1200, 600)]);
    expect(judge(level, 't1').words).toMatch(/^A detector may stand on the desk, .* to spare\.$/);
    const pair = judge(level, 't1', 2).verdict;
    expect(pair.kind === 'good' && pair.at).toHaveLength(2);
  });

  it.each([
    ['Sofa', box('t1', 'Sofa', [4000, 3500], 2000, 900), 'people sit or lie on it'],
    ['low', box('t1', 'Table', [4000, 3500], 900, 500, 399), '1 ft 3 5/8 in above the floor, needs 1 ft 8 in.'],
    ['high', box('t1', 'Shelf', [4000, 3500], 900, 300, 1829), 'at the most'],
    ['small', box('t1', 'Ledge', [4000, 3500], 900, 90), 'is too small: the whole foot'],
    ['outdoors', box('t1', 'Table', [9000, 3500], 900, 500), 'It is in no room.'],
  ])('that is no place says why: %s', (_, object, why) => {
    expect(judge(den([object]), 't1').words).toContain(why);
  });

  it('too near to the pit says so and by how much it would have to move; moved so, it is good', () => {
    // 7 ft from the pit, 2133.6: from its middle at (300, 300) a rim keeps 2333.6, an axis 2384.4, with the tape tolerance 2409.8.
    const level = den([box('t1', 'Desk', [1500, 900], 1200, 600)]);
    for (const members of [1, 2] as const) {
      const { verdict, words, plan } = judge(level, 't1', members);
      expect(words).toMatch(
        /^No spot on the desk\. .* from the sump pit, needs 7 ft\. Move the desk .* to the (?:east|south)\.$/,
      );
      if (verdict.kind !== 'near' || !verdict.move) throw new Error('no move');
      const moved = withItemsMoved(level, new Set(['t1']), verdict.move.way);
      const after = judge(moved, 't1', members).verdict;
      expect(after.kind).toBe('good');
      if (after.kind !== 'good') continue;
      for (const at of after.at) {
        const detector = { ...SIZE, id: 'x', label: '', at, base: 762, pair: null };
        const { checks } = checkDetector(plan, buildLevel(moved), detector);
        expect(checks.filter(({ verdict: one, notRun }) => one === 'blocked' && !notRun)).toEqual([]);
      }
      // One inch less is not enough.
      const [dx, dy] = verdict.move.way;
      const less = withItemsMoved(level, new Set(['t1']), [dx - Math.sign(dx) * INCH, dy - Math.sign(dy) * INCH]);
      const short = judge(less, 't1', members).verdict;
      expect(short.kind === 'good' ? short.margin : -1).toBeLessThan(25.4 + 1);
    }
  });

  it('is moved through no wall and into nothing', () => {
    const full = den([
      box('t1', 'Desk', [900, 400], 1200, 600),
      box('t2', 'Freezer', [1500 + 450, 500], 800, 900, 900),
      box('t3', 'Rack', [900, 1100], 1700, 500, 1800),
    ]);
    const { verdict } = judge(full, 't1');
    expect(verdict.kind).toBe('near');
    if (verdict.kind === 'near' && verdict.move) {
      const { way } = verdict.move;
      expect(Math.hypot(...way)).toBeGreaterThan(1500);
    }
  });
});
