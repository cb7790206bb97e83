import { CAUTIONS } from '../../geometry/index.ts';
import { agreementOf } from '../job/log/edit.ts';
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
  saidAt,
  ticked,
  toWriteBeside,
} from './parts.ts';
import { askedOfOccupants, detectorsInWords, WHY_CLOSED, whenWords } from './words.ts';

/**
 * The agreement of an owner, seller or occupant not to interfere, with room for a signature or a refusal. After ANSI/AARST MAH-2019,
 * Exh. 2, and the EPA's guide for buyers and sellers (a signature is asked for); that a refusal is written down is from memory.
 */
export function drawAgreement(order: PaperOrder): readonly string[] {
  const { plan, paper } = order;
  const columns = columnsOf(paper, 2);
  const width = columns[0]?.width ?? 0;
  const say = (text: string) => paragraph(text, width, READ);
  const [first, ...rest] = askedOfOccupants(plan).map((text) => ticked(text, width));
  const blocks: readonly Block[] = [
    paragraph('Not to interfere with a radon test', width, READ_TITLE),
    say(`Place: ${plan.site.label.trim() || plan.title.trim() || 'as named below'}. ${detectorsInWords(plan)}.`),
    stack(
      [...whenWords(plan).map(([name, at]) => say(`${name}: ${at}.`)), paragraph(clockLine(plan), width, READ_SOFT)],
      0.8,
    ),
    say(WHY_CLOSED),
    stack([heading('I agree to this, for all who live or work here', width), first ?? space(0)], 0.8),
    ...rest,
    say('I tell the tester of anything on this list that was not kept. I know that the test may then be void.'),
    stack([
      heading('Signed', width),
      ...signedAlready(order, width),
      toWriteBeside(['Name', 'Owner, seller or occupant'], width),
      toWriteBeside(['Signature', 'Date and time'], width),
    ]),
    stack([
      heading('Or not signed', width),
      ticked('The agreement was shown and its signing was refused.', width),
      toWriteBeside(['Reason, where one was given'], width),
    ]),
    stack([heading('Tester', width), toWriteBeside(['Name and number', 'Signature and date'], width)]),
    stack(
      CAUTIONS.map((text) => paragraph(text, width, READ_SOFT)),
      0.4,
    ),
  ];
  return framed(order, 'Agreement not to interfere', pagesInColumns(blocks, columns, 1.6));
}

/** What the plan has on record. */
function signedAlready({ plan }: PaperOrder, width: number): readonly Block[] {
  const { signedBy, at, refused, note } = agreementOf(plan);
  if (!refused && !signedBy.trim()) return [];
  const who = signedBy.trim() || 'a person without a name';
  const when = saidAt(at, plan, 'at a time that is not known');
  const words = refused ? `On record: ${who} refused to sign, ${when}.` : `On record: signed by ${who}, ${when}.`;
  return [paragraph([words, note.trim()].filter(Boolean).join(' '), width, READ)];
}
