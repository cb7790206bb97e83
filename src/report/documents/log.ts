import { checkPlan } from '../../../geometry/check/check-detector.ts';
import { markedCite } from '../../../geometry/messages/sources.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { conditionsReport, DEVIATION_SOURCES } from '../../protocol/conditions/conditions-report.ts';
import { chainDiscrepancies } from '../../protocol/custody/describe-chain.ts';
import { recordedStart } from '../../protocol/custody/placed.ts';
import { HOUR } from '../../protocol/timing/clock.ts';
import { hoursAreKnown } from '../../protocol/timing/exposure-limits.ts';
import { formatDuration } from '../../protocol/timing/format-time.ts';
import { timingReport } from '../../protocol/timing/timing-report.ts';
import { describeIssues } from '../../protocol/validity/headline.ts';
import { headlineSentence } from '../../protocol/validity/headline-sentence.ts';
import { testState } from '../../protocol/validity/test-state.ts';
import {
  describePlacement,
  describeVerification,
  type VerifiedLevel,
  verifiedLevels,
} from '../../protocol/validity/verified-placement.ts';
import { besides, stack } from '../block.ts';
import { type FlowItem, pour } from '../flow.ts';
import { contentArea } from '../page-frame.ts';
import { inset } from '../paper.ts';
import { TYPE_MM } from '../style.ts';
import { headingItem, tableItems, textItems } from '../table.ts';
import type { TextStyle } from '../text.ts';
import { agreementLine } from './agreement-line.ts';
import { placedDetectors } from './detector-places.ts';
import {
  blankLines,
  type DocumentOrder,
  framed,
  pageOf,
  retrieverOf,
  siteLine,
  testerOf,
  titleBlock,
} from './document-blocks.ts';
import { clockLine, formatShortAt } from './format-times.ts';
import { photoItems } from './log-photos.ts';
import {
  CONDITION_COLUMNS,
  CUSTODY_COLUMNS,
  clippedTexts,
  conditionRows,
  custodyRows,
  DEPLOYMENT_COLUMNS,
  deploymentRow,
  emptyRows,
  isFurtherAnswer,
  PLACE_COLUMNS,
  placeRow,
  sourceKey,
} from './log-rows.ts';
import { weatherLines } from './weather-lines.ts';

const BODY: TextStyle = { size: 3 };
const TABLE: TextStyle = { size: 2.75 };
const FINE: TextStyle = { size: TYPE_MM.small };

/** Returns the log of a test with its chain of custody, conditions, weather and agreement. Unknown values are blank lines. */
export function drawLog(order: DocumentOrder): readonly string[] {
  const area = inset(contentArea(pageOf(order)), 5);
  return framed(order, 'Log and chain of custody', pour(logFlow(order, area.width), area));
}

function logFlow({ plan, computed = new Map(), now }: DocumentOrder, width: number): readonly FlowItem[] {
  const placement = verifiedLevels(plan, checkPlan(plan).levels, computed);
  const state = testState(plan, placement, now);
  const report = conditionsReport(plan);
  return [
    { block: titleBlock('Log of a radon test', width), above: 0, keepWithNext: true },
    ...textItems(siteLine(plan), width, { size: 4.2 }),
    ...textItems(`${clockLine(plan)} What is empty was not known when this was printed: write it in.`, width, FINE),
    ...section('Validity of the test', [headlineSentence(plan, state), ...describeIssues(plan, state)], width),
    headingItem('The visit', width),
    { block: visitBlock(plan, width), above: 0 },
    ...detectorItems(plan, placement, width),
    ...notes(plan, width),
    ...photoItems(plan, width),
    headingItem('Chain of custody', width),
    ...chainDiscrepancies(plan).flatMap(({ text }) =>
      textItems(`Does not fit together. ${text}`, width, { ...BODY, weight: 'bold' }),
    ),
    ...tableItems(CUSTODY_COLUMNS, custodyRows(plan), width, TABLE),
    headingItem('The house during the test', width),
    ...textItems(report.text, width, { ...BODY, weight: 'bold' }).map((item) => ({ ...item, keepWithNext: true })),
    ...tableItems(
      CONDITION_COLUMNS,
      report.rows.flatMap((row) => conditionRows(plan, row, report.rows)),
      width,
      TABLE,
      CONDITION_COLUMNS[0]?.heading,
      isFurtherAnswer,
    ),
    ...textItems(
      `Sources by number: ${sourceKey(report.rows)}. That a deviation is recorded: ${DEVIATION_SOURCES.map(markedCite).join('; ')}.`,
      width,
      FINE,
    ),
    ...section('Weather', weatherLines(plan), width),
    ...(weatherLines(plan).length === 0
      ? [headingItem('Weather', width), writing(['Wind, storm, rain or snow, and when'], width)]
      : []),
    headingItem('Non-interference agreement', width),
    ...textItems(agreementLine(plan), width, BODY),
    ...section('Written out', clippedTexts(plan), width),
    headingItem('Remarks', width),
    // Keeps the signatures off a page of their own.
    ...[writing([''], width), writing([''], width)].map((line) => ({ ...line, keepWithNext: true })),
    ...signatures(plan, width),
  ];
}

/** Returns the tables of the detectors, their placement and their deployment. */
function detectorItems(plan: Plan, placement: readonly VerifiedLevel[], width: number): readonly FlowItem[] {
  const placed = placedDetectors(plan);
  return [
    headingItem('Detectors', width),
    ...tableItems(
      PLACE_COLUMNS,
      placed.length > 0 ? placed.map((each) => placeRow(plan, each)) : emptyRows(PLACE_COLUMNS, 4),
      width,
      TABLE,
    ),
    ...section(
      'Placement and verdicts',
      [...describePlacement(plan, placement), ...describeVerification(plan, placement)],
      width,
    ),
    headingItem('Placed and picked up', width),
    ...tableItems(
      DEPLOYMENT_COLUMNS,
      placed.length > 0 ? placed.map((each) => deploymentRow(plan, each)) : emptyRows(DEPLOYMENT_COLUMNS, 4),
      width,
      TABLE,
    ),
  ];
}

function section(title: string, lines: readonly string[], width: number): readonly FlowItem[] {
  return lines.length === 0
    ? []
    : [headingItem(title, width), ...lines.flatMap((words) => textItems(words, width, BODY))];
}

function writing(labels: Parameters<typeof blankLines>[0], width: number): FlowItem {
  return { block: blankLines(labels, width), above: 0 };
}

/** Returns the times of the visit, four in a row. */
function visitBlock(plan: Plan, width: number) {
  const { start, startPlanned, end, plannedEnd, closedSince, mitigationOnSince, closedUntil, posted, received } =
    plan.visit;
  const { exposureHours, planned } = timingReport(plan);
  const { minimumHours, maximumHours } = plan.kit;
  const exposure = exposureHours === null || planned ? '' : formatDuration(exposureHours * HOUR);
  const cells: readonly (readonly [string, string])[] = [
    ['Closed-building conditions since', formatShortAt(closedSince, plan)],
    [
      startPlanned ? `Detectors placed (planned: ${formatShortAt(start, plan)})` : 'Detectors placed',
      formatShortAt(recordedStart(plan.visit), plan),
    ],
    [
      planned ? `Detectors picked up (planned: ${formatShortAt(plannedEnd, plan)})` : 'Detectors picked up',
      formatShortAt(end, plan),
    ],
    [
      `Exposure (the kit: ${hoursAreKnown(plan) ? `${minimumHours} to ${maximumHours} h` : 'hours not entered'})`,
      exposure,
    ],
    ['House opened again', formatShortAt(closedUntil, plan)],
    ...(mitigationOnSince ? [['Mitigation system on since', formatShortAt(mitigationOnSince, plan)] as const] : []),
    ['Mailed to the laboratory', formatShortAt(posted, plan)],
    ['At the laboratory', formatShortAt(received, plan)],
  ];
  const rows = Array.from({ length: Math.ceil(cells.length / 4) }, (_, i) => cells.slice(i * 4, i * 4 + 4));
  const each = (width - 3 * 5) / 4;
  return stack(
    rows.map((row) => besides(row.map((cell, i) => ({ left: i * (each + 5), block: blankLines([cell], each) })))),
  );
}

function notes(plan: Plan, width: number): readonly FlowItem[] {
  const lines = placedDetectors(plan).flatMap(({ detector, name }) => {
    const note = plan.log?.find((entry) => entry.detector === detector.id)?.note.trim();
    return note ? [`${name}: ${note}`] : [];
  });
  return section('Notes on the detectors', lines, width);
}

/** Returns signature lines for the people who had custody of the detectors. */
function signatures(plan: Plan, width: number): readonly FlowItem[] {
  const rows: readonly (readonly [string, string])[] = [
    ['Placed by', testerOf(plan)],
    ['Picked up by', retrieverOf(plan)],
    ['Received at the laboratory by', ''],
  ];
  return [
    headingItem('Signatures', width),
    ...rows.map((row, i) => ({
      ...writing([row, 'Signature', 'Date and time'], width),
      keepWithNext: i < rows.length - 1,
    })),
  ];
}
