/** Items that published lists require in the report of a test: each with its sources, and a function for the parts that a plan lacks. */
import { roomAt } from '../../../geometry/check/room.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { counted } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { LogEntry } from '../../../geometry/plan/test-record.ts';
import type { Source } from '../../../geometry/rules/types.ts';
import { conditionsReport } from '../conditions/conditions-report.ts';
import { repeatedSerials } from '../custody/detectors.ts';
import { isSentToLaboratory, logEntryOf } from '../custody/log-entries.ts';
import { recordedStart } from '../custody/placed.ts';
import { isBeforeTest } from '../custody/weather-notes.ts';
import { detectorLabel } from '../detector-label.ts';
import { ILLINOIS_COPY, MAH, MALB, source } from '../sources.ts';
import { isLongTerm } from '../timing/exposure-limits.ts';
import { needsForecast } from '../timing/weather-check.ts';
import { licenseOf, peopleInLog } from './people.ts';

export type RequiredItemId =
  | 'results'
  | 'start-and-end'
  | 'street-address'
  | 'zip'
  | 'county'
  | 'client'
  | 'house-type'
  | 'device'
  | 'serial-numbers'
  | 'calibration'
  | 'hourly-readings'
  | 'placed-by'
  | 'picked-up-by'
  | 'licenses'
  | 'laboratory'
  | 'analysis'
  | 'recommendation'
  | 'advisories'
  | 'mitigation-system'
  | 'tampering'
  | 'deviations'
  | 'vents'
  | 'forecast'
  | 'weather'
  | 'locations'
  | 'sketch'
  | 'finished-areas'
  | 'firm';

export interface RequiredItem {
  readonly id: RequiredItemId;
  /** The item in a few words. */
  readonly name: string;
  /** The lists that require it, each with its clause. */
  readonly sources: readonly Source[];
  /** Whether the item is required for a plan; left out, it always is. */
  readonly applies?: (plan: Plan) => boolean;
  /** Returns the parts that are not known, each in a few words; empty if all are. */
  readonly missing: (plan: Plan) => readonly string[];
}

const ILLINOIS = (letter: string) => ILLINOIS_COPY(`(o)(1)(${letter})`);
/** Requirements of Pennsylvania for reports to the department, as far as they are known (effective 24 Jan 2019). */
const PENNSYLVANIA = (letter: string) => source('primary', `25 Pa. Code 240.303(1)(i)(${letter})`);

/** Of MAH-2019, 8.5 these were read: 8.5.2(a)(2) to the beginning of 8.5.4, and 8.5.9.2. */
export const UNREAD = 'Of ANSI/AARST MAH-2019, 8.5.5 to 8.5.9.1 were not read: what they require is not in this table.';

const unless = (known: unknown, words: string): readonly string[] => (known ? [] : [words]);

/** Returns the levels with a detector, which the report is about. */
export const testedLevels = ({ levels }: Plan) => levels.filter(({ detectors }) => detectors.length > 0);

/** Returns the label of each detector whose log entry lacks something. */
function perDetector(plan: Plan, lacks: (entry: LogEntry) => boolean): readonly string[] {
  return plan.levels.flatMap(({ detectors }) =>
    detectors.filter(({ id }) => lacks(logEntryOf(plan, id))).map((detector) => detectorLabel(detector)),
  );
}

/** In the order of the report. */
export const REQUIRED_ITEMS: readonly RequiredItem[] = [
  {
    id: 'results',
    name: 'The result of each detector, and the average of a pair',
    sources: [ILLINOIS('A'), MAH('8.5.2(b) to (d)'), PENNSYLVANIA('D')],
    missing: (plan) =>
      plan.levels.flatMap(({ detectors }) =>
        detectors.flatMap((detector) => {
          const count = plan.readings.filter((reading) => reading.detector === detector.id).length;
          if (count === 1) return [];
          return [count === 0 ? detectorLabel(detector) : `${detectorLabel(detector)} (more than one)`];
        }),
      ),
  },
  {
    id: 'start-and-end',
    name: 'Day and time of start and end',
    sources: [ILLINOIS('B'), MAH('8.5.2(a)(2)'), PENNSYLVANIA('C')],
    missing: ({ visit }) => [...unless(recordedStart(visit), 'start'), ...unless(visit.end, 'end')],
  },
  {
    id: 'street-address',
    name: 'Address of the building in parts',
    sources: [ILLINOIS('C'), PENNSYLVANIA('B')],
    missing: ({ report }) => {
      const { street = '', city = '', state = '' } = report?.address ?? {};
      return [...unless(street.trim(), 'street'), ...unless(city.trim(), 'city'), ...unless(state.trim(), 'state')];
    },
  },
  {
    id: 'zip',
    name: 'ZIP code',
    sources: [ILLINOIS('C'), PENNSYLVANIA('B')],
    missing: ({ report }) => unless(report?.address?.zip.trim(), 'ZIP code'),
  },
  {
    id: 'county',
    name: 'County',
    sources: [PENNSYLVANIA('B')],
    missing: ({ report }) => unless(report?.address?.county.trim(), 'county'),
  },
  {
    id: 'client',
    name: 'Name of the client',
    sources: [source('common-practice', 'common practice, no published source')],
    missing: ({ report }) => unless(report?.client?.name.trim(), 'name'),
  },
  {
    id: 'house-type',
    name: 'Type of building',
    sources: [PENNSYLVANIA('D')],
    missing: ({ report }) => unless(report?.houseType?.trim(), 'type'),
  },
  {
    id: 'device',
    name: 'Description, maker and model of the detectors',
    sources: [ILLINOIS('D'), PENNSYLVANIA('C'), PENNSYLVANIA('D')],
    missing: ({ report }) => {
      const { description = '', maker = '', model = '' } = report?.device ?? {};
      return [
        ...unless(description.trim(), 'description'),
        ...unless(maker.trim(), 'maker'),
        ...unless(model.trim(), 'model'),
      ];
    },
  },
  {
    id: 'serial-numbers',
    name: 'Serial number of each detector',
    sources: [ILLINOIS('D'), PENNSYLVANIA('G')],
    missing: (plan) => {
      const isTwice = repeatedSerials(plan);
      return [
        ...perDetector(plan, ({ serial }) => serial.trim() === ''),
        // A serial number of two devices identifies neither.
        ...perDetector(plan, ({ serial }) => isTwice(serial)).map((label) => `${label} (its number stands twice)`),
      ];
    },
  },
  {
    id: 'calibration',
    name: 'Day of the last calibration of a monitor',
    sources: [MAH('8.5.3(b)')],
    applies: (plan) => !isSentToLaboratory(plan),
    missing: ({ report }) => unless(report?.device?.calibrated, 'day'),
  },
  {
    id: 'hourly-readings',
    name: 'Hourly readings of a monitor, or how the client gets them, and the hours left out',
    sources: [MAH('8.5.3(a) and (c)')],
    applies: (plan) => !isSentToLaboratory(plan),
    missing: ({ report }) => unless(report?.device?.hourly?.trim(), 'not answered'),
  },
  {
    id: 'placed-by',
    name: 'Who placed the detectors',
    sources: [ILLINOIS('E')],
    missing: (plan) => perDetector(plan, ({ placedBy }) => placedBy.trim() === ''),
  },
  {
    id: 'picked-up-by',
    name: 'Who picked the detectors up',
    sources: [ILLINOIS('E')],
    missing: (plan) => perDetector(plan, ({ fetchedBy }) => fetchedBy.trim() === ''),
  },
  {
    id: 'licenses',
    name: 'License numbers of those who placed and picked up',
    sources: [ILLINOIS('E'), PENNSYLVANIA('A')],
    missing: (plan) => {
      const people = peopleInLog(plan);
      if (people.length === 0) return ['names'];
      // Of a person who is not known the license is not known either.
      return [
        ...people.filter((name) => licenseOf(plan, name) === ''),
        ...perDetector(plan, ({ placedBy }) => placedBy.trim() === '').map((label) => `who placed ${label}`),
        ...perDetector(plan, ({ fetchedBy }) => fetchedBy.trim() === '').map((label) => `who picked up ${label}`),
      ];
    },
  },
  {
    id: 'laboratory',
    name: 'Name and license of the laboratory',
    sources: [ILLINOIS('F'), PENNSYLVANIA('A')],
    applies: isSentToLaboratory,
    missing: ({ report }) => {
      const { name = '', license = '' } = report?.laboratory ?? {};
      return [...unless(name.trim(), 'name'), ...unless(license.trim(), 'license')];
    },
  },
  {
    id: 'analysis',
    name: 'Day of the analysis',
    sources: [PENNSYLVANIA('F')],
    applies: isSentToLaboratory,
    missing: ({ report }) => unless(report?.laboratory?.analyzed, 'day'),
  },
  {
    id: 'recommendation',
    name: 'Whether to test again or to mitigate',
    sources: [ILLINOIS('G')],
    missing: ({ readings }) => unless(readings.length > 0, 'no result yet'),
  },
  {
    id: 'advisories',
    name: 'What a low result does not show, and when to test again',
    sources: [MAH('8.5.9.2')],
    // Every report has these statements.
    missing: () => [],
  },
  {
    id: 'mitigation-system',
    name: 'Mitigation system seen, and whether it runs',
    sources: [ILLINOIS('H'), PENNSYLVANIA('E')],
    missing: ({ report }) => unless(report?.mitigation && report.mitigation.seen !== 'unknown', 'not answered'),
  },
  {
    id: 'tampering',
    name: 'Evidence of tampering and interference',
    sources: [ILLINOIS('I')],
    missing: (plan) => perDetector(plan, ({ tampering }) => tampering === 'unknown'),
  },
  {
    id: 'deviations',
    name: 'Conditions of the building, with deviations',
    sources: [ILLINOIS('I'), MAH('8.5.4')],
    applies: (plan) => !isLongTerm(plan),
    missing: (plan) =>
      conditionsReport(plan)
        .rows.filter(({ state }) => state === 'unknown')
        .map(({ item }) => item.name),
  },
  {
    id: 'vents',
    name: 'Condition of permanent vents',
    sources: [ILLINOIS('J')],
    missing: ({ report }) => unless(report?.vents?.trim(), 'not answered'),
  },
  {
    id: 'forecast',
    name: 'Weather forecast looked up before the start',
    sources: [ILLINOIS_COPY('(b)(1)(D)')],
    applies: needsForecast,
    missing: ({ visit: { forecast } }) =>
      forecast
        ? [
            ...unless(forecast.at, 'time'),
            ...unless(forecast.source.trim(), 'source'),
            ...unless(forecast.sustained !== null, 'wind'),
            ...unless(forecast.storm !== null, 'storms'),
          ]
        : ['not recorded'],
  },
  {
    id: 'weather',
    name: 'Severe weather, as noted during the test',
    sources: [ILLINOIS('K')],
    missing: (plan) =>
      unless(
        plan.weather?.some((note) => note.text.trim() && !isBeforeTest(plan, note)),
        'no note of the weather',
      ),
  },
  {
    id: 'locations',
    name: 'Exact place of each detector',
    sources: [ILLINOIS('L'), MAH('8.5.2(a)(2)'), PENNSYLVANIA('C'), PENNSYLVANIA('D')],
    missing: (plan) =>
      plan.levels.flatMap((level) => {
        const model = buildLevel(level);
        return level.detectors.filter(({ at }) => roomAt(model, at) === null).map(detectorLabel);
      }),
  },
  {
    id: 'sketch',
    name: 'Scale drawing of the building with windows and doors',
    sources: [ILLINOIS('L')],
    missing: (plan) =>
      testedLevels(plan).flatMap((level) => {
        const { name, id, walls, lookedFor = [] } = level;
        if (walls.length === 0) return [`no walls drawn on ${name.trim() || id}`];
        const { openings } = buildLevel(level);
        // A door between two rooms does not show the windows and doors of the building.
        const known = openings.some(({ outside }) => outside) || lookedFor.includes('outside-opening');
        return unless(known, `no windows and doors drawn on ${name.trim() || id}`);
      }),
  },
  {
    id: 'finished-areas',
    name: 'Finished and unfinished areas',
    sources: [ILLINOIS('L')],
    missing: (plan) => {
      const levels = testedLevels(plan).map((level) => ({ level, rooms: buildLevel(level).rooms }));
      const uses = levels.flatMap(({ level, rooms }) => {
        const open = rooms.filter(({ label }) => label === null).length;
        return unless(open === 0, `use of ${counted(open, 'room')} on ${level.name.trim() || level.id}`);
      });
      // A use like "family room" does not say that the room is finished.
      const told = levels.some(({ rooms }) => rooms.some(({ label }) => label?.use === 'unfinished'));
      return uses.length > 0 ? uses : unless(told || plan.report?.areas?.trim(), 'not answered');
    },
  },
  {
    id: 'firm',
    name: 'Name, address and telephone of the firm',
    sources: [MALB('8.2.1(a)')],
    // A purpose that is not answered may be one that requires the firm.
    applies: ({ site }) => site.purpose !== 'own-household' || site.purposeAnswered === false,
    missing: ({ report }) => {
      const { name = '', address = '', telephone = '' } = report?.firm ?? {};
      return [
        ...unless(name.trim(), 'name'),
        ...unless(address.trim(), 'address'),
        ...unless(telephone.trim(), 'telephone'),
      ];
    },
  },
];
