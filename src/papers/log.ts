import type { ConditionState, Detector, Plan } from '../../geometry/index.ts';
import { BREAK_SOURCES, conditionsReport } from '../job/conditions/report.ts';
import { agreementOf, logOf } from '../job/log/edit.ts';
import { space } from '../sheet/block.ts';
import { type FlowItem, pour } from '../sheet/flow.ts';
import { contentArea } from '../sheet/page-frame.ts';
import { inset } from '../sheet/paper.ts';
import { TYPE_MM } from '../sheet/style.ts';
import { type Cell, type Column, headingItem, tableItems, textItems } from '../sheet/table.ts';
import { clockLine, framed, type PaperOrder, saidAt } from './parts.ts';

const NONE = '–';
/** Height of a row that is written by hand, mm. */
const HAND = 7;
/** Empty rows after what is on record. */
const EMPTY_ROWS = 4;

const TAMPERING = { none: 'none seen', seen: 'SEEN', unknown: 'not known' } as const;
export const STATE_WORDS: Readonly<Record<ConditionState, string>> = {
  kept: 'kept',
  broken: 'BROKEN',
  'not-applicable': 'none here',
  unknown: 'not known',
};

const column = (heading: string, share: number): Column => ({ heading, share });
const KIT_COLUMNS = [
  column('Detector', 0.08),
  column('Serial', 0.12),
  column('Set out', 0.15),
  column('By', 0.11),
  column('Fetched', 0.15),
  column('By', 0.11),
  column('Sealed', 0.15),
  column('Tampering', 0.13),
];
const CUSTODY_COLUMNS = [
  column('Detector', 0.12),
  column('When', 0.22),
  column('From', 0.18),
  column('To', 0.18),
  column('Note, signature', 0.3),
];
const CONDITION_COLUMNS = [
  column('Item', 0.24),
  column('State', 0.08),
  column('Who', 0.1),
  column('When', 0.14),
  column('What it means, note', 0.3),
  column('Source', 0.14),
];

/** The log of a test with its chain of custody: detectors, hands, house, weather, agreement; what is not known says so. */
export function drawLog(order: PaperOrder): readonly string[] {
  const area = inset(contentArea(order.paper), 4);
  return framed(order, 'Log and chain of custody', pour(logFlow(order.plan, area.width), area));
}

function logFlow(plan: Plan, width: number): readonly FlowItem[] {
  const detectors = plan.levels.flatMap((level) => level.detectors);
  const report = conditionsReport(plan);
  return [
    headingItem('Detectors', width),
    ...tableItems(
      KIT_COLUMNS,
      detectors.length > 0 ? detectors.map((each) => kitRow(plan, each)) : [['none placed']],
      width,
    ),
    ...section('Notes on the detectors', detectorNotes(plan, detectors), width),
    headingItem('From hand to hand', width),
    ...tableItems(CUSTODY_COLUMNS, custodyRows(plan, detectors), width),
    headingItem('Conditions in the house', width),
    ...textItems(report.says, width),
    ...tableItems(
      CONDITION_COLUMNS,
      report.rows.map((row) => conditionRow(plan, row)),
      width,
    ),
    ...textItems(`That a break is written down: ${BREAK_SOURCES.map(({ cite }) => cite).join('; ')}.`, width, {
      size: TYPE_MM.fine,
    }),
    ...section('Weather', weatherLines(plan), width),
    ...section('Agreement not to interfere', [agreementLine(plan)], width),
    ...textItems(clockLine(plan), width, { size: TYPE_MM.fine }),
  ];
}

function section(title: string, lines: readonly string[], width: number): readonly FlowItem[] {
  return lines.length === 0 ? [] : [headingItem(title, width), ...lines.flatMap((words) => textItems(words, width))];
}

const nameOf = ({ id, label }: Detector): string => label.trim() || id;

function kitRow(plan: Plan, detector: Detector): readonly Cell[] {
  const { serial, placedBy, fetchedBy, sealed, tampering } = logOf(plan, detector.id);
  return [
    { text: nameOf(detector), bold: true },
    serial.trim() || NONE,
    saidAt(plan.visit.start, plan, NONE),
    placedBy.trim() || NONE,
    saidAt(plan.visit.end, plan, NONE),
    fetchedBy.trim() || NONE,
    saidAt(sealed, plan, NONE),
    { text: TAMPERING[tampering], bold: tampering === 'seen' },
  ];
}

function detectorNotes(plan: Plan, detectors: readonly Detector[]): readonly string[] {
  return detectors.flatMap((detector) => {
    const { note, photos } = logOf(plan, detector.id);
    const pictures =
      photos.length > 0 ? `${photos.length} ${photos.length === 1 ? 'photo' : 'photos'} in the plan file.` : '';
    const words = [note.trim(), pictures].filter(Boolean).join(' ');
    return words ? [`${nameOf(detector)}: ${words}`] : [];
  });
}

/** What is on record, then empty rows to be filled by hand. */
function custodyRows(plan: Plan, detectors: readonly Detector[]): readonly (readonly Cell[])[] {
  const known = detectors.flatMap((detector) =>
    logOf(plan, detector.id).custody.map(({ at, from, to, note }): readonly Cell[] => [
      nameOf(detector),
      saidAt(at, plan, NONE),
      from.trim() || NONE,
      to.trim() || NONE,
      note.trim(),
    ]),
  );
  return [...known, ...Array.from({ length: EMPTY_ROWS }, (): readonly Cell[] => [space(HAND)])];
}

function conditionRow(plan: Plan, row: ReturnType<typeof conditionsReport>['rows'][number]): readonly Cell[] {
  const { item, state, by, at, note, says } = row;
  const means = state === 'broken' ? says : '';
  return [
    item.name,
    { text: STATE_WORDS[state], bold: state === 'broken' },
    by || NONE,
    saidAt(at, plan, NONE),
    [means, note].filter(Boolean).join(' ') || NONE,
    item.sources.map(({ cite }) => cite).join('; ') || NONE,
  ];
}

function weatherLines(plan: Plan): readonly string[] {
  const { forecast } = plan.visit;
  const forecasts = forecast
    ? [
        `Forecast: sustained wind ${forecast.sustained} km/h${forecast.storm ? ', a severe storm' : ''}${forecast.source.trim() ? ` (${forecast.source.trim()})` : ''}.`,
      ]
    : [];
  const notes = (plan.weather ?? []).map(
    ({ at, text }) => `${saidAt(at, plan, 'At a time that is not known')}: ${text}`,
  );
  const lines = [...forecasts, ...notes];
  return lines.length > 0 ? lines : ['Nothing is noted.'];
}

function agreementLine(plan: Plan): string {
  const { signedBy, at, refused, note } = agreementOf(plan);
  const who = signedBy.trim();
  if (!refused && !who) return 'Not signed.';
  const words = `${refused ? 'Refused' : 'Signed'}${who ? ` by ${who}` : ''}, ${saidAt(at, plan, 'at a time that is not known')}.`;
  return [words, note.trim()].filter(Boolean).join(' ');
}
