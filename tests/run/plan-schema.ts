import { toJsonSchema } from '@valibot/to-json-schema';
import {
  DetectorSchema,
  FixtureSchema,
  LevelSchema,
  ObjectSchema,
  OpeningSchema,
  RoomSchema,
  StreamSchema,
  WallSchema,
} from '../../geometry/planfile/schema/level.ts';
import { ConditionSchema, OverrideSchema, PlanSchema, ReadingSchema } from '../../geometry/planfile/schema/plan.ts';
import {
  BoxSchema,
  CircleSchema,
  PointSchema,
  PolygonSchema,
  ShapeSchema,
} from '../../geometry/planfile/schema/shape.ts';

/** Path of the published schema from the root of the project. */
export const SCHEMA_FILE = 'geometry/planfile/plan.schema.json';

const DESCRIPTION = [
  'A floor plan with radon detectors, as Stillspot writes it.',
  'Lengths are millimeters, angles degrees clockwise on screen with 0 along +x; x runs right and y runs down the page.',
  'Further keys may stand anywhere and are kept.',
  'What a schema cannot say is checked by the reader as well: ids that are unique in the file, references, openings inside',
  'their walls, simple outlines, tops not below bottoms, overrides, real dates and time zones.',
].join(' ');

/** Returns the JSON Schema (draft 2020-12) of a plan file as text, made from the definition that the reader validates with. */
export function planSchemaText(): string {
  const { $schema, ...schema } = toJsonSchema(PlanSchema, {
    target: 'draft-2020-12',
    // The only check is "exactly one kind of shape"; the schema states the same with `oneOf`.
    ignoreActions: ['check'],
    definitions: {
      point: PointSchema,
      circle: CircleSchema,
      box: BoxSchema,
      polygon: PolygonSchema,
      shape: ShapeSchema,
      stream: StreamSchema,
      wall: WallSchema,
      opening: OpeningSchema,
      room: RoomSchema,
      fixture: FixtureSchema,
      object: ObjectSchema,
      detector: DetectorSchema,
      level: LevelSchema,
      override: OverrideSchema,
      condition: ConditionSchema,
      reading: ReadingSchema,
    },
  });
  const head = { $schema, $id: 'urn:stillspot:plan:1', title: schema.title, description: DESCRIPTION };
  return `${JSON.stringify({ ...head, ...schema }, null, 2)}\n`;
}
