import { CAUTIONS } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { isLongTerm } from '../../protocol/timing/exposure-limits.ts';
import { type Block, paragraph, space, stack } from '../block.ts';
import { contentArea } from '../page-frame.ts';
import { type Area, inset } from '../paper.ts';
import { COLOR, LINE_MM } from '../style.ts';
import { element, line, rectElement } from '../svg.ts';
import { drawText, shortened, type TextStyle } from '../text.ts';
import { blankLine, bullet, type DocumentOrder, framed, pageOf, siteLine, testerOf } from './document-blocks.ts';
import { describePickUp, formatForOccupants } from './format-times.ts';
import { CLOSED_HOURS, deviationInstructions, occupantRequests, SAFETY_FIRST, whyClosed } from './occupant-texts.ts';

/** Diameter of the hole, mm, for door knobs and levers: common practice, no published source. */
const HOLE = 30;
const PAD = 6;
const CUT = { fill: 'none', stroke: COLOR.ink, 'stroke-width': LINE_MM.box, 'stroke-dasharray': '3 2' } as const;
const FOLD = { stroke: COLOR.ink, 'stroke-width': LINE_MM.box, 'stroke-dasharray': '0.4 1.6' } as const;
/** Factors of the type size to try. */
const SHARES = Array.from({ length: 57 }, (_, i) => 1.4 - i * 0.015);

/**
 * Returns a door hanger to cut out and fold: the essentials on the right face, the whole list on the left. After ANSI/AARST MAH-2019, Exh. 4
 * (a notice at the entrance); the wording is ours. Each face has the cautions and the site, because the page footer is cut off.
 */
export function drawDoorHanger(order: DocumentOrder): readonly string[] {
  const area = inset(contentArea(pageOf(order)), 5);
  const half = area.width / 2;
  const middle = area.x + half;
  const left = { ...area, width: half };
  const drawn = [
    rectElement(area.x, area.y, area.width, area.height, CUT),
    line(middle, area.y, middle, area.y + area.height, FOLD),
    drawFace(left, area.x, (share, width) => backFace(order, share, width)),
    drawFace({ ...left, x: middle }, area.x + area.width, (share, width) => frontFace(order, share, width)),
  ];
  return framed(order, 'Door hanger: cut along the broken lines, fold along the dotted one', [drawn.join('')]);
}

/** Draws the hole, a slit to the outer edge, and the text in the largest type that fits. */
function drawFace(area: Area, outer: number, words: (share: number, width: number) => Block): string {
  const [x, y] = [area.x + area.width / 2, area.y + PAD + HOLE / 2];
  const width = area.width - 2 * PAD;
  const top = area.y + PAD + HOLE + PAD / 2;
  const room = area.y + area.height - PAD - top;
  const fits = largestThatFits((share) => words(share, width), room);
  return (
    element('circle', { cx: x, cy: y, r: HOLE / 2, ...CUT }) +
    line(x + (outer > x ? HOLE / 2 : -HOLE / 2), y, outer, y, CUT) +
    fits.draw(area.x + PAD, top)
  );
}

function largestThatFits(words: (share: number) => Block, room: number): Block {
  for (const share of SHARES) {
    const block = words(share);
    if (block.height <= room) return block;
  }
  throw new Error('The words are too long for a door hanger.');
}

function frontFace({ plan }: DocumentOrder, share: number, width: number): Block {
  const style = (size: number, weight: TextStyle['weight'] = 'regular'): TextStyle => ({ size: size * share, weight });
  const middle = (text: string, size: number, weight?: TextStyle['weight']) =>
    paragraph(text, width, { ...style(size, weight), anchor: 'middle' });
  const until = describePickUp(plan, formatForOccupants);
  return stack([
    middle('Radon test', 14, 'bold'),
    middle('under way in this house', 6),
    space(3),
    ...(isLongTerm(plan)
      ? [middle('Live in the house as usual.', 7.4, 'bold')]
      : [
          middle('Keep windows and', 7.4, 'bold'),
          middle('exterior doors closed.', 7.4, 'bold'),
          middle('Come and go, but close the door behind you.', 5),
        ]),
    space(3),
    middle('Do not touch the detectors.', 7.4, 'bold'),
    space(3),
    middle(until ? 'Until they are picked up' : 'Until', 5),
    until ? middle(until, 5.4, 'bold') : blankLine('Day and time', width),
    space(1),
    blankLine('Questions or problems? Call', width, whomToCall(plan)),
    space(1),
    foot(plan, width, share),
  ]);
}

/** Tester or firm with the telephone number; empty if no number is known. */
function whomToCall(plan: Plan): string {
  const { name = '', telephone = '' } = plan.report?.firm ?? {};
  return telephone.trim() ? [testerOf(plan) || name, telephone].filter(Boolean).join(', ') : '';
}

/** Returns the whole list of requests. */
function backFace({ plan }: DocumentOrder, share: number, width: number): Block {
  const style: TextStyle = { size: 4 * share };
  return stack([
    paragraph('While the test runs', width, { size: 6.4 * share, weight: 'bold' }),
    paragraph(whyClosed(plan), width, style),
    ...(isLongTerm(plan) ? [] : [paragraph(CLOSED_HOURS, width, style)]),
    ...occupantRequests(plan).map(({ title, asks }) =>
      stack([
        space(1),
        paragraph(title, width, { ...style, weight: 'bold' }),
        ...asks.map((text) => bullet(text, width, style)),
      ]),
    ),
    space(1),
    paragraph('If something goes wrong', width, { ...style, weight: 'bold' }),
    ...[deviationInstructions(plan).at(-1) ?? '', SAFETY_FIRST].map((text) => bullet(text, width, style)),
    space(1),
    foot(plan, width, share),
  ]);
}

function foot(plan: DocumentOrder['plan'], width: number, share: number): Block {
  const style: TextStyle = { size: Math.max(2.6, 3 * share) };
  const bold: TextStyle = { ...style, weight: 'bold' };
  return stack([
    paragraph(CAUTIONS.join(' '), width, style),
    {
      height: style.size * 1.5,
      draw: (x, y) => drawText(x, y + style.size * 1.2, shortened(siteLine(plan), width, bold), bold),
    },
  ]);
}
