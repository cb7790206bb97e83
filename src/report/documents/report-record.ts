import { capital } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { Condition, ConditionState } from '../../../geometry/plan/test-record.ts';
import type { ConditionRow } from '../../protocol/conditions/condition-row.ts';
import { conditionsReport } from '../../protocol/conditions/conditions-report.ts';
import { isSentToLaboratory, logEntryOf } from '../../protocol/custody/log-entries.ts';
import { recordedStart } from '../../protocol/custody/placed.ts';
import { licenseOf, peopleInLog } from '../../protocol/required-items/people.ts';
import { HOUR } from '../../protocol/timing/clock.ts';
import { isLongTerm } from '../../protocol/timing/exposure-limits.ts';
import { formatDuration } from '../../protocol/timing/format-time.ts';
import { hasMitigation } from '../../protocol/timing/mitigation.ts';
import { timingReport } from '../../protocol/timing/timing-report.ts';
import type { FlowItem } from '../flow.ts';
import { type Cell, type Column, headingItem, tableItems, textItems } from '../table.ts';
import { agreementLine, isAgreementOnRecord } from './agreement-line.ts';
import { placedDetectors } from './detector-places.ts';
import { clockLine, formatAt, formatPrinted, formatShortAt } from './format-times.ts';
import { ALSO, isFurtherAnswer } from './log-rows.ts';
import { BODY, FINE, facts, inOneLine, MISSING, partyText, section, TABLE, together } from './report-parts.ts';
import { forecastText, weatherByTime } from './weather-lines.ts';

const PERSON_COLUMNS: readonly Column[] = [
  { heading: 'Name', share: 0.3 },
  { heading: 'Part in the test', share: 0.4 },
  { heading: 'License or certificate', share: 0.3 },
];
const CONDITION_COLUMNS: readonly Column[] = [
  { heading: 'Condition', share: 0.27 },
  { heading: 'State', share: 0.12 },
  { heading: 'By, when', share: 0.29 },
  { heading: 'Meaning, note', share: 0.32 },
];

/** Returns the times of the test, and the checks of them that are open or failed. */
export function timeItems(plan: Plan, width: number): readonly FlowItem[] {
  const { visit } = plan;
  const { exposureHours, planned, checks } = timingReport(plan);
  const at = (text: string | null | undefined) => formatAt(text, plan, '');
  return together([
    ...facts(
      'Times',
      [
        ...(visit.mitigationOnSince !== null || (hasMitigation(plan) && !isLongTerm(plan))
          ? [['Mitigation system on since', at(visit.mitigationOnSince)] as const]
          : []),
        ['Closed-building conditions since', at(visit.closedSince)],
        ['Placed', at(recordedStart(visit))],
        ['Picked up', at(visit.end)],
        ...(visit.closedUntil ? [['House opened again', at(visit.closedUntil)] as const] : []),
        ['Exposure', exposureHours === null || planned ? '' : formatDuration(exposureHours * HOUR)],
        ...(isSentToLaboratory(plan)
          ? [['Mailed', at(visit.posted)] as const, ['Received by the laboratory', at(visit.received)] as const]
          : []),
      ],
      width,
    ),
    ...textItems(clockLine(plan), width, FINE),
    ...checks.filter(({ verdict }) => verdict !== 'clear').flatMap(({ detail }) => textItems(detail, width, BODY)),
  ]);
}

/** Returns the state of the building during the test, with every answer on record. */
export function conditionItems(plan: Plan, width: number): readonly FlowItem[] {
  const report = conditionsReport(plan);
  const { mitigation, vents = '' } = plan.report ?? {};
  const weather = weatherByTime(plan);
  return [
    headingItem('The building during the test', width),
    ...textItems(report.text, width, { ...BODY, weight: 'bold' }).map((item) => ({ ...item, keepWithNext: true })),
    ...tableItems(
      CONDITION_COLUMNS,
      report.rows.flatMap((row) => conditionRows(plan, row)),
      width,
      TABLE,
      CONDITION_COLUMNS[0]?.heading,
      isFurtherAnswer,
    ),
    ...facts(
      'Mitigation, vents, weather',
      [
        [
          'Mitigation system',
          mitigation ? [MITIGATION[mitigation.seen], mitigation.note.trim()].filter(Boolean).join('. ') : '',
        ],
        ['Permanent vents', vents],
        // The forecast before the start and the notes of the weather are separate records; the condition above is an answer.
        ['Forecast before the start', forecastText(plan)],
        ['Weather noted during the test', weather.during],
        ...(weather.before ? [['Weather noted before the test', weather.before] as const] : []),
      ],
      width,
    ),
    ...section('Non-interference agreement', isAgreementOnRecord(plan) ? [agreementLine(plan)] : [], width),
  ];
}

const MITIGATION: Readonly<Record<'none' | 'running' | 'not-running' | 'unknown', string>> = {
  none: 'None found',
  running: 'Seen, and running',
  'not-running': 'Seen, and NOT running',
  unknown: '',
};

const STATE_WORDS: Readonly<Record<ConditionState, string>> = {
  kept: 'Met',
  broken: 'NOT met',
  'not-applicable': 'Not applicable',
  unknown: MISSING,
};

/** Returns a row for a condition, and one for each further answer to it on record. */
function conditionRows(plan: Plan, row: ConditionRow): readonly (readonly Cell[])[] {
  const { item, text, effect, further } = row;
  const cells = (name: string, { state, by = '', at, note }: Answer, meaning: string): readonly Cell[] => [
    name,
    { text: STATE_WORDS[state], bold: state === 'broken' || state === 'unknown' },
    [by.trim(), formatShortAt(at, plan)].filter(Boolean).join(', '),
    [meaning, note.trim()].filter(Boolean).join(' '),
  ];
  return [cells(item.name, row, effect === null ? '' : text), ...further.map((each) => cells(ALSO, each, ''))];
}

type Answer = Pick<Condition, 'state' | 'by' | 'at' | 'note'>;

/** Returns the facts about devices and laboratory; for a continuous monitor its calibration instead of the laboratory. */
export function deviceItems(plan: Plan, width: number): readonly FlowItem[] {
  const { device } = plan.report ?? {};
  const serials = placedDetectors(plan)
    .map(({ detector, name }) => [name, logEntryOf(plan, detector.id).serial.trim()])
    .map(([name, serial]) => `${name}: ${serial || MISSING}`);
  return facts(
    'Devices and laboratory',
    [
      ['Device', inOneLine([device?.description, device?.maker, device?.model])],
      ['Serial numbers', serials.join(', ')],
      ['Lot', plan.kit.lot ?? ''],
      ['Use before', formatPrinted(device?.expires ?? '', plan)],
      ...(isSentToLaboratory(plan) ? laboratoryRows(plan) : monitorRows(plan)),
    ],
    width,
  );
}

type Fact = readonly [name: string, value: string];

function monitorRows(plan: Plan): readonly Fact[] {
  const { device } = plan.report ?? {};
  return [
    ['Calibrated', formatPrinted(device?.calibrated ?? '', plan)],
    ['Hourly readings', device?.hourly ?? ''],
  ];
}

function laboratoryRows(plan: Plan): readonly Fact[] {
  const { laboratory } = plan.report ?? {};
  return [
    ['Laboratory', inOneLine([laboratory?.name, laboratory?.address])],
    ['License of the laboratory', laboratory?.license ?? ''],
    ['Analyzed', inOneLine([formatShortAt(laboratory?.analyzed, plan), laboratory?.analyst])],
    ['Reported', formatShortAt(laboratory?.reported, plan)],
  ];
}

/** Returns who did the test and who analyzed it, with licenses. */
export function peopleItems(plan: Plan, width: number): readonly FlowItem[] {
  const rows = [
    ...peopleInLog(plan).map((name) => [
      { text: name, bold: true },
      partIn(plan, name),
      licenseOf(plan, name) || MISSING,
    ]),
    ...analystRows(plan),
  ];
  const firm = partyText(plan.report?.firm);
  return [
    headingItem('Who did the test', width),
    ...textItems(`Firm: ${firm || MISSING}`, width, firm ? BODY : { ...BODY, weight: 'bold' }),
    ...(rows.length > 0
      ? tableItems(PERSON_COLUMNS, rows, width, TABLE)
      : textItems(`${MISSING}: the log names nobody.`, width, { ...BODY, weight: 'bold' })),
  ];
}

/** An analyst without a license on record works under that of the laboratory. */
function analystRows(plan: Plan): readonly (readonly Cell[])[] {
  const { name = '', analyst = '', license = '' } = plan.report?.laboratory ?? {};
  if (!isSentToLaboratory(plan) || (!name.trim() && !analyst.trim())) return [];
  const own = licenseOf(plan, analyst.trim());
  return [
    [
      { text: analyst.trim() || name.trim(), bold: true },
      'Analyzed',
      own || (license.trim() ? `Laboratory: ${license.trim()}` : MISSING),
    ],
  ];
}

function partIn({ log = [] }: Plan, name: string): string {
  const parts = [
    log.some(({ placedBy }) => placedBy.trim() === name) ? 'placed' : '',
    log.some(({ fetchedBy }) => fetchedBy.trim() === name) ? 'picked up' : '',
  ];
  return capital(parts.filter(Boolean).join(' and '));
}
