import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Fixture, Mm, PlanObject, XY } from '../../../geometry/plan/model.ts';
import { type Extent, shapeBody, shapeMiddle, shapeRing } from '../../../geometry/plane/body.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { onEdge, type Stretch } from '../../../geometry/region/visible-edges.ts';
import { arc, type Part, type Run } from '../display-list.ts';
import { outlinePart, streamShapes } from '../things.ts';
import { openingShapes } from '../walls.ts';
import { type LabelMedium, toUnits, unitsOf } from './medium.ts';
import { type Ground, lineSlot, type Placer, type Slot } from './placer.ts';

/** Takes the ground of everything that is drawn under the labels, but for the edges of zones. */
export function takeGround(model: LevelModel, medium: LabelMedium, placer: Placer): void {
  for (const { from, to, thickness } of model.pieces) {
    const across = unitsOf(medium, thickness);
    const slot = lineSlot(toUnits(medium, from), toUnits(medium, to), across);
    placer.take({ ...slot, width: slot.width + across }, 'wall');
  }
  const openings = openingShapes(model, NONE).slice(1);
  for (const part of openings.flatMap(({ parts }) => parts))
    takeLines(part.extent, () => part, 'outline', medium, placer);
  for (const thing of [...model.level.fixtures, ...model.level.objects]) {
    const { extent } = shapeBody(thing.shape);
    placer.take(thingSlot(thing, medium), 'thing', thing.id);
    takeLines(extent, () => outlinePart(thing.shape), 'outline', medium, placer, thing.id);
  }
  for (const { stream, shape } of model.level.fixtures) {
    const air = stream ? streamShapes(stream, shapeMiddle(shape), 'fixture') : [];
    for (const part of air.flatMap(({ parts }) => parts)) takeLines(part.extent, () => part, 'line', medium, placer);
  }
}

/** Takes the lines of a part. What lies in its extent is worked out where a label comes near. */
function takeLines(
  { minX, minY, maxX, maxY }: Extent,
  part: () => Part,
  ground: Ground,
  medium: LabelMedium,
  placer: Placer,
  owner?: string,
): void {
  const [x, y] = toUnits(medium, [(minX + maxX) / 2, (minY + maxY) / 2]);
  const width = unitsOf(medium, maxX - minX) + thinWidth(medium);
  const height = unitsOf(medium, maxY - minY) + thinWidth(medium);
  const follow = (run: Run) => fineChords(run, medium);
  const lines = () => part().outlines.map((outline) => outlineChords(outline, follow));
  placer.take({ x, y, width, height, turn: 0 }, ground, owner, () => thinSlots(lines(), medium));
}

const NONE: ReadonlySet<string> = new Set();

/** Takes the ground of what is seen of a zone's outline. */
export function takeEdges(stretches: readonly Stretch[], medium: LabelMedium, placer: Placer): void {
  const lines = stretches.map((run) => fineChords(run, medium));
  for (const slot of thinSlots(lines, medium)) placer.take(slot, 'edge');
}

/** The rectangle that a thing lies in: a box as it is turned, else upright. */
export function thingSlot({ shape }: Fixture | PlanObject, medium: LabelMedium): Slot {
  const [x, y] = toUnits(medium, shapeMiddle(shape));
  if ('box' in shape) {
    const { width, depth, turn } = shape.box;
    return { x, y, width: unitsOf(medium, width), height: unitsOf(medium, depth), turn };
  }
  const ring = shapeRing(shape);
  const [xs, ys] = [ring.map(([px]) => px), ring.map(([, py]) => py)];
  const [width, height] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
  return { x, y, width: unitsOf(medium, width), height: unitsOf(medium, height), turn: 0 };
}

/** The corners of a thing, mm; of a circle as many as its line is followed by. */
export const outlineOf = memoize(({ shape }: Fixture | PlanObject): readonly XY[] => {
  if (!('circle' in shape)) return shapeRing(shape);
  return chords([arc(shape.circle.center, shape.circle.radius, 0, 2 * Math.PI)], () => Math.PI / 12).slice(1);
});

function outlineChords(outline: Part['outlines'][number], follow: (run: Run) => readonly XY[]) {
  const points = follow(outline.run);
  return outline.closed ? [...points, ...points.slice(0, 1)] : points;
}

/** A line that follows a run, with at most so much of an arc of some radius, mm, in one step. */
function chords(run: Run, turnOf: (radius: Mm) => number): readonly XY[] {
  return run.flatMap((step, index): readonly XY[] => {
    if (!('kind' in step)) return [step];
    const pieces = step.kind === 'line' ? 1 : Math.max(1, Math.ceil(Math.abs(step.sweep) / turnOf(step.radius)));
    const before = run[index - 1];
    const points = Array.from({ length: pieces }, (_, i) => onEdge(step, (i + 1) / pieces));
    return before && 'kind' in before ? points : [onEdge(step, 0), ...points];
  });
}

function fineChords(run: Run, medium: LabelMedium): readonly XY[] {
  return chords(run, (radius) => fineTurn(unitsOf(medium, radius), medium));
}

/** So much of an arc, radians, that its chord lies within a twentieth of the type's size of it: names stand that close to edges. */
function fineTurn(radius: number, { type }: LabelMedium): number {
  return 2 * Math.acos(Math.max(0.5, 1 - type.fine / 20 / Math.max(radius, 1e-9)));
}

function thinWidth({ type }: LabelMedium): number {
  return type.fine * 0.15;
}

/** Slots along lines of the plan, mm. */
function thinSlots(lines: readonly (readonly XY[])[], medium: LabelMedium): readonly Slot[] {
  const width = thinWidth(medium);
  return lines.flatMap((points) =>
    points.slice(1).map((to, i) => lineSlot(toUnits(medium, points[i] as XY), toUnits(medium, to), width)),
  );
}
