import * as v from 'valibot';
import type { ReportFacts } from '../../plan/report-facts.ts';
import { about, instant, list, note, oneOf, record, text } from './leaves.ts';

/** Facts that only the report of the test needs. All are optional; an omitted one is not written either. */

/** An optional key without a default. */
const maybe = <const T extends v.GenericSchema>(schema: T) => v.exactOptional(schema);
const word = () => v.optional(text(), '');

const DAY_WORDS = 'a day, like 2026-11-26, or an empty text';
const dayOrNone = () => v.optional(v.pipe(v.string(DAY_WORDS), v.regex(/^(?:\d{4}-\d{2}-\d{2})?$/, DAY_WORDS)), '');

const PartySchema = record(
  { name: word(), address: word(), telephone: word(), email: word(), license: word() },
  'an object with name, address, telephone, email and license',
);

const LicenseSchema = record({ name: word(), license: word() }, 'an object with name and license');

const ReportSchema = about(
  record(
    {
      drawing: maybe(
        about(record({ by: word(), at: instant() }, 'an object with by and at'), 'Who drew the plan, and when.'),
      ),
      address: maybe(
        record(
          { street: word(), city: word(), state: word(), zip: word(), county: word() },
          'an object with street, city, state, zip and county',
        ),
      ),
      houseType: maybe(text()),
      client: maybe(PartySchema),
      firm: maybe(PartySchema),
      licenses: maybe(about(list(LicenseSchema, 'a list of licenses'), 'Of the people whom the log names.')),
      laboratory: maybe(
        record(
          {
            name: word(),
            address: word(),
            license: word(),
            analyst: word(),
            analyzed: instant(),
            reported: instant(),
          },
          'an object with name, address, license, analyst, analyzed and reported',
        ),
      ),
      device: maybe(
        record(
          {
            description: word(),
            maker: word(),
            model: word(),
            calibrated: about(dayOrNone(), 'The last calibration of a monitor.'),
            hourly: maybe(
              about(note(), 'Where the hourly readings of a monitor are, and which hours at the start are left out.'),
            ),
            expires: about(dayOrNone(), 'The last day of use that the maker prints on it.'),
          },
          'an object with description, maker, model, calibrated and expires',
        ),
      ),
      mitigation: maybe(
        about(
          record(
            { seen: oneOf(['none', 'running', 'not-running', 'unknown']), note: v.optional(note(), '') },
            'an object with seen and note',
          ),
          'Whether there is a mitigation system, and whether it was seen to run.',
        ),
      ),
      areas: maybe(about(note(), 'Which areas are finished and which are not.')),
      vents: maybe(about(note(), 'The condition of permanent vents: crawl space, combustion air.')),
      releaseTo: maybe(about(list(text(), 'a list of names'), 'To whom the report may be given.')),
    },
    'an object with what the report needs',
  ),
  'What only the report of the test needs.',
);

export const REPORT_EXTRAS = { report: maybe(ReportSchema) };

/** The uncertainty of a value as the laboratory reports it, for example one standard deviation. */
export const UNCERTAINTY = maybe(
  about(
    v.pipe(v.number('a number of 0 or more'), v.minValue(0, 'a number of 0 or more')),
    'As the laboratory reported it, in the unit of the value.',
  ),
);

/** Returns the report facts in a value of unknown origin; null if it does not match the schema. */
export function readReportFacts(value: unknown): ReportFacts | null {
  const result = v.safeParse(ReportSchema, value);
  return result.success ? result.output : null;
}
