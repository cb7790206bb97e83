import { agreementOf, agreementState } from '../../protocol/conditions/agreement.ts';
import { isLongTerm } from '../../protocol/timing/exposure-limits.ts';
import { type Block, paragraph, space, stack } from '../block.ts';
import type { TextStyle } from '../text.ts';
import { describePlaces } from './detector-places.ts';
import {
  blankLines,
  bullet,
  checkBox,
  type DocumentOrder,
  drawHandout,
  heading,
  READ_SOFT,
  testerOf,
  timeRows,
  typeSizes,
} from './document-blocks.ts';
import { clockLine, formatForOccupants, testTimes } from './format-times.ts';
import {
  deviationInstructions,
  occupantRequests,
  SAFE_AND_ALONE,
  SAFETY_FIRST,
  WHAT_IT_IS,
  whyClosed,
} from './occupant-texts.ts';

const NOTICE = { title: 'Radon test in this house', name: 'Notice to occupants', sizes: typeSizes(5, 2.9), gap: 0.9 };

/**
 * Returns the notice to occupants before the test: times, conditions, reasons. After ANSI/AARST MAH-2019, Exh. 2 (occupants are told times
 * and conditions beforehand); the wording is ours.
 */
export function drawNotice(order: DocumentOrder): readonly string[] {
  return drawHandout(order, NOTICE, (width, style) => noticeBlocks(order, width, style));
}

function noticeBlocks(order: DocumentOrder, width: number, style: TextStyle): readonly Block[] {
  const { plan } = order;
  const say = (text: string) => paragraph(text, width, style);
  const places = describePlaces(plan);
  return [
    say(WHAT_IT_IS),
    stack([
      heading('When', width),
      timeRows(testTimes(plan, formatForOccupants, order), width, style),
      space(1),
      ...(isLongTerm(plan) ? [] : [say('Once the detectors are picked up, the house may be opened.')]),
      paragraph(clockLine(plan), width, READ_SOFT),
    ]),
    stack([
      heading('Whom to call', width),
      blankLines(
        [
          ['Tester', testerOf(plan)],
          ['Telephone', plan.report?.firm?.telephone ?? ''],
        ],
        width,
      ),
    ]),
    ...(places.length === 0
      ? []
      : [stack([heading('Where the detectors are', width), ...places.map((text) => bullet(text, width, style))], 0.6)]),
    stack([
      heading(isLongTerm(plan) ? 'Until pick-up' : 'From closing the house to pick-up', width),
      say(whyClosed(plan)),
      ...(isSignatureAsked(plan) ? [say(SIGNATURE)] : []),
    ]),
    ...asked(plan, width, style),
    stack(
      [
        heading('Safe, and if something goes wrong', width),
        ...[...SAFE_AND_ALONE, ...deviationInstructions(plan), SAFETY_FIRST].map((text) => bullet(text, width, style)),
      ],
      0.6,
    ),
    blankLines(['What happened', 'When, and for how long'], width),
  ];
}

const SIGNATURE = 'You are asked to sign the non-interference agreement.';

/** Whether people in the house are still to sign: in a test for somebody else, or where nobody has answered whom it is for. */
function isSignatureAsked(plan: DocumentOrder['plan']): boolean {
  const { purpose, purposeAnswered } = plan.site;
  return (purpose !== 'own-household' || purposeAnswered === false) && agreementState(agreementOf(plan)) === 'open';
}

/** Returns the requests to occupants; a group's title stays with its first request. */
function asked(plan: DocumentOrder['plan'], width: number, style: TextStyle): readonly Block[] {
  return occupantRequests(plan).flatMap(({ title, asks }) => {
    const [first, ...rest] = asks.map((text) => checkBox(text, width, style));
    const name = paragraph(title, width, { ...style, weight: 'bold' });
    return [stack([space(1), name, space(0.8), first ?? space(0)]), ...rest];
  });
}
