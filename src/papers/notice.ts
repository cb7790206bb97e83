import { CAUTIONS } from '../../geometry/index.ts';
import { type Block, paragraph, space, stack } from '../sheet/block.ts';
import {
  clockLine,
  columnsOf,
  framed,
  heading,
  type PaperOrder,
  pagesInColumns,
  READ,
  READ_SOFT,
  READ_TITLE,
  ticked,
  toWriteBeside,
} from './parts.ts';
import { askedOfOccupants, detectorsInWords, IF_BROKEN, WHY_CLOSED, whenWords } from './words.ts';

/**
 * The letter to the people in the house, before the test: when, what they are asked, why. After ANSI/AARST MAH-2019, Exh. 2
 * (times and conditions told beforehand); the words are ours.
 */
export function drawNotice(order: PaperOrder): readonly string[] {
  const { plan, paper } = order;
  const columns = columnsOf(paper, 2);
  const width = columns[0]?.width ?? 0;
  const say = (text: string) => paragraph(text, width, READ);
  const blocks: readonly Block[] = [
    paragraph('Your house is tested for radon', width, READ_TITLE),
    say(WHY_CLOSED),
    stack([heading('When', width), ...whenRows(order, width), paragraph(clockLine(plan), width, READ_SOFT)], 0.8),
    say(`${detectorsInWords(plan)}.`),
    stack([
      heading('Who comes', width),
      toWriteBeside(['Tester', 'Telephone'], width),
      toWriteBeside(['Certificate or licence number'], width),
    ]),
    ...asked(order, width),
    stack([heading('If something goes wrong', width), say(IF_BROKEN)]),
    stack([heading('Good to know', width), ...CAUTIONS.map((text) => paragraph(text, width, READ_SOFT))], 0.6),
  ];
  return framed(order, 'Notice to the people in the house', pagesInColumns(blocks, columns, 2.2));
}

function whenRows({ plan }: PaperOrder, width: number): readonly Block[] {
  return whenWords(plan).map(([name, when]) => paragraph(`${name}: ${when}.`, width, READ));
}

/** The heading stays with the first of its sentences. */
function asked({ plan }: PaperOrder, width: number): readonly Block[] {
  const [first, ...rest] = askedOfOccupants(plan).map((text) => ticked(text, width));
  return [stack([heading('From the closing to the pick-up', width), first ?? space(0)], 0.8), ...rest];
}
