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
import { type Extent, shapeBody, shapeMiddle, shapeRing } from '../../geometry/plane/body.ts';
import { memoize } from '../../geometry/plane/memoize.ts';
import {
  arc,
  arcRingsPart,
  discsPart,
  edgesPart,
  type Ink,
  linesPart,
  type Part,
  ringsPart,
  type Shape,
} from './display-list.ts';

/** Fixtures and objects: their outline as drawn, with the sign of their kind where the trade has one. Plan mm. */

/** Objects lie under fixtures, and are drawn lighter. @param isSeen what is not, is left out */
export function thingShapes(
  { objects, fixtures }: Level,
  chosen: ReadonlySet<string>,
  isSeen: (thing: Fixture | PlanObject) => boolean = () => true,
): readonly Shape[] {
  return [...objects, ...fixtures]
    .filter(isSeen)
    .flatMap((thing) => (chosen.has(thing.id) ? chosenThing(thing) : thingAtRest(thing)));
}

const thingAtRest = memoize((thing: Fixture | PlanObject) => shapesOf(thing, false));
const chosenThing = memoize((thing: Fixture | PlanObject) => shapesOf(thing, true));

function shapesOf(thing: Fixture | PlanObject, chosen: boolean): readonly Shape[] {
  const isFixture = 'kind' in thing;
  const usual = isFixture ? 'fixture' : 'object';
  const color = chosen ? 'accent' : usual;
  const outline: Ink = {
    fill: isFixture ? 'fixtureFill' : 'objectFill',
    line: chosen ? 'chosen' : usual,
    color,
    ...(isOverhead(thing) ? { dash: 'overhead' as const } : {}),
  };
  const own: Shape = { ink: outline, parts: [outlinePart(thing.shape)] };
  if (!isFixture) return [own];
  const sign = signOf(thing.kind, thing.shape);
  return [
    ...(thing.stream ? streamShapes(thing.stream, shapeMiddle(thing.shape), color) : []),
    own,
    ...(sign ? [{ ink: { line: 'sign', color } as const, parts: [sign] }] : []),
  ];
}

export function outlinePart(shape: Outline): Part {
  return 'circle' in shape ? discsPart([shape.circle.center], shape.circle.radius) : ringsPart([shapeRing(shape)]);
}

/** Its ground, and the air that it blows. */
export const thingExtent = memoize((thing: Fixture | PlanObject): Extent => {
  const { extent } = shapeBody(thing.shape);
  if (!('stream' in thing) || !thing.stream) return extent;
  const [x, y] = shapeMiddle(thing.shape);
  const { reach } = thing.stream;
  return {
    minX: Math.min(extent.minX, x - reach),
    minY: Math.min(extent.minY, y - reach),
    maxX: Math.max(extent.maxX, x + reach),
    maxY: Math.max(extent.maxY, y + reach),
  };
});

/** Lines within the outline, in a frame that runs from -1 to 1 both ways, the first along the longer side; or a circle so large. */
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
  const [x, y] = shapeMiddle(shape);
  const { width, depth, turn } =
    'circle' in shape ? { width: 2 * shape.circle.radius, depth: 2 * shape.circle.radius, turn: 0 } : shape.box;
  if (typeof sign === 'number') return discsPart([[x, y]], (Math.min(width, depth) / 2) * sign);
  const upright = depth > width ? 90 : 0;
  const [long, short] = [Math.max(width, depth) / 2, Math.min(width, depth) / 2];
  const angle = ((turn + upright) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const at = (u: number, v: number): XY => [x + u * long * cos - v * short * sin, y + u * long * sin + v * short * cos];
  return linesPart(sign.map(([x1, y1, x2, y2]) => [at(x1, y1), at(x2, y2)]));
}

/** Shares of the reach at which the air is drawn as waves. */
const WAVES = [0.4, 0.6, 0.8] as const;

/** The sector that it blows over: its edge, waves across it, and an arrow along its middle. */
export function streamShapes(
  { direction, spread, reach }: Stream,
  middle: XY,
  color: 'accent' | 'fixture' | 'object',
): readonly Shape[] {
  const half = (Math.min(spread, 360) * Math.PI) / 360;
  const along = (direction * Math.PI) / 180;
  const at = (share: number, angle = along): XY => [
    middle[0] + reach * share * Math.cos(angle),
    middle[1] + reach * share * Math.sin(angle),
  ];
  const rim = arc(middle, reach, along - half, 2 * half);
  const sides = [
    { kind: 'line', from: middle, to: at(1, along - half) },
    rim,
    { kind: 'line', from: at(1, along + half), to: middle },
  ] as const;
  const tip = at(0.9);
  const barb = (side: number): XY => [
    tip[0] + reach * 0.06 * Math.cos(along + side),
    tip[1] + reach * 0.06 * Math.sin(along + side),
  ];
  return [
    { ink: { line: 'sign', color, dash: 'overhead' }, parts: [arcRingsPart([half < Math.PI ? sides : [rim]])] },
    {
      ink: { line: 'zone', color },
      parts: [edgesPart(WAVES.map((share) => [arc(middle, reach * share, along - half * 0.7, half * 1.4)]))],
    },
    {
      ink: { line: 'sign', color },
      parts: [
        linesPart([
          [at(0.3), tip],
          [barb(2.6), tip, barb(-2.6)],
        ]),
      ],
    },
  ];
}
