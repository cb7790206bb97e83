import { agreementOf, agreementState } from '../../protocol/conditions/agreement.ts';
import { type Block, paragraph, space, stack } from '../block.ts';
import type { TextStyle } from '../text.ts';
import {
  choices,
  dotted,
  framed,
  heading,
  masthead,
  onFewestPages,
  type PaperOrder,
  pagesInColumns,
  READ,
  READ_SOFT,
  ticked,
  timeRows,
  toWriteBeside,
} from './parts.ts';
import { placesInWords } from './places.ts';
import { testerOf } from './tester.ts';
import { clockLine, saidAt, testTimes } from './times.ts';
import { askedOfOccupants, SAFETY_FIRST, WHAT_IT_IS, whyClosed } from './words.ts';

const SIZES = [3.7, 3.6, 3.5, 3.4, 3.3, 3.2, 3.1, 3, 2.9] as const;

/** Where a state forbids it by rule; one that was read. */
const LAW = 'Some states forbid interfering with a radon test; Illinois does in 32 Ill. Adm. Code 422.70(g).';

/**
 * The agreement of an owner, seller or occupant not to interfere, with room for a signature or a refusal. After ANSI/AARST MAH-2019,
 * Exh. 2, and the EPA's guide for buyers and sellers (a signature is asked for); that a refusal is written down is from memory.
 */
export function drawAgreement(order: PaperOrder): readonly string[] {
  const head = masthead('Agreement to leave a radon test alone', order);
  const pages = onFewestPages(SIZES, (style) =>
    pagesInColumns(head, (width) => agreementBlocks(order, width, style), order, 0.7),
  );
  return framed(order, 'Agreement not to interfere', pages);
}

function agreementBlocks(order: PaperOrder, width: number, style: TextStyle): readonly Block[] {
  const { plan } = order;
  const say = (text: string) => paragraph(text, width, style);
  const times = testTimes(plan, (text) => saidAt(text, plan, '') || null, order.date);
  const places = placesInWords(plan);
  const detectors = places.length === 0 ? [] : [{ name: 'Where they stand', at: places.join('. '), otherwise: '' }];
  return [
    say(`${WHAT_IT_IS} ${whyClosed(plan)}`),
    stack(
      [space(0.4), timeRows([...times, ...detectors], width, style), paragraph(clockLine(plan), width, READ_SOFT)],
      0.8,
    ),
    ...promises(plan, width, style),
    stack([space(1), say('I tell the tester of anything that was not kept. I know that the test may then not count.')]),
    say(SAFETY_FIRST),
    paragraph(LAW, width, READ_SOFT),
    signature(order, width),
    refusal(order, width),
    stack([
      heading('Tester', width),
      toWriteBeside([['Name', testerOf(plan)], 'Certificate or license number'], width),
      toWriteBeside(['Signature', 'Date and time'], width),
    ]),
  ];
}

/** The heading stays with the first group, a group's name with the first of its sentences. */
function promises(plan: PaperOrder['plan'], width: number, style: TextStyle): readonly Block[] {
  return askedOfOccupants(plan).flatMap(({ title, asks }, i) => {
    const [first, ...rest] = asks.map((text) => dotted(text, width, style));
    const name = paragraph(title, width, { ...style, weight: 'bold' });
    const head = i === 0 ? [heading('I agree, for all who live or work here', width)] : [space(1)];
    return [stack([...head, name, space(0.6), first ?? space(0)]), ...rest];
  });
}

function signature({ plan }: PaperOrder, width: number): Block {
  const agreement = agreementOf(plan);
  const { signedBy, at, note } = agreement;
  const known = agreementState(agreement) === 'signed';
  const record = known
    ? `On record: signed by ${signedBy.trim()}, ${saidAt(at, plan, 'at a time that is not known')}. ${note.trim()}`
    : '';
  return stack([
    heading('Signed', width),
    paragraph(record, width, { size: READ_SOFT.size }),
    space(0.8),
    choices(['Owner', 'Seller', 'Occupant'], width),
    toWriteBeside([['Name', known ? signedBy.trim() : '']], width),
    toWriteBeside(['Signature', 'Date and time'], width),
  ]);
}

function refusal({ plan }: PaperOrder, width: number): Block {
  const { signedBy, at, refused, note } = agreementOf(plan);
  const who = signedBy.trim() || 'a person without a name';
  const record = refused
    ? `On record: ${who} refused to sign, ${saidAt(at, plan, 'at a time that is not known')}. ${note.trim()}`
    : '';
  return stack([
    heading('Not signed', width),
    ticked('The agreement was shown; its signing was refused.', width, READ, refused),
    paragraph(record, width, { size: READ_SOFT.size }),
    toWriteBeside(['By whom, and why', 'Date and time'], width),
  ]);
}
