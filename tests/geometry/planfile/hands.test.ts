import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AlignTo, alignedItems, spreadItems } from '../../../geometry/edit/align.ts';
import { clipOf, pastedItems, pasteOffset } from '../../../geometry/edit/index.ts';
import { itemsInRow } from '../../../geometry/edit/row.ts';
import type { Detector, Fixture, Level, Opening, Plan, PlanObject, Wall, XY } from '../../../geometry/plan/model.ts';
import { shapeBody } from '../../../geometry/plane/body.ts';
import { readClip, writeClip } from '../../../geometry/planfile/clip.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { identifiedItems } from '../../../geometry/planfile/read/valid-parts.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { evenly } from '../../helpers/evenly.ts';

type Done = { readonly ok: true; readonly plan: Plan } | { readonly ok: false; readonly reason: string };
function done(result: Done): Plan {
  if (!result.ok) throw new Error(result.reason);
  return result.plan;
}
const reasonOf = (result: Done): string => (result.ok ? 'done' : result.reason);
const levelOf = (plan: Plan, at = 0): Level => plan.levels[at] as Level;

const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 100, side: 'auto' });
const window: Opening = { id: 'o1', wall: 'w1', kind: 'window', offset: 200, width: 900, bottom: 1200, top: 2000 };
const box = (id: string, center: XY, width: number, depth = 100, turn = 0): PlanObject => ({
  id,
  name: id,
  shape: { box: { center, width, depth, turn } },
  bottom: 0,
  top: 700,
});
const duct: Fixture = {
  id: 'f1',
  kind: 'supply-register',
  name: '',
  shape: { box: { center: [1000, 500], width: 254, depth: 101.6, turn: 0 } },
  bottom: 0,
  top: 0,
  stream: null,
};
const detector = (id: string, label: string, at: XY, pair: string | null = null): Detector => ({
  id,
  label,
  at,
  base: 762,
  radius: 50.8,
  tall: 25.4,
  pair,
});
const level: Level = {
  ...emptyLevel('L1'),
  walls: [wall('w1', [0, 0], [6000, 0]), wall('w2', [6000, 0], [6000, 4000])],
  openings: [window],
  fixtures: [duct],
  objects: [box('t1', [1000, 2000], 1200), box('t2', [3100, 2300], 600), box('t3', [5000, 2600], 200)],
  detectors: [detector('d1', 'A1', [2000, 3000], 'A'), detector('d2', 'A2', [2200, 3000], 'A')],
};
const plan: Plan = { ...emptyPlan(), levels: [level, { ...emptyLevel('L2'), order: 1 }] };

const item = (of: Plan, id: string, at = 0): PlanObject =>
  [...levelOf(of, at).objects, ...levelOf(of, at).fixtures].find((each) => each.id === id) as PlanObject;
const extent = (of: Plan, id: string) => shapeBody(item(of, id).shape).extent;

/** A level of boxes and circles at any position and angle, some of them selected. */
const furnished = fc
  .array(
    fc.record({
      x: evenly(-20_000, 20_000),
      y: evenly(-20_000, 20_000),
      width: evenly(10, 3000),
      depth: evenly(10, 3000),
      turn: fc.integer({ min: 0, max: 359 }),
    }),
    { minLength: 3, maxLength: 7 },
  )
  .map(
    (boxes): Plan => ({
      ...plan,
      levels: [
        {
          ...level,
          objects: boxes.map(({ x, y, width, depth, turn }, at) => box(`t${at + 1}`, [x, y], width, depth, turn)),
        },
      ],
    }),
  );
const idsOf = (of: Plan): readonly string[] => levelOf(of).objects.map(({ id }) => id);

function expectSound(before: Plan, after: Plan): void {
  expect(parsePlan(writePlan(after)).ok).toBe(true);
  const ids = identifiedItems(after).map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const object of levelOf(before).objects) {
    const { shape } = item(after, object.id);
    const was = object.shape;
    if ('box' in was && 'box' in shape) expect({ ...shape.box, center: 0 }).toEqual({ ...was.box, center: 0 });
  }
}

describe('alignedItems', () => {
  it.each<{ to: AlignTo; of: (id: string) => number; value: number }>([
    { to: 'left', of: (id) => extent(done(alignedItems(plan, 'L1', ['t1', 't2'], 'left')), id).minX, value: 400 },
    { to: 'right', of: (id) => extent(done(alignedItems(plan, 'L1', ['t1', 't2'], 'right')), id).maxX, value: 3400 },
    { to: 'upper', of: (id) => extent(done(alignedItems(plan, 'L1', ['t1', 't2'], 'upper')), id).minY, value: 1950 },
    { to: 'lower', of: (id) => extent(done(alignedItems(plan, 'L1', ['t1', 't2'], 'lower')), id).maxY, value: 2350 },
  ])('$to edges come to the outermost one, $value mm (drawn coordinates)', ({ of, value }) => {
    expect([of('t1'), of('t2')]).toEqual([value, value]);
  });

  it('middles come to the one that was selected first', () => {
    const column = done(alignedItems(plan, 'L1', ['t2', 't1'], 'column'));
    expect(item(column, 't1').shape).toEqual({ box: { center: [3100, 2000], width: 1200, depth: 100, turn: 0 } });
    const row = done(alignedItems(plan, 'L1', ['t2', 't1'], 'row'));
    expect(item(row, 't1').shape).toEqual({ box: { center: [1000, 2300], width: 1200, depth: 100, turn: 0 } });
  });

  it('leaves walls and openings where they are, and says what is missing', () => {
    expect(levelOf(done(alignedItems(plan, 'L1', ['w1', 'o1', 't1', 't2'], 'left'))).walls).toBe(level.walls);
    expect(reasonOf(alignedItems(plan, 'L1', ['w1', 'o1', 't1'], 'left'))).toMatch(/^Select two things or more/);
  });

  it('keeps sizes and ids, and brings every edge to one line', () => {
    fc.assert(
      fc.property(furnished, fc.constantFrom<AlignTo>('left', 'right', 'upper', 'lower'), (of, to) => {
        const after = done(alignedItems(of, 'L1', idsOf(of), to));
        expectSound(of, after);
        const key = ({ left: 'minX', right: 'maxX', upper: 'minY', lower: 'maxY' } as const)[to as 'left'];
        const edges = idsOf(after).map((id) => extent(after, id)[key]);
        expect(Math.max(...edges) - Math.min(...edges)).toBeLessThan(0.001);
      }),
      { numRuns: 60 },
    );
  });
});

describe('spreadItems', () => {
  it('makes the gaps the same; the outer ones stay', () => {
    // 1600 to 4900 is 3300, minus 600: two gaps of 1350.
    const after = done(spreadItems(plan, 'L1', ['t1', 't2', 't3'], 'across'));
    expect(extent(after, 't2').minX).toBe(1600 + 1350);
    expect(extent(after, 't3')).toEqual(extent(plan, 't3'));
  });

  it('keeps sizes and ids; the gaps differ by nothing, or it says that there is no room', () => {
    fc.assert(
      fc.property(furnished, fc.constantFrom('across' as const, 'down' as const), (of, along) => {
        const result = spreadItems(of, 'L1', idsOf(of), along);
        if (!result.ok) {
          expect(result.reason).toMatch(/^There is no room/);
          return;
        }
        expectSound(of, result.plan);
        const [from, to] = along === 'across' ? (['minX', 'maxX'] as const) : (['minY', 'maxY'] as const);
        const sorted = idsOf(of)
          .map((id) => extent(result.plan, id))
          .sort((a, b) => a[from] + a[to] - b[from] - b[to]);
        const gaps = sorted.slice(1).map((each, at) => each[from] - (sorted[at]?.[to] ?? 0));
        expect(Math.max(...gaps) - Math.min(...gaps)).toBeLessThan(0.01);
      }),
      { numRuns: 60 },
    );
  });

  it('asks for three', () => {
    expect(reasonOf(spreadItems(plan, 'L1', ['t1', 't2'], 'down'))).toMatch(/^Select three/);
  });
});

describe('itemsInRow', () => {
  it('sets four registers every 6 ft along a wall', () => {
    const after = done(itemsInRow(plan, 'L1', ['f1'], { more: 3, spacing: 1828.8, direction: 0 }));
    const centers = levelOf(after).fixtures.map(({ shape }) => ('box' in shape ? shape.box.center : null));
    expect(centers).toEqual([
      [1000, 500],
      [2828.8, 500],
      [4657.6, 500],
      [6486.4, 500],
    ]);
  });

  it('labels detectors on and makes of each pair a pair of its own', () => {
    const after = done(itemsInRow(plan, 'L1', ['d1', 'd2'], { more: 2, spacing: 500, direction: 90 }));
    expect(levelOf(after).detectors.map(({ label, pair, at }) => [label, pair, at])).toEqual([
      ['A1', 'A', [2000, 3000]],
      ['A2', 'A', [2200, 3000]],
      ['A3', 'B', [2000, 3500]],
      ['A4', 'B', [2200, 3500]],
      ['A5', 'C', [2000, 4000]],
      ['A6', 'C', [2200, 4000]],
    ]);
  });

  it('slides windows along their wall, and refuses one past its end or in another', () => {
    const row = (more: number, spacing: number, direction = 0) =>
      itemsInRow(plan, 'L1', ['o1'], { more, spacing, direction });
    expect(levelOf(done(row(2, 2000))).openings.map(({ offset }) => offset)).toEqual([200, 2200, 4200]);
    expect(reasonOf(row(3, 2000))).toMatch(/window/i);
    expect(reasonOf(row(1, 2000, 180))).toMatch(/window/i);
    expect(reasonOf(row(1, 600))).toMatch(/^The window would stand in another one/);
  });

  it.each([0, 1.5, -1, 101])('refuses %d more', (more) => {
    expect(reasonOf(itemsInRow(plan, 'L1', ['f1'], { more, spacing: 100, direction: 0 }))).toMatch(/whole number/);
  });

  it('refuses no spacing', () => {
    expect(reasonOf(itemsInRow(plan, 'L1', ['f1'], { more: 1, spacing: 0, direction: 0 }))).toMatch(/more than 0/);
  });

  it('keeps sizes, ids unique, and every distance the spacing', () => {
    const rows = fc.record({
      more: fc.integer({ min: 1, max: 12 }),
      spacing: evenly(1, 5000),
      direction: evenly(0, 360),
    });
    fc.assert(
      fc.property(furnished, rows, (of, row) => {
        const result = itemsInRow(of, 'L1', ['t1'], row);
        if (!result.ok) throw new Error(result.reason);
        expectSound(of, result.plan);
        expect(result.ids).toHaveLength(row.more);
        const centers = ['t1', ...result.ids].map((id) => {
          const { shape } = item(result.plan, id);
          return 'box' in shape ? shape.box.center : ([0, 0] as XY);
        });
        centers.slice(1).forEach(([x, y], at) => {
          const [px, py] = centers[at] as XY;
          expect(Math.hypot(x - px, y - py)).toBeCloseTo(row.spacing, 2);
        });
      }),
      { numRuns: 60 },
    );
  });
});

describe('clips', () => {
  const taken = ['w1', 'f1', 'd1', 'd2'];
  const clip = clipOf(level, taken);

  it('an opening goes with its wall, and with nothing else', () => {
    expect(clip.openings).toEqual([window]);
    expect(clipOf(level, ['o1', 't1']).openings).toEqual([]);
  });

  it('keeps its place on another level, under fresh ids, labels and pairs of its own', () => {
    const by = pasteOffset(plan, 'L2', clip, null, 304.8);
    expect(by).toEqual([0, 0]);
    const after = done(pastedItems(plan, 'L2', clip, by));
    const pasted = levelOf(after, 1);
    expect(pasted.walls.map(({ id, from, to }) => [id, from, to])).toEqual([['w3', [0, 0], [6000, 0]]]);
    expect(pasted.openings.map(({ id, wall: on, offset }) => [id, on, offset])).toEqual([['o2', 'w3', 200]]);
    expect(pasted.detectors.map(({ label, pair }) => [label, pair])).toEqual([
      ['A3', 'B'],
      ['A4', 'B'],
    ]);
  });

  it('another plan, where the names are free, keeps them', () => {
    const after = done(pastedItems(emptyPlan(), 'L1', clip, [0, 0]));
    expect(levelOf(after).detectors.map(({ label, pair }) => [label, pair])).toEqual([
      ['A1', 'A'],
      ['A2', 'A'],
    ]);
  });

  it('goes a foot aside where it stands already, and further where that is taken; back to its place when it was cut', () => {
    expect(pasteOffset(plan, 'L1', clip, null, 304.8)).toEqual([304.8, 304.8]);
    const once = done(pastedItems(plan, 'L1', clip, [304.8, 304.8]));
    expect(pasteOffset(once, 'L1', clip, null, 304.8)).toEqual([609.6, 609.6]);
    const cut: Plan = { ...plan, levels: [{ ...level, fixtures: [] }] };
    expect(pasteOffset(cut, 'L1', clipOf(level, ['f1']), null, 304.8)).toEqual([0, 0]);
  });

  it('comes with its middle to a point', () => {
    expect(pasteOffset(plan, 'L1', clipOf(level, ['t1']), [0, 0], 304.8)).toEqual([-1000, -2000]);
    expect(pasteOffset(plan, 'L1', clipOf(level, []), [500, 500], 304.8)).toEqual([0, 0]);
  });

  it('comes back from its text as it was', () => {
    expect(readClip(writeClip(clip))).toEqual({ ok: true, clip });
  });

  it.each([
    { text: '  ', says: /^There is nothing to paste/ },
    {
      text: 'Dear owner, the test starts on Monday',
      says: /^What was copied is not a thing from a plan: it reads "Dear owner/,
    },
    { text: '{"a": 1}', says: /^What was copied is not a thing from a plan/ },
    { text: '[1, 2]', says: /^What was copied is not a thing from a plan/ },
    { text: writePlan(plan), says: /^What was copied is a whole plan/ },
    { text: writeClip(clip).replace('"version":1', '"version":2'), says: /newer Stillspot/ },
    { text: writeClip(clip).replace('"w1"', '7'), says: /^What was copied is damaged\. .*id/i },
    { text: writeClip({ ...clip, walls: [] }), says: /^What was copied is damaged\. .*wall/i },
    { text: writeClip(clipOf(level, [])), says: /^There is nothing to paste/ },
    { text: '{"format":"stillspot-things","version":1}', says: /^What was copied is damaged/ },
  ])('says what $text is not', ({ text, says }) => {
    const read = readClip(text);
    expect(read.ok ? 'read' : read.reason).toMatch(says);
  });

  it('pasted anywhere leaves a plan that reads back, with every size as it was', () => {
    fc.assert(
      fc.property(furnished, fc.tuple(evenly(-9000, 9000), evenly(-9000, 9000)), (of, by) => {
        const whole = clipOf(
          levelOf(of),
          identifiedItems(of).map(({ id }) => id),
        );
        const after = done(pastedItems(plan, 'L2', whole, by));
        expectSound(plan, after);
        const sizes = (at: Level) =>
          at.objects.map(({ shape }) => ('box' in shape ? [shape.box.width, shape.box.depth] : []));
        expect(sizes(levelOf(after, 1))).toEqual(sizes(levelOf(of)));
      }),
      { numRuns: 40 },
    );
  });
});
