import { agreementOf, agreementState } from '../../protocol/conditions/agreement.ts';
import { licenseOf } from '../../protocol/required-items/people.ts';
import { type Block, paragraph, space, stack } from '../block.ts';
import type { TextStyle } from '../text.ts';
import { describePlaces } from './detector-places.ts';
import {
  blankLines,
  bullet,
  checkBox,
  checkBoxes,
  clipped,
  type DocumentOrder,
  drawHandout,
  heading,
  isLong,
  READ_SOFT,
  READ_TEXT,
  testerOf,
  timeRows,
  typeSizes,
} from './document-blocks.ts';
import { clockLine, formatAt, NOT_SCHEDULED, testTimes } from './format-times.ts';
import { occupantRequests, SAFETY_FIRST, WHAT_IT_IS, whyClosed } from './occupant-texts.ts';

const NAME = 'Non-interference agreement';
const AGREEMENT = { title: NAME, name: NAME, sizes: typeSizes(4.2, 2.9), gap: 0.7 };

const COPY = 'A copy stays with who signs.';
const LAW = 'Some states prohibit interference with a radon test.';
/** A state rule that was read in its text. It is printed for Illinois only. */
const ILLINOIS_LAW = 'Illinois prohibits interference with a radon test: 32 Ill. Adm. Code 422.70(g).';

/**
 * Returns the agreement of an owner, seller or occupant not to interfere, with room for a signature or a refusal. After ANSI/AARST
 * MAH-2019, Exh. 2, and EPA's guide for buyers and sellers (on signatures); on recording a refusal from memory.
 */
export function drawAgreement(order: DocumentOrder): readonly string[] {
  let pages: readonly string[] = [];
  // What is signed is one page. Names and notes that are too long for it stand whole in the report.
  for (const fit of [WHOLE, SHORT, SHORTEST]) {
    pages = drawHandout(order, AGREEMENT, (width, style) => agreementBlocks(order, width, style, fit));
    if (pages.length === 1) break;
  }
  return pages;
}

/** How much of names and notes is printed. */
interface Fit {
  readonly places: (text: string) => string;
  readonly name: (text: string) => string;
  readonly note: (text: string) => string;
}
const WHOLE: Fit = { places: (text) => text, name: (text) => text.trim(), note: (text) => text.trim() };
const SHORT: Fit = {
  places: (text) => text,
  name: (text) => clipped(text.trim()),
  note: (text) => (isLong(text.trim()) ? 'The note stands in the report.' : text.trim()),
};
const SHORTEST: Fit = { ...SHORT, places: clipped };

function agreementBlocks(order: DocumentOrder, width: number, style: TextStyle, fit: Fit): readonly Block[] {
  const { plan } = order;
  const say = (text: string) => paragraph(text, width, style);
  // A time that is not scheduled gets a blank line without words: the page is full.
  const times = testTimes(plan, (text) => formatAt(text, plan, '') || null, order).map((time) =>
    time.otherwise === NOT_SCHEDULED ? { ...time, otherwise: '' } : time,
  );
  const places = describePlaces(plan);
  const detectors =
    places.length === 0 ? [] : [{ name: 'Detectors', at: fit.places(places.join('. ')), otherwise: '' }];
  const { client, firm } = plan.report ?? {};
  const parties = [
    { name: 'Client', at: fit.name(client?.name ?? '') || null, otherwise: '' },
    {
      name: 'Firm',
      at:
        [firm?.name, firm?.telephone]
          .map((part) => fit.name(part ?? ''))
          .filter(Boolean)
          .join(', ') || null,
      otherwise: '',
    },
  ];
  return [
    say(`${WHAT_IT_IS} ${whyClosed(plan)}`),
    stack(
      [
        space(0.4),
        timeRows([...parties, ...times, ...detectors], width, style),
        paragraph(clockLine(plan), width, READ_SOFT),
      ],
      0.8,
    ),
    ...promises(plan, width, style),
    stack([
      space(1),
      say('I tell visitors and contractors. I report any deviation promptly; it may make the test invalid.'),
      say('The tester writes down interference and reports it with the result.'),
    ]),
    say(SAFETY_FIRST),
    paragraph(`${isInIllinois(plan) ? ILLINOIS_LAW : LAW} ${COPY}`, width, READ_SOFT),
    signature(order, width, fit),
    refusal(order, width, fit),
    stack([
      blankLines(
        [
          ['Tester', testerOf(plan)],
          ['Certificate or license number', licenseOf(plan, testerOf(plan))],
        ],
        width,
      ),
      blankLines(['Signature of the tester', 'Date and time'], width),
    ]),
  ];
}

/** By the rule profile of the plan, or by the address. */
function isInIllinois({ protocol, report }: DocumentOrder['plan']): boolean {
  const state = report?.address?.state.trim().toLowerCase() ?? '';
  return protocol.profile === 'illinois-422-130' || state === 'il' || state === 'illinois';
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

/** Least width of a column for name, signature and day side by side, mm. */
const WIDE_ENOUGH = 100;

function signature({ plan }: DocumentOrder, width: number, fit: Fit): Block {
  const agreement = agreementOf(plan);
  const { signedBy, at, note } = agreement;
  const known = agreementState(agreement) === 'signed';
  const name = ['Name', known ? signedBy.trim() : ''] as const;
  const record = known
    ? `On record: signed by ${fit.name(signedBy)}, ${formatAt(at, plan, 'at a time that is not known')}. ${fit.note(note)}`
    : '';
  return stack([
    heading('Signed', width),
    paragraph(record, width, { size: READ_SOFT.size }),
    space(0.8),
    checkBoxes(['Owner', 'Seller', 'Occupant'], width),
    ...(width < WIDE_ENOUGH
      ? [blankLines([name], width), blankLines(['Signature', 'Date and time'], width)]
      : [blankLines([name, 'Signature', 'Date and time'], width)]),
  ]);
}

function refusal({ plan }: DocumentOrder, width: number, fit: Fit): Block {
  const { signedBy, at, refused, note } = agreementOf(plan);
  const who = fit.name(signedBy) || 'a person without a name';
  const record = refused
    ? `On record: ${who} refused to sign, ${formatAt(at, plan, 'at a time that is not known')}. ${fit.note(note)}`
    : '';
  return stack([
    heading('Not signed', width),
    checkBox('The agreement was presented; signing was refused.', width, READ_TEXT, refused),
    paragraph(record, width, { size: READ_SOFT.size }),
    blankLines(['By whom, and why', 'Date and time'], width),
  ]);
}
