import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignedItems } from '../../../geometry/edit/align.ts';
import { duplicatedItems, itemPatched, movedItems, resizedItem, turnedItem } from '../../../geometry/edit/index.ts';
import { withItemsMoved } from '../../../geometry/edit/move-items.ts';
import { withHandleAt } from '../../../geometry/edit/reshape.ts';
import { detectorsWithoutSupport, withSupportedItems } from '../../../geometry/edit/supported-items.ts';
import type { Detector, Fixture, Level, Plan, PlanObject, Shape, XY } from '../../../geometry/plan/model.ts';
import { shapeRing } from '../../../geometry/plane/body.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { evenly } from '../../helpers/evenly.ts';

const desk: PlanObject = {
  id: 't1',
  name: 'Desk',
  shape: { box: { center: [2000, 1500], width: 1200, depth: 600, turn: 0 } },
  bottom: 0,
  top: 762,
};
const detector = (id: string, at: XY, more: Partial<Detector> = {}): Detector => ({
  id,
  label: id,
  at,
  base: 762,
  radius: 50.8,
  tall: 25.4,
  pair: null,
  ...more,
});
const PAIR = [detector('d1', [1900, 1500], { pair: 'A' }), detector('d2', [2127, 1500], { pair: 'A' })];
const levelWith = (detectors: readonly Detector[], more: Partial<Level> = {}): Level => ({
  ...emptyLevel('L1'),
  objects: [desk],
  detectors,
  ...more,
});
const planWith = (level: Level): Plan => ({ ...emptyPlan(), levels: [level] });
const done = (result: { readonly ok: boolean; readonly plan?: Plan }): Level => {
  if (!result.plan?.levels[0]) throw new Error('the edit was refused');
  return result.plan.levels[0];
};
/** Points of a shape that move with it. */
const landmarks = (shape: Shape) => ('circle' in shape ? [shape.circle.center] : shapeRing(shape));
const axes = ({ detectors }: Level) => detectors.map(({ at }) => at);

describe('what stands on a piece of furniture', () => {
  it('goes with it when it is moved', () => {
    const moved = done(movedItems(planWith(levelWith(PAIR)), 'L1', ['t1'], 300, -40));
    expect(axes(moved)).toEqual([
      [2200, 1460],
      [2427, 1460],
    ]);
  });

  it('is moved once where it is selected with it', () => {
    const moved = withItemsMoved(levelWith(PAIR), new Set(['t1', 'd1']), [10, 20]);
    expect(axes(moved)).toEqual([
      [1910, 1520],
      [2137, 1520],
    ]);
  });

  it('stands on it up to 3 mm above or below its top', () => {
    const near = [detector('d1', [2000, 1500], { base: 765 }), detector('d2', [2100, 1500], { base: 759 })];
    const off = [detector('d3', [2000, 1400], { base: 766 }), detector('d4', [2100, 1400], { base: 758 })];
    const moved = withItemsMoved(levelWith([...near, ...off]), new Set(['t1']), [100, 0]);
    expect(moved.detectors.map(({ at: [x] }) => x)).toEqual([2100, 2200, 2000, 2100]);
  });

  it('does not take along what hangs, has a stand of its own or stands beside it', () => {
    const others = [
      detector('d1', [2000, 1500], { support: 'hung' }),
      detector('d2', [2100, 1500], { support: 'stand' }),
      detector('d3', [2700, 1500]),
    ];
    const before = levelWith(others);
    expect(axes(withItemsMoved(before, new Set(['t1']), [100, 0]))).toEqual(axes(before));
  });

  it('turns with it', () => {
    const turned = done(turnedItem(planWith(levelWith(PAIR)), 'L1', 't1', 90));
    expect(axes(turned)).toEqual([
      [2000, 1400],
      [2000, 1627],
    ]);
  });

  it('turns with it by its grip', () => {
    const grip = { kind: 'turn', id: 't1', at: [2000, 1100] } as const;
    const turned = withHandleAt(levelWith(PAIR), grip, [2400, 1500], 15);
    expect(axes(turned)).toEqual([
      [2000, 1400],
      [2000, 1627],
    ]);
  });

  it('is lifted and lowered with its top', () => {
    const raised = done(itemPatched(planWith(levelWith(PAIR)), 'L1', 'object', 't1', { top: 900 }));
    expect(raised.detectors.map(({ base }) => base)).toEqual([900, 900]);
  });

  it('keeps its place when it is made another size', () => {
    const before = levelWith(PAIR);
    const narrower = done(resizedItem(planWith(before), 'L1', 't1', { width: 400 }));
    expect(axes(narrower)).toEqual(axes(before));
  });

  it('stays with the first one when it is copied', () => {
    const before = levelWith(PAIR);
    const copied = duplicatedItems(planWith(before), 'L1', ['t1'], 300, 300);
    expect(copied.ok && copied.plan.levels[0]?.detectors).toEqual(PAIR);
  });

  it('stays put where it leads and the furniture comes to it', () => {
    const before = levelWith([detector('d1', [1700, 1500])]);
    const aligned = done(alignedItems(planWith(before), 'L1', ['d1', 't1'], 'column'));
    expect(axes(aligned)).toEqual([[1700, 1500]]);
    expect(aligned.objects[0]?.shape).toMatchObject({ box: { center: [1700, 1500] } });
  });

  it('goes along when its furniture is brought into line with something else', () => {
    const other: PlanObject = { ...desk, id: 't2', shape: { circle: { center: [5000, 2500], radius: 200 } } };
    const before = levelWith(PAIR, { objects: [desk, other] });
    const aligned = done(alignedItems(planWith(before), 'L1', ['t2', 't1'], 'row'));
    expect(axes(aligned)).toEqual([
      [1900, 2500],
      [2127, 2500],
    ]);
  });

  it('takes along what stands on what stands on it, and a fan with its air', () => {
    const box: PlanObject = {
      id: 't2',
      name: 'Box',
      shape: { box: { center: [1800, 1500], width: 200, depth: 200, turn: 0 } },
      bottom: 762,
      top: 900,
    };
    const fan: Fixture = {
      id: 'f1',
      kind: 'portable-fan',
      name: '',
      shape: { circle: { center: [2300, 1500], radius: 100 } },
      bottom: 762,
      top: 1000,
      stream: { direction: 0, spread: 30, reach: 1500 },
    };
    const before = levelWith([detector('d1', [1800, 1500], { base: 900 })], { objects: [desk, box], fixtures: [fan] });
    const turned = done(turnedItem(planWith(before), 'L1', 't1', 90));
    expect(axes(turned)).toEqual([[2000, 1300]]);
    expect(turned.fixtures[0]?.shape).toEqual({ circle: { center: [2000, 1800], radius: 100 } });
    expect(turned.fixtures[0]?.stream?.direction).toBe(90);
    const raised = done(itemPatched(planWith(before), 'L1', 'object', 't1', { top: 800 }));
    expect(raised.objects[1]).toMatchObject({ bottom: 800, top: 938 });
    expect(raised.detectors[0]?.base).toBe(938);
  });

  it('of any form keeps its place on it, wherever it is moved and however it is turned', () => {
    const coordinate = evenly(-5000, 5000);
    const shapes: fc.Arbitrary<Shape> = fc.constantFrom<Shape>(
      { box: { center: [2000, 1500], width: 1200, depth: 600, turn: 30 } },
      { circle: { center: [2000, 1500], radius: 500 } },
      {
        polygon: {
          points: [
            [1500, 1200],
            [2600, 1200],
            [2600, 1900],
            [2000, 1900],
          ],
        },
      },
    );
    fc.assert(
      fc.property(shapes, coordinate, coordinate, fc.integer({ min: 0, max: 359 }), (shape, dx, dy, by) => {
        const before = levelWith(PAIR, { objects: [{ ...desk, shape }] });
        const moved = movedItems(planWith(before), 'L1', ['t1'], dx, dy);
        const turned = done(moved.ok ? turnedItem(moved.plan, 'L1', 't1', by) : moved);
        const way = (level: Level) =>
          axes(level).flatMap((at) => landmarks(level.objects[0]?.shape as Shape).map((mark) => distance(at, mark)));
        const before0 = way(before);
        way(turned).forEach((far, i) => {
          expect(Math.abs(far - (before0[i] ?? 0))).toBeLessThan(0.01);
        });
      }),
      { numRuns: 300 },
    );
  });
});

describe('what lost its carrier', () => {
  it('is what stood on it with the whole foot and does no longer', () => {
    const before = levelWith(PAIR);
    const narrower = done(resizedItem(planWith(before), 'L1', 't1', { width: 290 }));
    // 145 mm to the edge: d1, 100 mm off the middle, extends to 150.8; d2, 127 mm off, to 177.8.
    expect(detectorsWithoutSupport(before, narrower).map(({ id }) => id)).toEqual(['d1', 'd2']);
    const kept = done(resizedItem(planWith(before), 'L1', 't1', { width: 302 }));
    // 151 mm: the footprint of d1 is still on it.
    expect(detectorsWithoutSupport(before, kept).map(({ id }) => id)).toEqual(['d2']);
    expect(detectorsWithoutSupport(before, levelWith(PAIR, { objects: [] })).map(({ id }) => id)).toEqual(['d1', 'd2']);
  });

  it('is nothing that hangs, is gone or never stood on anything', () => {
    const before = levelWith([...PAIR, detector('d3', [4000, 1500])]);
    const after = levelWith([detector('d1', [4000, 1500], { support: 'hung' }), detector('d3', [4500, 1500])]);
    expect(detectorsWithoutSupport(before, after)).toEqual([]);
  });

  it('an edit that moves no furniture leaves the level the same object', () => {
    const before = levelWith(PAIR);
    expect(withSupportedItems(before, before, new Set())).toBe(before);
    const renamed = levelWith(PAIR, { objects: [{ ...desk, name: 'Table' }] });
    expect(withSupportedItems(before, renamed, new Set(['t1']))).toBe(renamed);
  });
});
