import * as v from 'valibot';
import type { Plan } from '../../plan/model.ts';
import {
  about,
  angle,
  filledText,
  instant,
  LARGEST_IN_HOUSE,
  length,
  list,
  listOrNone,
  name,
  note,
  nullWhenUnknown,
  numberAboveZero,
  numberFrom,
  oneOf,
  record,
  text,
} from './leaves.ts';
import { LevelSchema } from './level.ts';
import { REPORT_EXTRAS, UNCERTAINTY } from './report-facts.ts';
import { KIT_EXTRAS, PLAN_EXTRAS, radonUnit, radonValue, VISIT_EXTRAS } from './test-record.ts';

/** The version that is written, and the newest that is read. */
export const VERSION = 1;

/** A section that may be omitted as a whole or key by key: each key has a neutral default. */
function section<const E extends v.ObjectEntries>(entries: E, words: string) {
  // Every entry is optional, so an empty object is valid and yields all defaults.
  return v.optional(record(entries, words), {} as v.InferInput<v.LooseObjectSchema<E, string>>);
}

const DisplaySchema = section(
  { length: v.optional(oneOf(['feet-inches', 'metric']), 'feet-inches'), radon: v.optional(radonUnit(), 'pCi/L') },
  'an object with length and radon',
);

const SiteSchema = section(
  {
    label: v.optional(name(), ''),
    timeZone: v.optional(
      about(filledText('the name of a time zone, like America/New_York'), 'A zone of the IANA time zone database.'),
      'UTC',
    ),
    latitude: about(
      nullWhenUnknown(numberFrom(-90, 90, 'a number of degrees')),
      'North of the equator; null: not known.',
    ),
    longitude: about(
      nullWhenUnknown(numberFrom(-180, 180, 'a number of degrees')),
      'East of Greenwich; null: not known.',
    ),
    north: v.optional(about(angle(), 'Clockwise from straight up the page to true north.'), 0),
    northAnswered: about(
      v.exactOptional(v.boolean('true or false')),
      'False: `north` is only what a new plan begins with; left out: it was answered, if it is there.',
    ),
    horizon: about(
      v.exactOptional(numberFrom(0, 90, 'a number of degrees')),
      'Altitude of the sun below which it does not count; left out: 3.',
    ),
    purpose: v.optional(oneOf(['own-household', 'property-transfer', 'after-mitigation']), 'own-household'),
    purposeAnswered: about(
      v.exactOptional(v.boolean('true or false')),
      'False: the purpose is only what a new plan begins with; left out: it was answered.',
    ),
  },
  'an object with label, timeZone, latitude, longitude, north and purpose',
);

export const OverrideSchema = about(
  record(
    {
      rule: about(filledText('the id of a rule'), 'A rule with one least distance.'),
      distance: about(length(LARGEST_IN_HOUSE), 'Takes the place of the published least distance.'),
      note: v.optional(about(note(), 'Why; must be given where the override loosens the rule.'), ''),
    },
    'an override with rule and distance',
  ),
  "A distance of one's own in place of a published one.",
);

/** Far more than the rules of any profile. */
const MOST_OVERRIDES = 100;

const ProtocolSchema = section(
  {
    profile: v.optional(filledText('the id of a profile'), 'home-short-term'),
    overrides: listOrNone(OverrideSchema, 'a list of overrides', MOST_OVERRIDES),
  },
  'an object with profile and overrides',
);

/** The longest exposure of a kit, h: more than a year. */
const MOST_HOURS = 10_000;
/** The greatest error of a tape, mm: 1 m. */
export const LARGEST_TOLERANCE = 1_000;

const KitSchema = section(
  {
    kind: v.optional(text(), 'charcoal-barrier'),
    minimumHours: v.optional(numberAboveZero('a number of hours', MOST_HOURS), 48),
    maximumHours: v.optional(numberAboveZero('a number of hours', MOST_HOURS), 96),
    labDays: v.optional(numberFrom(0, 3650, 'a number of days'), 5),
    ...KIT_EXTRAS,
  },
  'an object with kind, minimumHours, maximumHours and labDays',
);

const VisitSchema = section(
  { closedSince: instant(), mitigationOnSince: instant(), start: instant(), end: instant(), ...VISIT_EXTRAS },
  'an object with closedSince, mitigationOnSince, start and end',
);

export const ConditionSchema = about(
  record(
    {
      item: filledText('the name of a condition'),
      state: oneOf(['kept', 'broken', 'not-applicable', 'unknown']),
      at: instant(),
      note: v.optional(note(), ''),
      by: about(v.exactOptional(text()), 'Who confirmed it.'),
    },
    'a condition with item and state',
  ),
  'One of the closed-building conditions and whether it was met.',
);

export const ReadingSchema = about(
  record(
    {
      detector: about(filledText('the id of a detector'), 'A detector of this plan.'),
      value: radonValue(),
      unit: radonUnit(),
      belowLimit: about(
        v.exactOptional(v.boolean('true or false')),
        'The laboratory gave it as below its detection limit.',
      ),
      uncertainty: UNCERTAINTY,
    },
    'a reading with detector, value and unit',
  ),
  'What the laboratory reported for one detector.',
);

export const PlanSchema = v.pipe(
  record(
    {
      format: v.literal('stillspot-plan', '"stillspot-plan"'),
      version: v.literal(VERSION, String(VERSION)),
      title: v.optional(text(), ''),
      display: DisplaySchema,
      site: SiteSchema,
      protocol: ProtocolSchema,
      tapeTolerance: v.optional(about(length(LARGEST_TOLERANCE), 'How far a sketched distance may be off.'), 25.4),
      levels: v.pipe(list(LevelSchema, 'a list of levels'), v.minLength(1, 'at least one level')),
      kit: KitSchema,
      visit: VisitSchema,
      conditions: listOrNone(ConditionSchema, 'a list of conditions'),
      readings: listOrNone(ReadingSchema, 'a list of readings'),
      ...PLAN_EXTRAS,
      ...REPORT_EXTRAS,
    },
    'a plan with format, version and levels',
  ),
  v.title('Stillspot plan'),
);

/** Read-only and without the index signature of preserved unknown keys, so that schema and model can be compared. */
type Plain<T> = T extends readonly [infer A, infer B]
  ? readonly [Plain<A>, Plain<B>]
  : T extends readonly (infer E)[]
    ? readonly Plain<E>[]
    : T extends object
      ? { readonly [K in keyof T as string extends K ? never : K]: Plain<T[K]> }
      : T;
type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;
type Holds<T extends true> = T;
/**
 * Fails to compile when the schema and `model.ts` differ in a key or a type.
 *
 * @public
 */
export type SchemaAgreesWithModel = Holds<Same<Plain<v.InferOutput<typeof PlanSchema>>, Plain<Plan>>>;
