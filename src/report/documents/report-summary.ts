import { notRecorded } from '../../protocol/required-items/not-recorded.ts';
import { headlineSentence } from '../../protocol/validity/headline-sentence.ts';
import { type Validity, validityWords } from '../../protocol/validity/validity.ts';
import { type Block, boxed, paragraph, paragraphParts, space, stack } from '../block.ts';
import type { FlowItem } from '../flow.ts';
import { COLOR } from '../style.ts';
import { type Column, headingItem, tableItems, textItems } from '../table.ts';
import type { TextStyle } from '../text.ts';
import { earlierLines } from './earlier-tests.ts';
import { houseStep, type ReportContent, resultRows } from './report-content.ts';
import { BODY, section, TABLE } from './report-parts.ts';

const LEAD: TextStyle = { size: 3.7 };
const LEAD_BOLD: TextStyle = { size: 3.7, weight: 'bold' };
/** Of more than `CAUSES_AT_ONCE` causes, the first `CAUSES_FIRST` are listed at the top and the rest below the results. */
const CAUSES_FIRST = 4;
const CAUSES_AT_ONCE = 6;

const RESULT_COLUMNS: readonly Column[] = [
  { heading: 'Where', share: 0.2 },
  { heading: 'Results', share: 0.26 },
  { heading: 'Average, agreement of the pair', share: 0.27 },
  { heading: 'Next step', share: 0.27 },
];

/** Printed instead of the average of a location that is not known to be valid. */
const NOT_EVALUATED: Readonly<Record<Exclude<Validity, 'holds'>, string>> = {
  'not-evaluated': 'Invalid, do not use: the values are kept as a record.',
  unknown: 'Not known to be valid: nothing is evaluated yet.',
};

/** Returns the validity of the test, then the results, then the next step. */
export function summaryItems(content: ReportContent, width: number): readonly FlowItem[] {
  const { plan, state, items } = content;
  const holds = state.validity === 'holds';
  const inner = width - 4;
  const causes = state.issues.map(({ text }) => text);
  const first = causes.length > CAUSES_AT_ONCE ? CAUSES_FIRST : causes.length;
  const lines: Block[] = [
    paragraph(headlineSentence(plan, state), inner, { size: 4.6, weight: 'bold' }),
    ...[validityWords(plan, state).text].filter(Boolean).map((words) => paragraph(words, inner, LEAD_BOLD)),
    ...causes.slice(0, first).map((words) => paragraph(words, inner, LEAD)),
    ...(causes.length > first ? [paragraph(`And ${causes.length - first} more, below.`, inner, LEAD)] : []),
    ...state.notes.map((words) => paragraph(words, inner, LEAD)),
    ...[notRecorded(plan, items).named].filter(Boolean).map((words) => paragraph(words, inner, LEAD)),
  ];
  const rows = resultRows(content).map(({ location, place, values, agreement, step, validity }) => [
    stack([lineBlock([location], 0.2 * width, { ...TABLE, weight: 'bold' }), lineBlock([place], 0.2 * width, TABLE)]),
    lineBlock(values, 0.26 * width, validity === 'holds' ? LEAD_BOLD : { ...TABLE, color: COLOR.inkSoft }),
    lineBlock(validity === 'holds' ? agreement : [NOT_EVALUATED[validity]], 0.27 * width, TABLE),
    step,
  ]);
  return [
    { block: stack([space(1), boxed(stack(lines, 0.6), width)]), above: 0 },
    headingItem(holds ? 'Results' : 'Values on record', width),
    ...(rows.length === 0
      ? textItems('No result is recorded.', width, BODY)
      : tableItems(RESULT_COLUMNS, rows, width, TABLE)),
    ...section('Earlier tests', earlierLines(content), width),
    headingItem('Next step for the building', width),
    ...textItems(houseStep(content), width, LEAD_BOLD),
    ...section('The other causes', causes.slice(first), width),
  ];
}

function lineBlock(lines: readonly string[], width: number, style: TextStyle): Block {
  return stack(
    lines.flatMap((words) => paragraphParts(words, width - 2, style).map((part) => paragraph(part, width - 2, style))),
    0.4,
  );
}
