import { agreementOf, agreementState } from '../../protocol/conditions/agreement.ts';
import { licenseOf } from '../../protocol/required-items/items.ts';
import { type Block, paragraph, space, stack } from '../block.ts';
import type { TextStyle } from '../text.ts';
import { describePlaces } from './detector-places.ts';
import {
  blankLines,
  bullet,
  checkBox,
  checkBoxes,
  type DocumentOrder,
  framed,
  heading,
  masthead,
  onFewestPages,
  pagesInColumns,
  READ_SOFT,
  READ_TEXT,
  testerOf,
  timeRows,
} from './document-blocks.ts';
import { clockLine, formatAt, testTimes } from './format-times.ts';
import { occupantRequests, SAFETY_FIRST, WHAT_IT_IS, whyClosed } from './occupant-texts.ts';

const SIZES = [3.7, 3.6, 3.5, 3.4, 3.3, 3.2, 3.1, 3, 2.9, 2.85] as const;

/** A state rule that was read. */
const LAW =
  'Some states prohibit interference with a radon test; Illinois does in 32 Ill. Adm. Code 422.70(g). A copy stays with who signs.';

/**
 * Returns the agreement of an owner, seller or occupant not to interfere, with room for a signature or a refusal. After ANSI/AARST
 * MAH-2019, Exh. 2, and EPA's guide for buyers and sellers (on signatures); on recording a refusal from memory.
 */
export function drawAgreement(order: DocumentOrder): readonly string[] {
  const head = masthead('Non-interference agreement', order);
  const pages = onFewestPages(SIZES, (style) =>
    pagesInColumns(head, (width) => agreementBlocks(order, width, style), order, 0.7),
  );
  return framed(order, 'Non-interference agreement', pages);
}

function agreementBlocks(order: DocumentOrder, width: number, style: TextStyle): readonly Block[] {
  const { plan } = order;
  const say = (text: string) => paragraph(text, width, style);
  const times = testTimes(plan, (text) => formatAt(text, plan, '') || null, order.date);
  const places = describePlaces(plan);
  const detectors =
    places.length === 0 ? [] : [{ name: 'Where the detectors are', at: places.join('. '), otherwise: '' }];
  return [
    say(`${WHAT_IT_IS} ${whyClosed(plan)}`),
    stack(
      [space(0.4), timeRows([...times, ...detectors], width, style), paragraph(clockLine(plan), width, READ_SOFT)],
      0.8,
    ),
    ...promises(plan, width, style),
    stack([
      space(1),
      say('I tell visitors and contractors. I report any deviation promptly; it may make the test invalid.'),
    ]),
    say(SAFETY_FIRST),
    paragraph(LAW, width, READ_SOFT),
    signature(order, width),
    refusal(order, width),
    stack([
      heading('Tester', width),
      blankLines(
        [
          ['Name, firm', [testerOf(plan), plan.report?.firm?.name].filter(Boolean).join(', ')],
          ['Certificate or license number', licenseOf(plan, testerOf(plan))],
        ],
        width,
      ),
      blankLines(['Signature', 'Date and time'], width),
    ]),
  ];
}

/** Returns the requests; the heading stays with the first group, a group's title with its first request. */
function promises(plan: DocumentOrder['plan'], width: number, style: TextStyle): readonly Block[] {
  return occupantRequests(plan).flatMap(({ title, asks }, i) => {
    const [first, ...rest] = asks.map((text) => bullet(text, width, style));
    const name = paragraph(title, width, { ...style, weight: 'bold' });
    const head = i === 0 ? [heading('I agree, for all who live or work here', width)] : [space(1)];
    return [stack([...head, name, space(0.6), first ?? space(0)]), ...rest];
  });
}

function signature({ plan }: DocumentOrder, width: number): Block {
  const agreement = agreementOf(plan);
  const { signedBy, at, note } = agreement;
  const known = agreementState(agreement) === 'signed';
  const record = known
    ? `On record: signed by ${signedBy.trim()}, ${formatAt(at, plan, 'at a time that is not known')}. ${note.trim()}`
    : '';
  return stack([
    heading('Signed', width),
    paragraph(record, width, { size: READ_SOFT.size }),
    space(0.8),
    checkBoxes(['Owner', 'Seller', 'Occupant'], width),
    blankLines([['Name', known ? signedBy.trim() : '']], width),
    blankLines(['Signature', 'Date and time'], width),
  ]);
}

function refusal({ plan }: DocumentOrder, width: number): Block {
  const { signedBy, at, refused, note } = agreementOf(plan);
  const who = signedBy.trim() || 'a person without a name';
  const record = refused
    ? `On record: ${who} refused to sign, ${formatAt(at, plan, 'at a time that is not known')}. ${note.trim()}`
    : '';
  return stack([
    heading('Not signed', width),
    checkBox('The agreement was presented; signing was refused.', width, READ_TEXT, refused),
    paragraph(record, width, { size: READ_SOFT.size }),
    blankLines(['By whom, and why', 'Date and time'], width),
  ]);
}
