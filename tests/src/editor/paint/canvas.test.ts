import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type Part, ringsPart, type Shape } from '../../../../src/drawing/display-list.ts';
import { paintShapes } from '../../../../src/editor/paint/canvas.ts';
import type { Pen } from '../../../../src/editor/paint/pen.ts';
import { THEMES } from '../../../../src/theme/tokens.ts';

/** A path of the canvas that only notes its points, on the screen once it is laid there. */
class NotedPath {
  static made = 0;
  readonly points: [number, number][] = [];
  constructor() {
    NotedPath.made++;
  }
  moveTo(x: number, y: number) {
    this.points.push([x, y]);
  }
  lineTo(x: number, y: number) {
    this.points.push([x, y]);
  }
  closePath() {}
  addPath({ points }: NotedPath, m = { a: 1, d: 1, e: 0, f: 0 }) {
    this.points.push(...points.map(([x, y]): [number, number] => [m.a * x + m.e, m.d * y + m.f]));
  }
}

const square = (x: number, y: number, side: number): Part =>
  ringsPart([
    [
      [x, y],
      [x + side, y],
      [x + side, y + side],
      [x, y + side],
    ],
  ]);

function painted(shapes: readonly Shape[]) {
  const clip = vi.fn();
  const fill = vi.fn();
  const ctx = { save() {}, restore() {}, clip, fill } as unknown as CanvasRenderingContext2D;
  const seen = { minX: 0, minY: 0, maxX: 1000, maxY: 1000 };
  paintShapes({ ctx, view: { scale: 0.5, x: 10, y: 20 }, theme: THEMES.paper, seen } as Pen, shapes);
  const pointsOf = (mock: typeof clip) => mock.mock.calls.map(([path]) => (path as NotedPath).points);
  return { clips: pointsOf(clip), fills: pointsOf(fill) };
}

beforeEach(() => {
  NotedPath.made = 0;
  vi.stubGlobal('Path2D', NotedPath);
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const FILL = { fill: 'paper' } as const;
const here = square(100, 100, 200);
const there = square(5000, 5000, 200);

describe('shapes on the canvas', () => {
  it('lie where the viewport puts them, and those out of sight are left out', () => {
    const { fills } = painted([
      { ink: FILL, parts: [here, there] },
      { ink: FILL, parts: [there] },
    ]);
    expect(fills).toEqual([
      [
        [60, 70],
        [160, 70],
        [160, 170],
        [60, 170],
      ],
    ]);
  });

  it('are cut to the floors in sight, and the cut is worked out once for all that share it', () => {
    const within = [here, there];
    const one = painted([{ ink: FILL, parts: [here], within }]);
    expect(one.clips).toEqual(one.fills);
    const alone = NotedPath.made;
    painted([
      { ink: FILL, parts: [here], within },
      { ink: FILL, parts: [here], within },
    ]);
    expect(NotedPath.made - alone).toBe(alone + alone / 2);
  });

  it('are not drawn at all where no floor is in sight', () => {
    const { clips, fills } = painted([{ ink: FILL, parts: [here], within: [there] }]);
    expect(clips).toEqual([]);
    expect(fills).toEqual([]);
  });
});
