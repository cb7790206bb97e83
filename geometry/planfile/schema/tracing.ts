import * as v from 'valibot';
import { about, angle, name, numberAboveZero, numberFrom, record } from './leaves.ts';
import { PointSchema } from './shape.ts';

const PICTURE_WORDS = 'a picture as a data address (PNG, JPEG or WebP, base64)';

/** A picture is stored inside the file, so that a plan is one file and nothing is fetched from elsewhere. */
export const pictureSchema = () =>
  v.pipe(
    v.string(PICTURE_WORDS),
    v.regex(/^data:image\/(?:png|jpeg|webp);base64,[A-Za-z0-9+/]+={0,2}$/, PICTURE_WORDS),
  );

const pixels = () => numberFrom(1, 20_000, 'a number of pixels');

export const TracingSchema = about(
  record(
    {
      image: pictureSchema(),
      name: v.optional(name(), ''),
      width: pixels(),
      height: pixels(),
      at: about(PointSchema, 'The middle of the picture.'),
      scale: about(numberAboveZero('a number of mm'), 'One pixel of the picture.'),
      turn: v.optional(angle(), 0),
      opacity: v.optional(numberFrom(0, 1, 'a share'), 0.6),
      shown: v.optional(v.boolean('true or false'), true),
      locked: v.optional(v.boolean('true or false'), false),
    },
    'a tracing with image, width, height, at and scale',
  ),
  'A photo or scan that lies under the level, to be drawn over. No verdict looks at it.',
);
