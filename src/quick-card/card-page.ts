import { TONE_WORD } from '../../geometry/messages/index.ts';
import { capital } from '../../geometry/plan/nouns.ts';
import { type Block, besides, paragraph, ruling, space, stack } from '../report/block.ts';
import { bullet } from '../report/documents/document-blocks.ts';
import { clockLine, formatPrinted } from '../report/documents/format-times.ts';
import { pageDocument } from '../report/page-frame.ts';
import { type PageSize, type PaperName, pageSize } from '../report/paper.ts';
import { COLOR, EDGE_MM, LINE_MM } from '../report/style.ts';
import { escapeXml, rectElement } from '../report/svg.ts';
import type { TextStyle } from '../report/text.ts';
import {
  type CardFact,
  type CardSection,
  cardCautions,
  cardSections,
  openSentence,
  placeFacts,
  SKETCH_KEY,
  timeFacts,
  twoKits,
} from './card-texts.ts';
import type { QuickCard } from './describe-card.ts';
import { drawSketch } from './sketch.ts';

/** The card on one page, always portrait: the sketch at the top and the steps below fill it. */

export interface CardPageOptions {
  readonly paper: PaperName;
  /** ISO 8601 date of printing: this code has no clock. */
  readonly date: string;
}

/** Returns the size of the portrait page, mm. */
export function cardPageSize(paper: PaperName): PageSize {
  return pageSize(paper, 'portrait');
}

const PAD = 5;
const GUTTER = 7;
const SKETCH = { width: 96, height: 92 } as const;
/** Type sizes to try, mm, largest first: the first with which the card fits on one page is used. */
const SIZES: readonly number[] = Array.from({ length: 20 }, (_, i) => 3.9 - i * 0.1);

/** Returns the card as an SVG document of one page. Throws if it does not fit. Pure: the same card and date give the same text. */
export function drawCardPage(card: QuickCard, { paper, date }: CardPageOptions): string {
  const { width, height } = cardPageSize(paper);
  const frame = { x: EDGE_MM, y: EDGE_MM, width: width - 2 * EDGE_MM, height: height - 2 * EDGE_MM };
  const [inside, room] = [frame.width - 2 * PAD, frame.height - 2 * PAD];
  const tried = SIZES.map((size) => pageBlock(card, date, inside, { size }));
  const block = tried.find((each) => each.height <= room);
  if (!block) throw new Error('The card is too long for one page. Shorten the name of the plan.');
  return pageDocument(
    { width, height },
    escapeXml(card.plan.title),
    rectElement(frame.x, frame.y, frame.width, frame.height, {
      fill: 'none',
      stroke: COLOR.ink,
      'stroke-width': LINE_MM.frame,
    }),
    block.draw(frame.x + PAD, frame.y + PAD),
  );
}

function pageBlock(card: QuickCard, date: string, width: number, style: TextStyle): Block {
  return stack([
    head(card, date, width, style),
    space(2),
    ruling(width, LINE_MM.box, COLOR.ink),
    space(2),
    card.spot ? spotPart(card, width, style) : whyPart(card, width, style),
    space(2),
    ruling(width, LINE_MM.box, COLOR.ink),
    space(1.5),
    foot(card, width, style),
  ]);
}

function head({ plan, spot }: QuickCard, date: string, width: number, { size }: TextStyle): Block {
  const kits = spot && spot.detectors.length > 1 ? 'two kits side by side' : 'one kit';
  const parts = [
    `Radon test with ${kits}`,
    spot ? capital(TONE_WORD[spot.tone]) : '',
    plan.site.label.trim(),
    `Made ${formatPrinted(date, plan)}`,
  ];
  return stack([
    paragraph(plan.title, width, { size: size * 1.9, weight: 'bold' }),
    paragraph(`${parts.filter(Boolean).join('. ')}.`, width, { size }),
    paragraph((spot && openSentence(spot)) ?? '', width, { size: size * 1.15, weight: 'bold' }),
  ]);
}

function spotPart(card: QuickCard, width: number, style: TextStyle): Block {
  const { spot, times, plan } = card;
  if (!spot) return space(0);
  const beside = width - SKETCH.width - GUTTER;
  const when = times.known
    ? [
        ...timeFacts(times).map((fact) => factBlock(fact, beside, style)),
        paragraph(clockLine(plan), beside, soft(style)),
      ]
    : [factBlock({ name: 'When', text: times.why }, beside, style)];
  const facts = stack([...placeFacts(spot).map((fact) => factBlock(fact, beside, style)), ...when], style.size * 0.5);
  const sketch: Block = { height: SKETCH.height, draw: (x, y) => drawSketch(card, { x, y, ...SKETCH }) };
  return stack([
    besides([
      { left: 0, block: stack([sketch, paragraph(SKETCH_KEY, SKETCH.width, soft(style))]) },
      { left: SKETCH.width + GUTTER, block: facts },
    ]),
    space(3),
    sectionsPart(cardSections(card), width, style),
  ]);
}

/** Two columns of heights as equal as possible: each keeps the order of the sections, and the first section is in the left column. */
function sectionsPart(sections: readonly CardSection[], width: number, style: TextStyle): Block {
  const each = (width - GUTTER) / 2;
  const blocks = sections.map((section) => sectionBlock(section, each, style));
  const ways = Array.from({ length: 2 ** Math.max(0, blocks.length - 1) }, (_, way) => way);
  const isRight = (way: number, k: number) => k > 0 && Math.floor(way / 2 ** (k - 1)) % 2 === 1;
  const columns = ways.map(
    (way) =>
      [false, true].map((right) =>
        stack(
          blocks.filter((_, k) => isRight(way, k) === right),
          2,
        ),
      ) as [Block, Block],
  );
  const [left, right] = columns.reduce((a, b) => (taller(b) < taller(a) ? b : a));
  return besides([
    { left: 0, block: left },
    { left: each + GUTTER, block: right },
  ]);
}

const taller = (pair: readonly Block[]): number => Math.max(...pair.map(({ height }) => height));

function sectionBlock({ title, items }: CardSection, width: number, style: TextStyle): Block {
  return stack(
    [paragraph(title, width, { ...style, weight: 'bold' }), ...items.map((text) => bullet(text, width, style))],
    style.size * 0.15,
  );
}

function factBlock({ name, text }: CardFact, width: number, { size }: TextStyle): Block {
  return stack([
    paragraph(name, width, { size, color: COLOR.inkSoft }),
    paragraph(text, width, { size: size * 1.15, weight: 'bold' }),
  ]);
}

function whyPart({ noSpot }: QuickCard, width: number, style: TextStyle): Block {
  if (!noSpot) return space(0);
  return stack(
    [
      paragraph('No spot yet', width, { size: style.size * 1.5, weight: 'bold' }),
      paragraph(noSpot.why, width, style),
      sectionBlock({ title: 'What would help', items: noSpot.helps }, width, style),
    ],
    2,
  );
}

function foot(card: QuickCard, width: number, style: TextStyle): Block {
  return stack(
    [paragraph(twoKits(card) ?? '', width, style), paragraph(cardCautions().join(' '), width, soft(style))],
    style.size * 0.5,
  );
}

const soft = ({ size }: TextStyle): TextStyle => ({ size: Math.max(2.5, size * 0.9), color: COLOR.inkSoft });
