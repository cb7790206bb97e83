/** The sheets after the drawing: every check of every detector, then the basis of the verdicts. */
import type { Check } from '../../geometry/check/types.ts';
import {
  capital,
  changeWord,
  checkFigures,
  checkSubject,
  checksInOrder,
  headlineText,
  ROOM_USE_NOUN,
  toneOf,
} from '../../geometry/messages/index.ts';
import { markedCite, profileDoubts } from '../../geometry/messages/sources.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { type EffectiveRule, profileOf } from '../../geometry/rules/profiles.ts';
import { formatArea } from '../../geometry/units/index.ts';
import { roomSizeWords, roomTitle } from '../drawing/words.ts';
import { describeIssues } from '../protocol/validity/headline.ts';
import { headlineSentence } from '../protocol/validity/headline-sentence.ts';
import { type Block, paragraph, stack } from './block.ts';
import type { FlowItem } from './flow.ts';
import {
  changedRules,
  computedLines,
  leftOffLine,
  limitWords,
  lookedForLines,
  MEASURED_LINE,
  notRunLines,
  placeLine,
  profileLine,
  reasonOf,
  remarks,
  toleranceLine,
  whiteMeans,
} from './notes.ts';
import { COLOR, TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { verdictMark } from './svg-shapes.ts';
import { type Cell, type Column, headingItem, tableItems, textItems } from './table.ts';
import { drawText, lineHeight, shortened, type TextStyle } from './text.ts';

type Placed = SubjectMatter['detectors'][number];

const KEY = { size: TYPE_MM.fine, color: COLOR.inkSoft } as const;
/** Printed where there is no figure. */
const NONE = '–';

const CHECK_COLUMNS: readonly Column[] = [
  { heading: 'Rule', share: 0.33 },
  { heading: 'Compared with', share: 0.22 },
  { heading: 'Required', share: 0.085 },
  { heading: 'Measured', share: 0.1 },
  { heading: 'To spare', share: 0.125 },
  { heading: 'Verdict', share: 0.08 },
  { heading: 'Source', share: 0.06 },
];
const RULE_COLUMNS: readonly Column[] = [
  { heading: 'Rule', share: 0.17 },
  { heading: 'Requirement', share: 0.31 },
  { heading: 'Distance', share: 0.1 },
  { heading: 'Source', share: 0.42 },
];
const ROOM_COLUMNS: readonly Column[] = [
  { heading: 'Room', share: 0.24 },
  { heading: 'Use', share: 0.14 },
  { heading: 'Size between the walls', share: 0.22 },
  { heading: 'Floor', share: 0.11 },
  { heading: 'Allowed area', share: 0.29 },
];

/** Returns the content of the sheets after the drawing, in order. `leftOff`: names without room on the drawing. */
export function tableFlow(matter: SubjectMatter, leftOff: readonly string[], width: number): readonly FlowItem[] {
  return [
    ...matter.detectors.flatMap((placed) => detectorItems(matter, placed, width)),
    ...(matter.detectors.length > 0 ? textItems(sourceKey(matter), width, KEY) : []),
    ...section(
      'Validity of the test',
      [headlineSentence(matter.plan, matter.state), ...describeIssues(matter.plan, matter.state)],
      width,
    ),
    ...section('Rules changed on this plan', changedLines(matter), width),
    ...section('Not run', notRunLines(matter), width),
    ...section('Looked for, and not there', lookedForLines(matter), width),
    headingItem('Rooms', width),
    ...tableItems(ROOM_COLUMNS, roomRows(matter), width),
    ...ruleItems(matter, width),
    ...section(
      'How it was measured',
      [...computedLines(matter), MEASURED_LINE, toleranceLine(matter), whiteMeans(matter)],
      width,
    ),
    ...section('Remarks on the drawing', [...remarks(matter), leftOffLine(leftOff)].filter(Boolean), width),
    ...section('Written out', longLines(matter), width),
  ];
}

/** Returns every rule with its distance and its sources. */
export function ruleItems(
  { plan, rules }: Pick<SubjectMatter, 'plan' | 'rules'>,
  width: number,
  text?: TextStyle,
  table?: TextStyle,
): readonly FlowItem[] {
  return [
    headingItem('Rules and their sources', width),
    ...[profileLine({ plan }), ...profileDoubts(profileOf(plan.protocol))].flatMap((words) =>
      textItems(words, width, text).map((item) => ({ ...item, keepWithNext: true })),
    ),
    ...tableItems(
      RULE_COLUMNS,
      rules.map((rule) => ruleRow(plan, rule)),
      width,
      table,
    ),
  ];
}

function section(title: string, lines: readonly string[], width: number): readonly FlowItem[] {
  return lines.length === 0 ? [] : [headingItem(title, width), ...lines.flatMap((words) => textItems(words, width))];
}

function changedLines(matter: SubjectMatter): readonly string[] {
  return changedRules(matter).map(({ word, says, note }) => `${word}: ${says}${note ? ` Note: ${note}` : ''}`);
}

/** Longest text and longest name of the author that the title block shows whole in any case, characters. */
const LONG = 48;
const LONG_NAME = 24;

/** The texts that the title block may have shortened. */
function longLines({ plan, level }: SubjectMatter): readonly string[] {
  return [
    ['Title', plan.title],
    ['Owner, property', plan.site.label],
    ['Level', level.name],
    ['Drawn by', plan.report?.drawing?.by],
    ...level.detectors.map(({ label }) => ['Detector', label]),
  ].flatMap(([heading, text = '']) =>
    text.length > (heading === 'Drawn by' ? LONG_NAME : LONG) ? [`${heading}: ${text}`] : [],
  );
}

function detectorItems(matter: SubjectMatter, placed: Placed, width: number): readonly FlowItem[] {
  const checks = checksInOrder(placed.report.checks);
  return [
    { block: detectorHead(matter, placed, width), above: 5, keepWithNext: true },
    ...textItems(reasonOf(matter, placed), width).map((item) => ({ ...item, keepWithNext: true })),
    ...tableItems(
      CHECK_COLUMNS,
      checks.map((check) => checkRow(matter, check)),
      width,
      undefined,
      // On the next page the head of the table names the detector.
      `${shortened(placed.detector.label.trim() || placed.detector.id, width / 6, { size: TYPE_MM.fine })}, continued`,
    ),
  ];
}

/** Mark, label and word of the verdict; then the place. */
function detectorHead(matter: SubjectMatter, { detector, report }: Placed, width: number): Block {
  const { model, level } = matter;
  const room = model.rooms.find(({ label }) => label !== null && label.id === report.room);
  const place = room ? `In ${roomTitle(room)}` : 'In no room with a name';
  const pair = detector.pair === null ? 'placed alone' : `placed side by side, pair ${detector.pair}`;
  const words = `${place}, on ${level.name || level.id}; ${pair}. ${placeLine(matter, detector)}`;
  const tone = toneOf(report);
  const style = { size: TYPE_MM.title, weight: 'bold', color: COLOR.verdict[tone].line } as const;
  const label = shortened(detector.label.trim() || detector.id, width - 70, style);
  const title = `${label}  ${headlineText(report)}`;
  const head: Block = {
    height: 5.6,
    draw: (x, y) => verdictMark(tone, x + 2.4, y + 2.6, 2.2) + drawText(x + 6.4, y + 3.9, title, style),
  };
  return stack([head, paragraph(words, width, { size: TYPE_MM.body, color: COLOR.inkSoft })], 0.6);
}

function checkRow(matter: SubjectMatter, check: Check): readonly Cell[] {
  const { plan, rules } = matter;
  const { measured, needed, spare } = checkFigures(check, plan);
  const rule = rules.find(({ id }) => id === check.rule);
  const bold = check.verdict !== 'clear' && !check.notRun;
  const stream = check.required === 0;
  return [
    { text: `${rule?.says ?? check.rule}${changeEnd(check)}`, bold },
    { text: againstWords(matter, check), bold },
    stream ? 'out of it' : `${needed || NONE}${check.bound === 'most' ? ' at most' : ''}`,
    { text: stream && (check.measured ?? 0) < 0 ? 'in it' : measured || NONE, bold },
    { text: spare || NONE, bold },
    verdictCell(check),
    rule ? sourceNumbers(matter, rule) : '',
  ];
}

/** Every source of the profile once; its number is its position in the list. */
function sourceList({ rules }: SubjectMatter): readonly string[] {
  return [...new Set(rules.flatMap(({ sources }) => sources.map(markedCite)))];
}

function sourceNumbers(matter: SubjectMatter, { sources }: EffectiveRule): string {
  const list = sourceList(matter);
  return [...new Set(sources.map(markedCite))]
    .map((cite) => list.indexOf(cite) + 1)
    .sort((a, b) => a - b)
    .join(', ');
}

/** The legend of the source numbers in the last column. */
function sourceKey(matter: SubjectMatter): string {
  return `Sources by number: ${sourceList(matter)
    .map((cite, i) => `${i + 1} ${cite}`)
    .join('; ')}.`;
}

const changeEnd = ({ required, override }: Check): string => {
  const word = changeWord(required, override);
  return word && `. ${word}`;
};

/** The subject and the engine's reason about the room, the level or the sun; either may be missing. */
function againstWords({ plan, level }: SubjectMatter, check: Check): string {
  const subject = capital(checkSubject(check, plan, level));
  const reason = check.reason.trim();
  if (!subject) return reason || NONE;
  return reason ? `${subject}. ${reason}` : subject;
}

function verdictCell({ verdict, notRun }: Check): Block {
  const word = notRun ? 'not run' : verdict;
  const color = COLOR.verdict[verdict].line;
  const weight = verdict === 'clear' || notRun ? 'regular' : 'bold';
  return {
    height: lineHeight({ size: TYPE_MM.small }),
    draw: (x, y) =>
      verdictMark(verdict, x + 1.4, y + 1.45, 1.25) +
      drawText(x + 3.8, y + TYPE_MM.small * 0.95, word, { size: TYPE_MM.small, color, weight }),
  };
}

function ruleRow(plan: Plan, rule: EffectiveRule): readonly Cell[] {
  const unit = plan.display.length;
  return [rule.name, rule.says, limitWords(rule, unit) || NONE, [...new Set(rule.sources.map(markedCite))].join('; ')];
}

function roomRows({ region, plan }: SubjectMatter): readonly (readonly Cell[])[] {
  const unit = plan.display.length;
  return region.rooms.map(({ room, area, barred }) => [
    roomTitle(room),
    room.label ? capital(ROOM_USE_NOUN[room.label.use]) : 'Not given',
    roomSizeWords(room, unit),
    formatArea(room.floorArea, unit),
    barred || (area > 0 ? formatArea(area, unit) : 'none'),
  ]);
}
