import type { Edge } from '../../../geometry/arrangement/types.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { shapeBody, shapeMiddle, shapeRing } from '../../../geometry/plane/body.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { onEdge } from '../../../geometry/region/visible-edges.ts';
import { type Part, polar, type Run } from '../display-list.ts';
import { outlinePart, streamShapes, type Thing } from '../things.ts';
import { openingShapes } from '../walls.ts';
import type { LabelSheet } from './label.ts';
import type { Ground } from './placer.ts';
import { lineSlot, type Slot, slotAt } from './slot.ts';

/** Takes the ground of everything that is drawn under the labels. */
export function takeGround(model: LevelModel, sheet: LabelSheet): void {
  const { fixtures, objects } = model.level;
  for (const { from, to, thickness } of model.pieces) {
    const slot = lineSlot(from, to, thickness);
    sheet.placer.take({ ...slot, width: slot.width + thickness }, 'wall');
  }
  for (const { parts } of openingShapes(model, new Set()).slice(1)) takeLines(parts, 'outline', sheet);
  for (const thing of [...fixtures, ...objects]) {
    sheet.placer.take(thingSlot(thing), 'thing', thing.id);
    takeLines([outlinePart(thing.shape)], 'outline', sheet, thing.id);
  }
  for (const { stream, shape } of fixtures) {
    const air = stream ? streamShapes(stream, shapeMiddle(shape), 'fixture') : [];
    for (const { parts } of air) takeLines(parts, 'line', sheet);
  }
}

/** Takes the lines of parts. The slots of a part are computed only once a label overlaps its extent. */
export function takeLines(parts: readonly Part[], ground: Ground, sheet: LabelSheet, owner?: string): void {
  const more = thinWidth(sheet);
  for (const { extent, outlines } of parts) {
    const { minX, minY, maxX, maxY } = extent;
    const size = { width: maxX - minX + more, height: maxY - minY + more };
    const slots = () => outlines.flatMap(({ run, closed }) => thinSlots(closed ? closedRun(run) : run, sheet));
    sheet.placer.take(slotAt(size, [(minX + maxX) / 2, (minY + maxY) / 2]), ground, owner, slots);
  }
}

function closedRun(run: Run): Run {
  return [...run, ...run.slice(0, 1).map((step) => ('kind' in step ? onEdge(step, 0) : step))];
}

/** Returns the bounding rectangle of a thing: turned with a box, else upright. */
export function thingSlot({ shape }: Thing): Slot {
  if ('box' in shape)
    return slotAt({ width: shape.box.width, height: shape.box.depth }, shape.box.center, shape.box.turn);
  const { minX, minY, maxX, maxY } = shapeBody(shape).extent;
  return slotAt({ width: maxX - minX, height: maxY - minY }, shapeMiddle(shape));
}

/** Returns the corners of a thing; for a circle, points along it. */
export const outlineOf = memoize(({ shape }: Thing): readonly XY[] => {
  if (!('circle' in shape)) return shapeRing(shape);
  const { center, radius } = shape.circle;
  return Array.from({ length: 24 }, (_, i) => polar(center, radius, ((i + 1) * Math.PI) / 12));
});

function thinWidth({ type }: LabelSheet): number {
  return type.fine * 0.15;
}

/** Slots along a run. */
function thinSlots(run: Run, sheet: LabelSheet): readonly Slot[] {
  const points: XY[] = [];
  for (const [index, step] of run.entries()) {
    const before = run[index - 1];
    if (!('kind' in step)) points.push(step);
    else {
      const pieces = piecesOf(step, sheet);
      const first = before && 'kind' in before ? 1 : 0;
      for (let i = first; i <= pieces; i++) points.push(onEdge(step, i / pieces));
    }
  }
  return points.slice(1).map((to, i) => lineSlot(points[i] as XY, to, thinWidth(sheet)));
}

/** Number of chords that stay within a twentieth of the type size of an edge: names are placed that close to edges. */
function piecesOf(edge: Edge, { type }: LabelSheet): number {
  if (edge.kind === 'line') return 1;
  const most = 2 * Math.acos(Math.max(0.5, 1 - type.fine / 20 / Math.max(edge.radius, 1e-9)));
  return Math.max(1, Math.ceil(Math.abs(edge.sweep) / most));
}
