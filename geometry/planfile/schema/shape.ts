import * as v from 'valibot';
import type { Shape } from '../../plan/model.ts';
import { about, angle, coordinate, LARGEST_IN_HOUSE, LONGEST_LIST, length, record } from './leaves.ts';

export const PointSchema = v.strictTuple([coordinate(), coordinate()], 'a point: [x, y] in mm');

export const CircleSchema = record(
  { center: PointSchema, radius: length(LARGEST_IN_HOUSE) },
  'a circle with center and radius',
);

export const BoxSchema = record(
  {
    center: PointSchema,
    width: about(length(LARGEST_IN_HOUSE), "Along the box's own x axis, before the turn."),
    depth: about(length(LARGEST_IN_HOUSE), "Along the box's own y axis, before the turn."),
    turn: v.optional(about(angle(), 'Clockwise on screen, about the center.'), 0),
  },
  'a box with center, width, depth and turn',
);

const POINTS = `a list of 3 to ${LONGEST_LIST.toLocaleString('en-US')} points`;
export const PolygonSchema = record(
  { points: v.pipe(v.array(PointSchema, POINTS), v.minLength(3, POINTS), v.maxLength(LONGEST_LIST, POINTS)) },
  'a polygon with points',
);

const KEYS = ['circle', 'box', 'polygon'] as const;
const ONE_SHAPE = 'a shape: one of "circle", "box" or "polygon"';

/**
 * Exactly one of the three. Because objects preserve unknown keys, a plain union would read a shape with both `circle`
 * and `box` as a circle, and measure the wrong body.
 */
export const ShapeSchema = v.pipe(
  record(
    { circle: v.optional(CircleSchema), box: v.optional(BoxSchema), polygon: v.optional(PolygonSchema) },
    ONE_SHAPE,
  ),
  v.check((shape) => KEYS.filter((key) => key in shape).length === 1, ONE_SHAPE),
  v.metadata({ oneOf: KEYS.map((key) => ({ required: [key] })) }),
  // The check guarantees that exactly one of the three keys is present and valid.
) as v.GenericSchema<unknown, Shape>;
