import * as v from 'valibot';
import { FIXTURE_KINDS, OPENING_KINDS, ROOM_USES } from '../../plan/model.ts';
import {
  about,
  angle,
  coordinate,
  filledText,
  height,
  id,
  instant,
  LARGEST_IN_HOUSE,
  length,
  lengthAboveZero,
  list,
  listOrNone,
  name,
  nullWhenUnknown,
  numberFrom,
  oneOf,
  record,
  text,
} from './leaves.ts';
import { PointSchema, ShapeSchema } from './shape.ts';
import { TracingSchema } from './tracing.ts';

/** The thickest wall, and the greatest radius and height of a detector, mm. A larger number is in the wrong unit. */
const THICKEST = 10_000;
const WIDEST_DETECTOR = 10_000;
const TALLEST_DETECTOR = 10_000;

export const WallSchema = about(
  record(
    {
      id: id(),
      from: PointSchema,
      to: PointSchema,
      thickness: about(length(THICKEST), 'Half of it lies on either side of the line.'),
      thicknessAnswered: about(
        v.exactOptional(v.boolean('true or false')),
        'False: `thickness` is only what new walls begin with; left out: it is known.',
      ),
      side: v.optional(
        about(oneOf(['auto', 'outside', 'inside']), 'Whether the wall stands outdoors; "auto" asks the drawing.'),
        'auto',
      ),
    },
    'a wall with id, from, to and thickness',
  ),
  'A wall by its center-line.',
);

const measured = (key: string) =>
  about(
    v.exactOptional(v.boolean('true or false')),
    `False: nobody has measured \`${key}\`; left out: it was measured.`,
  );
const MEASURED_HEIGHTS = { bottomAnswered: measured('bottom'), topAnswered: measured('top') };

const SHADE_WORDS = '"covered", "well", or an object with overhang or obstruction';

const OverhangSchema = about(
  record(
    {
      depth: about(length(LARGEST_IN_HOUSE), 'How far it stands out from the outer face of the wall.'),
      above: about(length(LARGEST_IN_HOUSE), 'How far its underside is above the head of the opening.'),
    },
    'an overhang with depth and above',
  ),
  'A roof or an awning over the whole opening, which counts as going on at both sides of it.',
);

const PartialShadeSchema = record(
  {
    overhang: v.exactOptional(OverhangSchema),
    obstruction: about(
      v.exactOptional(numberFrom(0, 90, 'a number of degrees')),
      'Altitude below which the sun is hidden.',
    ),
  },
  SHADE_WORDS,
);

export const OpeningSchema = about(
  record(
    {
      id: id(),
      wall: about(filledText('the id of a wall'), 'The wall that holds it, on the same level.'),
      kind: oneOf(OPENING_KINDS),
      offset: about(coordinate(), "From the wall's `from` end to the near jamb, along the wall."),
      width: about(lengthAboveZero(), 'Along the wall.'),
      bottom: about(height(), 'Sill, above the floor.'),
      top: about(height(), 'Head, above the floor.'),
      ...MEASURED_HEIGHTS,
      glazed: about(
        v.exactOptional(v.boolean('true or false')),
        'Whether it lets light in while closed; left out: a window and a passage do, a door does not.',
      ),
      shade: about(
        v.exactOptional(v.nullable(v.union([oneOf(['covered', 'well']), PartialShadeSchema], SHADE_WORDS))),
        'What keeps direct sun out: a cover that stays closed, a window well, or an overhang and what stands outside.',
      ),
    },
    'an opening with id, wall, kind, offset, width, bottom and top',
  ),
  'A door, a window or a passage in a wall.',
);

export const RoomSchema = about(
  record(
    { id: id(), name: name(), use: oneOf(ROOM_USES), at: about(PointSchema, 'A point inside the room that it names.') },
    'a room label with id, name, use and at',
  ),
  'A name and a use, pinned to a room.',
);

export const StreamSchema = about(
  record(
    {
      direction: angle(),
      spread: about(numberFrom(0, 360, 'a number of degrees'), 'The whole angle, half of it on either side.'),
      reach: about(length(LARGEST_IN_HOUSE), 'From the middle of the shape.'),
    },
    'a stream with direction, spread and reach',
  ),
  'The airflow of a fixture: a sector from the middle of its shape.',
);

const bottom = () => about(height(), 'Above the floor.');
const top = () => about(height(), 'Above the floor, not below `bottom`.');

export const FixtureSchema = about(
  record(
    {
      id: id(),
      kind: oneOf(FIXTURE_KINDS),
      name: v.optional(name(), ''),
      shape: ShapeSchema,
      bottom: bottom(),
      top: top(),
      ...MEASURED_HEIGHTS,
      stream: nullWhenUnknown(StreamSchema),
    },
    'a fixture with id, kind, shape, bottom and top',
  ),
  'Something that moves air, heats, is wet or open to the soil.',
);

export const ObjectSchema = about(
  record(
    { id: id(), name: v.optional(name(), ''), shape: ShapeSchema, bottom: bottom(), top: top(), ...MEASURED_HEIGHTS },
    'an object with id, shape, bottom and top',
  ),
  'Furniture, shelves, boxes: whatever stands or hangs in a room.',
);

export const DetectorSchema = about(
  record(
    {
      id: id(),
      label: v.optional(name(), ''),
      at: about(PointSchema, 'Its upright axis.'),
      base: about(height(), 'Its underside, above the floor.'),
      radius: length(WIDEST_DETECTOR),
      tall: length(TALLEST_DETECTOR),
      pair: about(
        nullWhenUnknown(filledText('text that is not empty')),
        'Detectors with the same text stand side by side; null for a single one.',
      ),
      support: about(
        v.exactOptional(v.nullable(oneOf(['hung', 'stand']))),
        'What carries it where nothing drawn does; null: not said.',
      ),
    },
    'a detector with id, at, base, radius and tall',
  ),
  'A detector as an upright cylinder.',
);

const SunWordSchema = about(
  record(
    {
      start: instant(),
      end: instant(),
      latitude: nullWhenUnknown(numberFrom(-90, 90, 'a number of degrees')),
      longitude: nullWhenUnknown(numberFrom(-180, 180, 'a number of degrees')),
      north: nullWhenUnknown(angle()),
    },
    'an object with start, end, latitude, longitude and north',
  ),
  'Of "direct-sun": the times of the visit, the place and north that the word was given for; null: not known then.',
);

const LookedForBySchema = about(
  record(
    {
      rule: filledText('the id of a rule'),
      by: v.optional(text(), ''),
      at: instant(),
      sun: v.exactOptional(SunWordSchema),
    },
    'an object with rule, by and at',
  ),
  'Who inspected a level for the subjects of a rule and found none.',
);

export const LevelSchema = about(
  record(
    {
      id: id(),
      name: name(),
      order: about(numberFrom(0, 1000, 'a number'), '0 is the lowest.'),
      ceiling: about(lengthAboveZero(LARGEST_IN_HOUSE), 'From floor to ceiling.'),
      ceilingAnswered: about(
        v.exactOptional(v.boolean('true or false')),
        'False: `ceiling` is only what a new level begins with; left out: it was measured.',
      ),
      living: oneOf(['lived-in', 'could-be', 'no']),
      livingAnswered: about(
        v.exactOptional(v.boolean('true or false')),
        'False: `living` is only what a new level begins with; left out: it was answered.',
      ),
      ground: oneOf(['basement', 'slab', 'crawlspace', 'none']),
      groundAnswered: about(
        v.exactOptional(v.boolean('true or false')),
        'False: `ground` is only what a new level begins with; left out: it was answered.',
      ),
      walls: list(WallSchema, 'a list of walls'),
      openings: listOrNone(OpeningSchema, 'a list of openings'),
      rooms: listOrNone(RoomSchema, 'a list of room labels'),
      fixtures: listOrNone(FixtureSchema, 'a list of fixtures'),
      objects: listOrNone(ObjectSchema, 'a list of objects'),
      detectors: listOrNone(DetectorSchema, 'a list of detectors'),
      lookedFor: about(
        v.exactOptional(list(filledText('the id of a rule'), 'a list of rule ids')),
        'Rules whose subjects were looked for on this level and are not there.',
      ),
      lookedForBy: about(
        v.exactOptional(list(LookedForBySchema, 'a list of inspections')),
        'Who inspected for the subjects of a rule, and when.',
      ),
      tracing: v.exactOptional(TracingSchema),
    },
    'a level with id, name, order, ceiling, living, ground and walls',
  ),
  'One level of the house and all that is drawn on it.',
);
