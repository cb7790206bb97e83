import * as v from 'valibot';
import {
  about,
  filledText,
  instant,
  instantOrNull,
  list,
  note,
  nullWhenUnknown,
  numberFrom,
  oneOf,
  record,
  text,
} from './leaves.ts';
import { pictureSchema } from './tracing.ts';

/**
 * The records of the test: working hours, the log of each detector, weather, agreement, earlier
 * results, blanks and spikes. All are optional; an omitted one is not written either.
 */

export const radonUnit = () => oneOf(['pCi/L', 'Bq/m3']);
export const radonValue = () => numberFrom(0, 1e9, 'a number');

/** An optional key without a default. */
const maybe = <const T extends v.GenericSchema>(schema: T) => v.exactOptional(schema);

const pattern = (regex: RegExp, words: string) => v.pipe(v.string(words), v.regex(regex, words));
const clockTime = () => pattern(/^(?:[01]\d|2[0-3]):[0-5]\d$/, 'a time of day, like 08:30');
const calendarDay = () => pattern(/^\d{4}-\d{2}-\d{2}$/, 'a day, like 2026-11-26');
const WorkingDaySchema = about(
  record(
    { day: oneOf(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']), from: clockTime(), to: clockTime() },
    'a working day with day, from and to',
  ),
  'Working hours on one day of the week, in the local time of the property.',
);

const PracticeSchema = record(
  { days: list(WorkingDaySchema, 'a list of working days'), daysOff: list(calendarDay(), 'a list of days') },
  'an object with days and daysOff',
);

const CustodySchema = about(
  record({ at: instant(), from: text(), to: text(), note: v.optional(note(), '') }, 'a transfer with at, from and to'),
  'A detector goes from one person to the next.',
);

const LogEntrySchema = about(
  record(
    {
      detector: about(filledText('the id of a detector'), 'A detector of this plan.'),
      serial: v.optional(text(), ''),
      placed: maybe(
        about(
          v.boolean('true or false'),
          'Recorded at the house as placed, at the start of the visit: it is locked on the plan.',
        ),
      ),
      placedBy: v.optional(text(), ''),
      fetchedBy: v.optional(text(), ''),
      sealed: about(instant(), 'When it was sealed again after the exposure.'),
      tampering: v.optional(oneOf(['none', 'seen', 'unknown']), 'unknown'),
      note: v.optional(note(), ''),
      photos: v.optional(list(pictureSchema(), 'a list of pictures'), []),
      custody: v.optional(list(CustodySchema, 'a list of transfers'), []),
    },
    'an entry of the log with detector',
  ),
  'What happened to one detector.',
);

const WeatherSchema = record({ at: instant(), text: note() }, 'a note on the weather with at and text');

const AgreementSchema = about(
  record(
    {
      signedBy: v.optional(text(), ''),
      at: instant(),
      refused: v.optional(v.boolean('true or false'), false),
      note: v.optional(note(), ''),
    },
    'an agreement with signedBy and at',
  ),
  'Not to interfere with the test.',
);

const EarlierSchema = about(
  record(
    {
      at: instant(),
      value: radonValue(),
      unit: radonUnit(),
      term: oneOf(['short-term', 'long-term']),
      note: v.optional(note(), ''),
      detector: maybe(
        about(
          v.nullable(filledText('the id of a detector')),
          'The detector that stands where it was; null where that is not answered.',
        ),
      ),
    },
    'an earlier result with value, unit and term',
  ),
  'A test at the same location that this one follows up.',
);

const QualitySchema = about(
  record(
    {
      id: filledText('an id: text that is not empty'),
      kind: oneOf(['blank', 'spike']),
      at: instant(),
      serial: v.optional(text(), ''),
      by: v.optional(text(), ''),
      value: radonValue(),
      unit: radonUnit(),
      reference: about(v.optional(v.nullable(radonValue()), null), 'What a spike was exposed to; null for a blank.'),
      detectionLimit: about(
        v.optional(v.nullable(radonValue()), null),
        "The laboratory's detection limit; null: not known.",
      ),
      note: v.optional(note(), ''),
    },
    'a blank or spike with id, kind, value and unit',
  ),
  'A detector sent to the laboratory to try it: a blank that was never opened, or a spike of known exposure.',
);

const WindForecastSchema = about(
  record(
    {
      at: instant(),
      source: v.optional(text(), ''),
      sustained: about(nullWhenUnknown(numberFrom(0, 1000, 'a number of km/h')), 'Sustained wind, km/h.'),
      storm: nullWhenUnknown(v.boolean('true or false')),
      note: v.optional(note(), ''),
    },
    'a forecast with at, source, sustained and storm',
  ),
  'The weather that was forecast for the exposure, and where that was read.',
);

export const KIT_EXTRAS = {
  hoursAnswered: about(
    v.exactOptional(v.boolean('true or false')),
    'False: the hours and days are only what a new plan begins with; left out: they were answered.',
  ),
  labDaysAnswered: about(
    v.exactOptional(v.boolean('true or false')),
    'Whether the days to the laboratory were answered; left out: as the hours.',
  ),
  lot: maybe(text()),
  detectionLimit: maybe(record({ value: radonValue(), unit: radonUnit() }, 'an object with value and unit')),
};

export const VISIT_EXTRAS = {
  startPlanned: about(
    v.exactOptional(v.boolean('true or false')),
    'True: `start` is planned, and nobody has recorded the placement; left out: it happened then.',
  ),
  plannedEnd: maybe(about(instantOrNull(), 'The pick-up as planned; `end` is the one that happened.')),
  closedUntil: maybe(about(instantOrNull(), 'When the house was opened again.')),
  posted: maybe(instantOrNull()),
  received: maybe(about(instantOrNull(), 'At the laboratory.')),
  device: maybe(oneOf(['passive', 'monitor'])),
  forecast: maybe(WindForecastSchema),
};

export const PLAN_EXTRAS = {
  practice: maybe(PracticeSchema),
  log: maybe(list(LogEntrySchema, 'a list of entries')),
  weather: maybe(list(WeatherSchema, 'a list of notes on the weather')),
  agreement: maybe(AgreementSchema),
  earlier: maybe(list(EarlierSchema, 'a list of earlier results')),
  quality: maybe(list(QualitySchema, 'a list of blanks and spikes')),
};
