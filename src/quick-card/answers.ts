import * as v from 'valibot';
import { SIDES } from '../../geometry/dimension/wall-gaps.ts';
import { type Plan, ROOM_USES } from '../../geometry/plan/model.ts';
import { instantError } from '../../geometry/planfile/instant.ts';
import { CEILINGS } from '../state/ceiling-range.ts';

/** The answers from which a quick card is made. Lengths in mm; null and missing keys: not answered, or not in the leaflet. */

export const LEVEL_ANSWERS = ['basement', 'slab', 'crawlspace', 'over-basement', 'unused-basement', 'upper'] as const;
export type LevelAnswer = (typeof LEVEL_ANSWERS)[number];

/** Groups of things that the card asks about. All but the last are rules of `lookedFor`. */
export const GROUP_IDS = ['outside-opening', 'moving-air', 'heat', 'sump', 'floor-drain', 'washer-dryer'] as const;
export type GroupId = (typeof GROUP_IDS)[number];

export const THING_KINDS = ['window', 'outside-door', 'vent', 'fan', 'heater', 'sump', 'drain', 'washer'] as const;
export type ThingKind = (typeof THING_KINDS)[number];

/** Rules for which a leaflet may give another distance. */
export const LEAFLET_RULES = ['outside-opening', 'outside-wall', 'moving-air', 'heat', 'sump', 'object'] as const;

/** Number of squares of the picture along each side of the room. */
export const SQUARES = 5;
/** Place of a thing on the same floor, but at least 10 ft from the room. */
export const FAR = 'far';

const length = v.pipe(v.number(), v.minValue(1), v.maxValue(100_000));
const hours = v.pipe(v.number(), v.minValue(1), v.maxValue(10_000));
const square = v.pipe(v.string(), v.regex(/^(?:-1|[0-5]),(?:-1|[0-5])$/));
const instant = v.pipe(
  v.string(),
  v.check((text) => instantError(text) === null),
);
const or = <const T, S extends v.GenericSchema>(schema: S, otherwise: T) =>
  v.fallback(v.optional(schema, otherwise as never), otherwise as never);

const LeafletSchema = v.object({
  minimumHours: or(v.nullable(hours), null),
  maximumHours: or(v.nullable(hours), null),
  /** Days from the pick-up until the laboratory must have it. */
  labDays: or(v.nullable(v.pipe(v.number(), v.minValue(0), v.maxValue(365))), null),
  /** Lowest and highest place above the floor, mm. */
  lowest: or(v.nullable(length), null),
  highest: or(v.nullable(length), null),
  distances: or(v.record(v.picklist(LEAFLET_RULES), v.optional(length)), {}),
});

const SupportSchema = v.variant('kind', [
  /** A small table that can be moved to the spot; `top` is null if its height is not measured. */
  v.object({ kind: v.literal('table'), top: v.nullable(length) }),
  /** A shelf on a wall, at a square beside that wall. */
  v.object({ kind: v.literal('shelf'), top: v.nullable(length), square }),
]);

const AnswersSchema = v.object({
  unit: or(v.picklist(['feet-inches', 'metric']), 'feet-inches'),
  leaflet: or(LeafletSchema, v.parse(LeafletSchema, {})),
  kits: or(v.picklist([1, 2]), 1),
  level: or(v.nullable(v.picklist(LEVEL_ANSWERS)), null),
  use: or(v.nullable(v.picklist(ROOM_USES)), null),
  /** Inside lengths, mm: left to right, and from the wall with the entrance to the far wall. */
  across: or(v.nullable(length), null),
  along: or(v.nullable(length), null),
  /** Walls with another room of the house behind them. All others count as outside. */
  inside: or(v.array(v.picklist(SIDES)), []),
  things: or(v.array(v.object({ kind: v.picklist(THING_KINDS), square: v.union([square, v.literal(FAR)]) })), []),
  /** Groups that were looked for on this floor of the house and are not there. */
  none: or(v.array(v.picklist(GROUP_IDS)), []),
  support: or(v.nullable(SupportSchema), null),
  /** Height from floor to ceiling, mm. */
  ceiling: or(v.nullable(v.pipe(v.number(), v.minValue(CEILINGS.least), v.maxValue(CEILINGS.most))), null),
  /** When the house can be closed, RFC 3339. */
  closing: or(v.nullable(instant), null),
  /** Whether pets or small children live in the house. */
  company: or(v.nullable(v.boolean()), null),
});

export type CardAnswers = v.InferOutput<typeof AnswersSchema>;
export type Leaflet = v.InferOutput<typeof LeafletSchema>;
export type Support = v.InferOutput<typeof SupportSchema>;
export type Thing = CardAnswers['things'][number];

export const NO_ANSWERS: CardAnswers = v.parse(AnswersSchema, {});

/** The key of the answers in a plan file. The reader of plans preserves it; no verdict depends on it. */
const KEY = 'quickCard';

/** Returns the answers from which a plan was made; null for any other plan. An invalid value counts as not answered. */
export function answersOf(plan: Plan): CardAnswers | null {
  const found = (plan as { readonly [KEY]?: unknown })[KEY];
  if (typeof found !== 'object' || found === null) return null;
  const read = v.safeParse(AnswersSchema, found);
  return read.success ? read.output : NO_ANSWERS;
}

/** Returns the plan with the answers from which it was made. */
export function withAnswers(plan: Plan, answers: CardAnswers): Plan {
  const kept: Plan & { readonly [KEY]: CardAnswers } = { ...plan, [KEY]: answers };
  return kept;
}
