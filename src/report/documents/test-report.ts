import { buildLevel } from '../../../geometry/level/build-level.ts';
import { counted, listed } from '../../../geometry/messages/index.ts';
import { markedCite } from '../../../geometry/messages/sources.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { effectiveRules } from '../../../geometry/rules/profiles.ts';
import { roomTitle } from '../../drawing/words.ts';
import type { ItemReport } from '../../protocol/required-items/item-states.ts';
import { testedLevels, UNREAD } from '../../protocol/required-items/items.ts';
import { describePlacement, describeVerification } from '../../protocol/validity/verified-placement.ts';
import { fittingOrientation, type PlanPage, planPage } from '../draw-sheets.ts';
import { type FlowItem, pour } from '../flow.ts';
import { contentArea } from '../page-frame.ts';
import { inset, type Orientation } from '../paper.ts';
import { type Column, headingItem, tableItems, textItems } from '../table.ts';
import { ruleItems } from '../tables.ts';
import { placedDetectors } from './detector-places.ts';
import { blankLines, type DocumentOrder, framed, pageOf, siteLine, titleBlock } from './document-blocks.ts';
import { formatPrinted } from './format-times.ts';
import { PLACE_COLUMNS, placeCells } from './log-rows.ts';
import { type ReportContent, reportContent, STATEMENTS } from './report-content.ts';
import { custodyItems, qualityItems } from './report-custody.ts';
import { BODY, FINE, facts, inOneLine, MISSING, NOT_KNOWN, partyText, section, TABLE } from './report-parts.ts';
import { conditionItems, deviceItems, peopleItems, timeItems } from './report-record.ts';
import { summaryItems } from './report-summary.ts';

/** Explains the marks beside sources. */
const MARKS =
  'Beside a source: (secondary) is not read in the primary text, (from memory) is not looked up. The text of the state decides.';

const ITEM_COLUMNS: readonly Column[] = [
  { heading: 'Item', share: 0.3 },
  { heading: 'In this report', share: 0.22 },
  { heading: 'Required by', share: 0.48 },
];

/**
 * Returns the pages of the report of a test: the summary, then its basis, then the marked-up plan of each level with a detector. If the
 * test is not valid, the first page says so before any value.
 */
export function drawTestReport(asked: DocumentOrder): readonly string[] {
  const order = { ...asked, orientation: asked.orientation ?? usualOrientation(asked) };
  const content = reportContent(order.plan, order.computed, order.now);
  const area = inset(contentArea(pageOf(order)), 5);
  const { plan, paper, orientation, date, computed, now } = order;
  const known = { ...(computed ? { computed } : {}), ...(now === undefined ? {} : { now }) };
  const ofPlan = { plan, paper, orientation, date: formatPrinted(date, plan), ...known };
  const plans = testedLevels(plan).map(({ id }) => planPage({ ...ofPlan, levelId: id }));
  const pages = pour([...reportFlow(content, area.width), ...remarkItems(plans, area.width)], area);
  const all = pages.length + plans.length;
  return [
    ...framed(order, 'Report of a radon test', pages, plans.length),
    ...plans.map(({ draw }, i) => draw(pages.length + i + 1, all)),
  ];
}

function remarkItems(plans: readonly PlanPage[], width: number): readonly FlowItem[] {
  const lines = plans.flatMap(({ levelName, remarks }) =>
    remarks.map((words) => (plans.length > 1 ? `${levelName}: ${words}` : words)),
  );
  return section('Remarks on the drawing', lines, width);
}

/** Portrait if every level is drawn larger in portrait; all pages of a report have one orientation. */
function usualOrientation({ plan, paper, date, computed }: DocumentOrder): Orientation {
  const levels = testedLevels(plan);
  const fitting = levels.map(({ id }) =>
    fittingOrientation({ plan, paper, date, levelId: id, ...(computed ? { computed } : {}) }),
  );
  return fitting.length > 0 && fitting.every((each) => each === 'portrait') ? 'portrait' : 'landscape';
}

function reportFlow(content: ReportContent, width: number): readonly FlowItem[] {
  return [
    { block: titleBlock('Report of a radon test', width), above: 0, keepWithNext: true },
    ...textItems(siteLine(content.plan), width, { size: 4.2 }),
    ...summaryItems(content, width),
    ...siteItems(content.plan, width),
    ...placementItems(content, width),
    ...timeItems(content.plan, width),
    ...conditionItems(content.plan, width),
    ...deviceItems(content.plan, width),
    ...peopleItems(content.plan, width),
    ...custodyItems(content.plan, width),
    ...qualityItems(content.plan, width),
    ...section('What to know', STATEMENTS, width),
    headingItem('Signatures', width),
    { block: blankLines(['Prepared by, license or certificate', 'Signature', 'Day'], width), above: 0 },
    ...ruleItems({ plan: content.plan, rules: effectiveRules(content.plan.protocol) }, width, BODY, TABLE),
    headingItem('What the published lists require', width),
    ...[MARKS, UNREAD]
      .flatMap((words) => textItems(words, width, FINE))
      .map((item) => ({ ...item, keepWithNext: true })),
    ...tableItems(ITEM_COLUMNS, content.items.map(itemRow), width, TABLE),
  ];
}

function siteItems(plan: Plan, width: number): readonly FlowItem[] {
  const { address, houseType = '', client, releaseTo = [] } = plan.report ?? {};
  return facts(
    'Building and client',
    [
      ['Address in parts', addressText(plan)],
      ['County', address?.county ?? ''],
      ['Type of building', houseType],
      ['Levels', plan.levels.map(({ name, id }) => name.trim() || id).join(', ')],
      ['Finished and unfinished areas', finishedAreas(plan)],
      ['Reason for the test', plan.site.purposeAnswered === false ? '' : PURPOSE[plan.site.purpose]],
      ['Client', partyText(client)],
      ['This report may be given to', inOneLine(releaseTo)],
    ],
    width,
  );
}

/** The parts of the address, because lists of required items name each. The line under the title is the label of the site instead. */
function addressText({ report }: Plan): string {
  const { street = '', city = '', state = '', zip = '' } = report?.address ?? {};
  const known = inOneLine([street, city, `${state.trim()} ${zip.trim()}`]);
  const parts = [
    ['street', street],
    ['city', city],
    ['state', state],
    ['ZIP code', zip],
  ] as const;
  const lacking = parts.filter(([, value]) => !value.trim()).map(([name]) => name);
  return [known, lacking.length > 0 ? `${MISSING}: ${listed(lacking)}` : ''].filter(Boolean).join('. ');
}

/** Rooms of the tested levels that are labeled unfinished, and the answer on finished areas: no other use says that a room is finished. */
function finishedAreas(plan: Plan): string {
  const rooms = testedLevels(plan).flatMap((level) =>
    buildLevel(level).rooms.map((room) => ({ room, of: level.name.trim() || level.id })),
  );
  const unfinished = rooms.filter(({ room }) => room.label?.use === 'unfinished');
  const open = rooms.filter(({ room }) => room.label === null).length;
  const names = unfinished.map(({ room, of }) => `${roomTitle(room)} (${of})`);
  const told = [names.length > 0 ? `Unfinished: ${listed(names)}` : '', plan.report?.areas?.trim() ?? ''].filter(
    Boolean,
  );
  const gaps = open > 0 ? `use of ${counted(open, 'room')}` : told.length === 0 && 'not answered';
  return [...told, gaps ? `${MISSING}: ${gaps}` : ''].filter(Boolean).join('. ');
}

const PURPOSE: Readonly<Record<Plan['site']['purpose'], string>> = {
  'own-household': 'The people who live here want to know',
  'property-transfer': 'Sale of the building',
  'after-mitigation': 'After mitigation',
};

function placementItems({ plan, placement }: ReportContent, width: number): readonly FlowItem[] {
  const placed = placedDetectors(plan);
  return [
    headingItem('Where the detectors were', width),
    ...(placed.length === 0
      ? textItems('No detector is placed.', width, BODY)
      : tableItems(
          PLACE_COLUMNS,
          placed.map((each) => placeCells(plan, each).map((cell) => (cell === '' ? NOT_KNOWN : cell))),
          width,
          TABLE,
        )),
    ...section(
      'Placement, against the rules',
      [...describePlacement(plan, placement), ...describeVerification(plan, placement)],
      width,
    ),
  ];
}

/** Further missing items are counted, not named: each is marked in its own section. */
const MOST_NAMED = 4;

function lackingWords(lacking: readonly string[]): string {
  const rest = lacking.length - MOST_NAMED;
  return rest > 0 ? `${lacking.slice(0, MOST_NAMED).join(', ')}, and ${rest} more, marked above` : lacking.join(', ');
}

function itemRow({ item, state, lacking }: ItemReport) {
  const words = {
    present: 'Present',
    missing: `${MISSING}: ${lackingWords(lacking)}`,
    'not-applicable': 'Not applicable',
  };
  return [item.name, { text: words[state], bold: state === 'missing' }, item.sources.map(markedCite).join('; ')];
}
