/** The plan as a list of shapes and texts, for any backend to draw in the order of the list. */
import type { Edge } from '../../geometry/arrangement/types.ts';
import type { Mm, XY } from '../../geometry/plan/model.ts';
import type { Extent } from '../../geometry/plane/extent.ts';
import { onEdge } from '../../geometry/region/visible-edges.ts';
import type { ColorRole, Ink } from './inks.ts';

/** A path of points, joined by straight lines, and edges. A straight line joins a point to the start of the edge after it. */
export type Run = readonly (XY | Edge)[];

/** Outlines that are built once and cached, with their bounding rectangle, which does not include the width of lines. */
export interface Part {
  readonly extent: Extent;
  readonly outlines: readonly { readonly run: Run; readonly closed: boolean }[];
}

/** Parts that are drawn in one ink as a single path: overlaps are not drawn twice. */
export interface Shape {
  readonly ink: Ink;
  readonly parts: readonly Part[];
  /** Nothing is drawn outside these. */
  readonly within?: readonly Part[];
}

/** Returns a shape of one part. */
export function inked(ink: Ink, part: Part): Shape {
  return { ink, parts: [part] };
}

/** A part whose bounding rectangle is computed when it is first asked for: nobody asks for those that are new in every frame. */
class Outlined implements Part {
  readonly outlines: Part['outlines'];
  #extent: Extent | undefined;

  constructor(runs: readonly Run[], closed: boolean, extent?: Extent) {
    this.outlines = runs.map((run) => ({ run, closed }));
    this.#extent = extent;
  }

  get extent(): Extent {
    this.#extent ??= runsExtent(this.outlines.map(({ run }) => run));
    return this.#extent;
  }
}

/** Returns a part of closed outlines. @param extent if it is known already */
export function ringsPart(rings: readonly Run[], extent?: Extent): Part {
  return new Outlined(rings, true, extent);
}

export function linesPart(lines: readonly Run[]): Part {
  return new Outlined(lines, false);
}

/** Returns a part with a circle about each point. */
export function discsPart(middles: readonly XY[], radius: Mm): Part {
  return ringsPart(middles.map((center) => [arc(center, radius, 0, 2 * Math.PI)]));
}

/**
 * Returns a part with four arms about a point, each from `from` to `to` away from it.
 * @param turn direction of the first arm, radians clockwise from x
 */
export function crossPart(middle: XY, from: number, to: number, turn = 0): Part {
  const quarters = [0, 1, 2, 3].map((quarter) => turn + (quarter * Math.PI) / 2);
  return linesPart(quarters.map((angle) => [polar(middle, from, angle), polar(middle, to, angle)]));
}

/**
 * Returns a line over a wider one in the color of paper, which keeps it legible on any hatch.
 * @param casing width of the wider line, as a multiple of `line`
 */
export function casedLine(part: Part, line: number, color: ColorRole, casing: number, dash?: Ink['dash']): Shape[] {
  return [inked({ line: line * casing, color: 'paper' }, part), inked({ line, color, dash }, part)];
}

/** Returns an arc. @param start radians clockwise from x @param sweep radians, clockwise where positive */
export function arc(center: XY, radius: Mm, start: number, sweep: number): Edge {
  return { kind: 'arc', center, radius, start, sweep };
}

/** Returns the point at a distance from another one. @param angle radians clockwise from x */
export function polar([x, y]: XY, distance: number, angle: number): XY {
  return [x + distance * Math.cos(angle), y + distance * Math.sin(angle)];
}

function runsExtent(runs: readonly Run[]): Extent {
  const bounds = new Bounds();
  for (const run of runs) {
    for (const step of run) {
      if (!('kind' in step)) bounds.add(step[0], step[1]);
      else if (step.kind === 'arc') addArc(bounds, step);
      else {
        bounds.add(step.from[0], step.from[1]);
        bounds.add(step.to[0], step.to[1]);
      }
    }
  }
  return bounds;
}

/** A rectangle that grows with each point: a large plan has tens of thousands of arcs, too many for a list of points each. */
class Bounds implements Extent {
  minX = Number.POSITIVE_INFINITY;
  minY = Number.POSITIVE_INFINITY;
  maxX = Number.NEGATIVE_INFINITY;
  maxY = Number.NEGATIVE_INFINITY;

  add(x: Mm, y: Mm): void {
    if (x < this.minX) this.minX = x;
    if (x > this.maxX) this.maxX = x;
    if (y < this.minY) this.minY = y;
    if (y > this.maxY) this.maxY = y;
  }
}

const TURN = 2 * Math.PI;

/** Adds the ends of an arc, and where it is farthest right, down, left and up. */
function addArc(bounds: Bounds, { center: [x, y], radius, start, sweep }: Extract<Edge, { kind: 'arc' }>): void {
  const length = Math.abs(sweep);
  const from = Math.min(start, start + sweep);
  const add = (angle: number) => bounds.add(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
  add(from);
  add(from + length);
  for (let quarter = 0; quarter < 4; quarter++) {
    const after = ((((quarter / 4) * TURN - from) % TURN) + TURN) % TURN;
    if (after < length) add(from + after);
  }
}

/** Draws the outlines of a part on a path: one of the canvas, or one that becomes text. */
export function trace(path: Pick<CanvasPath, 'moveTo' | 'lineTo' | 'arc' | 'closePath'>, { outlines }: Part): void {
  for (const { run, closed } of outlines) {
    let before: Run[number] | undefined;
    for (const step of run) {
      const isEdge = 'kind' in step;
      // An edge starts where the edge before it ends, so no line is needed between them.
      if (!before || !isEdge || !('kind' in before)) {
        const [x, y] = isEdge ? onEdge(step, 0) : step;
        if (before) path.lineTo(x, y);
        else path.moveTo(x, y);
      }
      if (isEdge) traceEdge(path, step);
      before = step;
    }
    if (closed && run.length > 0) path.closePath();
  }
}

function traceEdge(path: Pick<CanvasPath, 'lineTo' | 'arc'>, edge: Edge): void {
  if (edge.kind === 'line') {
    path.lineTo(edge.to[0], edge.to[1]);
    return;
  }
  const { center, radius, start, sweep } = edge;
  path.arc(center[0], center[1], radius, start, start + sweep, sweep < 0);
}
