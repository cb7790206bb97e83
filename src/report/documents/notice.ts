import { isLongTerm } from '../../protocol/timing/exposure-window.ts';
import { type Block, paragraph, space, stack } from '../block.ts';
import type { TextStyle } from '../text.ts';
import {
  dotted,
  framed,
  heading,
  masthead,
  onFewestPages,
  type PaperOrder,
  pagesInColumns,
  READ_SOFT,
  ticked,
  timeRows,
  toWriteBeside,
} from './parts.ts';
import { placesInWords } from './places.ts';
import { testerOf } from './tester.ts';
import { clockLine, testTimes, toldAt } from './times.ts';
import { askedOfOccupants, ifBroken, SAFETY_FIRST, WHAT_IT_IS, whyClosed } from './words.ts';

/** Type sizes that are tried, mm. */
const SIZES = [4, 3.85, 3.7, 3.6, 3.5, 3.4, 3.3, 3.2, 3.1] as const;

/**
 * The letter to the people in the house, before the test: when, what they are asked, why. After ANSI/AARST MAH-2019, Exh. 2
 * (times and conditions told beforehand); the words are ours.
 */
export function drawNotice(order: PaperOrder): readonly string[] {
  const head = masthead('Radon test in your house', order);
  const pages = onFewestPages(SIZES, (style) =>
    pagesInColumns(head, (width) => noticeBlocks(order, width, style), order, 0.9),
  );
  return framed(order, 'Notice to the people in the house', pages);
}

function noticeBlocks({ plan, date }: PaperOrder, width: number, style: TextStyle): readonly Block[] {
  const say = (text: string) => paragraph(text, width, style);
  const places = placesInWords(plan);
  return [
    say(WHAT_IT_IS),
    stack([
      heading('When', width),
      timeRows(testTimes(plan, toldAt, date), width, style),
      space(1),
      ...(isLongTerm(plan) ? [] : [say('Once the detectors are fetched, open the house as you like.')]),
      paragraph(clockLine(plan), width, READ_SOFT),
    ]),
    stack([heading('Whom to call', width), toWriteBeside([['Tester', testerOf(plan)], 'Telephone'], width)]),
    ...(places.length === 0
      ? []
      : [
          stack(
            [heading('Where the detectors stand', width), ...places.map((text) => dotted(text, width, style))],
            0.6,
          ),
        ]),
    stack([
      heading(isLongTerm(plan) ? 'Until they are fetched' : 'From the closing until they are fetched', width),
      say(whyClosed(plan)),
    ]),
    ...asked(plan, width, style),
    stack(
      [
        heading('If something goes wrong', width),
        ...[...ifBroken(plan), SAFETY_FIRST].map((text) => dotted(text, width, style)),
      ],
      0.6,
    ),
    toWriteBeside(['What happened', 'When, and for how long'], width),
  ];
}

/** A group's name stays with the first of its sentences. */
function asked(plan: PaperOrder['plan'], width: number, style: TextStyle): readonly Block[] {
  return askedOfOccupants(plan).flatMap(({ title, asks }) => {
    const [first, ...rest] = asks.map((text) => ticked(text, width, style));
    const name = paragraph(title, width, { ...style, weight: 'bold' });
    return [stack([space(1), name, space(0.8), first ?? space(0)]), ...rest];
  });
}
