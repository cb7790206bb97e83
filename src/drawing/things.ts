import { unionExtent } from '../../geometry/level/level-extent.ts';
import { isOverhead } from '../../geometry/plan/items.ts';
import type {
  Fixture,
  FixtureKind,
  Level,
  Shape as Outline,
  PlanObject,
  Stream,
  XY,
} from '../../geometry/plan/model.ts';
import { shapeBody, shapeMiddle, shapeRing } from '../../geometry/plane/body.ts';
import type { Extent } from '../../geometry/plane/extent.ts';
import { memoize } from '../../geometry/plane/memoize.ts';
import { arc, discsPart, inked, linesPart, type Part, polar, ringsPart, type Shape } from './display-list.ts';
import type { ColorRole } from './inks.ts';

/** Fixtures and objects: their outline as drawn, with the sign of their kind where the trade has one. Plan mm. */

export type Thing = Fixture | PlanObject;

/** Returns the shapes of all things, objects under fixtures and lighter. @param isSeen whether a thing is drawn */
export function thingShapes(
  { objects, fixtures }: Level,
  chosen: ReadonlySet<string>,
  isSeen: (thing: Thing) => boolean = () => true,
): readonly Shape[] {
  return [...objects, ...fixtures]
    .filter(isSeen)
    .flatMap((thing) => (chosen.has(thing.id) ? chosenThing(thing) : thingAtRest(thing)));
}

const thingAtRest = memoize((thing: Thing) => shapesOf(thing, false));
const chosenThing = memoize((thing: Thing) => shapesOf(thing, true));

function shapesOf(thing: Thing, chosen: boolean): readonly Shape[] {
  const usual = 'kind' in thing ? 'fixture' : 'object';
  const color = chosen ? 'accent' : usual;
  const dash = isOverhead(thing) ? 'overhead' : undefined;
  const ink = { fill: `${usual}Fill`, line: chosen ? 'chosen' : usual, color, dash } as const;
  const outline = inked(ink, outlinePart(thing.shape));
  if (!('kind' in thing)) return [outline];
  const sign = signOf(thing.kind, thing.shape);
  return [
    ...(thing.stream ? streamShapes(thing.stream, shapeMiddle(thing.shape), color) : []),
    outline,
    ...(sign ? [inked({ line: 'sign', color }, sign)] : []),
  ];
}

export const outlinePart = memoize((shape: Outline): Part => {
  return 'circle' in shape ? discsPart([shape.circle.center], shape.circle.radius) : ringsPart([shapeRing(shape)]);
});

/** Returns the extent of a thing's outline and of the air that it blows. */
export const thingExtent = memoize((thing: Thing): Extent => {
  const { extent } = shapeBody(thing.shape);
  if (!('stream' in thing) || !thing.stream) return extent;
  return unionExtent(extent, discsPart([shapeMiddle(thing.shape)], thing.stream.reach).extent);
});

/**
 * Lines within the outline, in coordinates from -1 to 1 with x along the longer side; or the radius of a circle, as a share of half the
 * shorter side.
 */
type Sign = number | readonly (readonly [x1: number, y1: number, x2: number, y2: number])[];

const BLADES: Sign = [
  [-0.7, -0.7, 0.7, 0.7],
  [-0.7, 0.7, 0.7, -0.7],
];
const slots = (rows: readonly number[]): Sign => rows.map((y) => [-0.75, y, 0.75, y]);

/** A return has more slots than a supply, and they reach from end to end. */
const SIGNS: Partial<Readonly<Record<FixtureKind, Sign>>> = {
  'supply-register': slots([-0.45, 0, 0.45]),
  'return-grille': slots([-0.66, -0.33, 0, 0.33, 0.66]),
  'exhaust-fan': BLADES,
  'ceiling-fan': BLADES,
  'portable-fan': BLADES,
  'floor-drain': [
    [-0.7, 0, 0.7, 0],
    [0, -0.7, 0, 0.7],
  ],
  // The pit within its rim, the pipe within its cover.
  'sump-pit': 0.7,
  'mitigation-pipe': 0.5,
};

function signOf(kind: FixtureKind, shape: Outline): Part | null {
  const sign = SIGNS[kind];
  if (sign === undefined || 'polygon' in shape) return null;
  const middle = shapeMiddle(shape);
  const { width, depth, turn } =
    'circle' in shape ? { width: 2 * shape.circle.radius, depth: 2 * shape.circle.radius, turn: 0 } : shape.box;
  const [long, short] = [Math.max(width, depth) / 2, Math.min(width, depth) / 2];
  if (typeof sign === 'number') return discsPart([middle], short * sign);
  const angle = ((turn + (depth > width ? 90 : 0)) * Math.PI) / 180;
  const at = (u: number, v: number): XY => polar(polar(middle, u * long, angle), v * short, angle + Math.PI / 2);
  return linesPart(sign.map(([x1, y1, x2, y2]) => [at(x1, y1), at(x2, y2)]));
}

/** Shares of the reach at which the air is drawn as waves. */
const WAVES = [0.4, 0.6, 0.8] as const;

/** Returns the sector that a fixture blows over: its edge, waves across it, and an arrow along its middle. */
export function streamShapes({ direction, spread, reach }: Stream, middle: XY, color: ColorRole): readonly Shape[] {
  const half = (Math.min(spread, 360) * Math.PI) / 360;
  const along = (direction * Math.PI) / 180;
  const rim = arc(middle, reach, along - half, 2 * half);
  const waves = WAVES.map((share) => [arc(middle, reach * share, along - half * 0.7, half * 1.4)]);
  const [tail, tip] = [polar(middle, reach * 0.3, along), polar(middle, reach * 0.9, along)];
  const [left, right] = [2.6, -2.6].map((side) => polar(tip, reach * 0.06, along + side)) as [XY, XY];
  const arrow = [
    [tail, tip],
    [left, tip, right],
  ];
  return [
    inked({ line: 'sign', color, dash: 'overhead' }, ringsPart([half < Math.PI ? [middle, rim] : [rim]])),
    inked({ line: 'zone', color }, linesPart(waves)),
    inked({ line: 'sign', color }, linesPart(arrow)),
  ];
}
