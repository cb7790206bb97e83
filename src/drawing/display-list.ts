/** The plan as a list of shapes and texts, for any backend to draw in the order of the list. */
import type { Edge } from '../../geometry/arrangement/types.ts';
import type { Mm, XY } from '../../geometry/plan/model.ts';
import { type Extent, ringExtent } from '../../geometry/plane/body.ts';
import { onEdge } from '../../geometry/region/visible-edges.ts';
import type { ColorRole, Ink } from './inks.ts';

/** Points to go on to and edges to follow; an arc is joined to the point before it. */
export type Run = readonly (XY | Edge)[];

/** Outlines that are made once and kept, with the rectangle that holds them; the width of lines comes on top. */
export interface Part {
  readonly extent: Extent;
  readonly outlines: readonly { readonly run: Run; readonly closed: boolean }[];
}

/** Parts that are drawn in one ink, as one: overlaps are not drawn twice. */
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

/** @param extent where it is known already */
export function ringsPart(rings: readonly Run[], extent = runsExtent(rings)): Part {
  return { extent, outlines: rings.map((run) => ({ run, closed: true })) };
}

export function linesPart(lines: readonly Run[]): Part {
  return { extent: runsExtent(lines), outlines: lines.map((run) => ({ run, closed: false })) };
}

/** A circle about each middle. */
export function discsPart(middles: readonly XY[], radius: Mm): Part {
  return ringsPart(middles.map((center) => [arc(center, radius, 0, 2 * Math.PI)]));
}

/** Four arms about a middle. @param turn of the first, radians */
export function crossPart(middle: XY, from: number, to: number, turn = 0): Part {
  const quarters = [0, 1, 2, 3].map((quarter) => turn + (quarter * Math.PI) / 2);
  return linesPart(quarters.map((angle) => [polar(middle, from, angle), polar(middle, to, angle)]));
}

/** A line in a casing of paper, which keeps it legible on any hatch. @param casing width of it, as a multiple of the line's */
export function casedLine(part: Part, line: number, color: ColorRole, casing: number, dash?: Ink['dash']): Shape[] {
  return [inked({ line: line * casing, color: 'paper' }, part), inked({ line, color, dash }, part)];
}

/** @param start radians clockwise from x, likewise `sweep` */
export function arc(center: XY, radius: Mm, start: number, sweep: number): Edge {
  return { kind: 'arc', center, radius, start, sweep };
}

/** The point at a distance from another one. @param angle radians clockwise from x */
export function polar([x, y]: XY, distance: number, angle: number): XY {
  return [x + distance * Math.cos(angle), y + distance * Math.sin(angle)];
}

function runsExtent(runs: readonly Run[]): Extent {
  const points: XY[] = [];
  for (const step of runs.flat()) {
    if (!('kind' in step)) points.push(step);
    else if (step.kind === 'line') points.push(step.from, step.to);
    else points.push(...arcReach(step));
  }
  return ringExtent(points);
}

/** The ends of an arc, and where it is farthest right, down, left and up. */
function arcReach({ center, radius, start, sweep }: Extract<Edge, { kind: 'arc' }>): readonly XY[] {
  const from = Math.min(start, start + sweep);
  const turn = 2 * Math.PI;
  const quarters = [0, 0.25, 0.5, 0.75].map((share) => (((share * turn - from) % turn) + turn) % turn);
  const turns = [0, Math.abs(sweep), ...quarters.filter((quarter) => quarter < Math.abs(sweep))];
  return turns.map((each) => polar(center, radius, from + each));
}

/** Draws the outlines of a part on a path: one of the canvas, or one that becomes text. */
export function trace(path: Pick<CanvasPath, 'moveTo' | 'lineTo' | 'arc' | 'closePath'>, { outlines }: Part): void {
  for (const { run, closed } of outlines) {
    let before: Run[number] | undefined;
    for (const step of run) {
      const isEdge = 'kind' in step;
      // Ends of edges that follow one another are the same point already.
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
