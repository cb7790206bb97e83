import { CAUTIONS } from '../../geometry/index.ts';
import { type Block, paragraph, space, stack } from '../sheet/block.ts';
import { contentArea } from '../sheet/page-frame.ts';
import { type Area, inset } from '../sheet/paper.ts';
import { COLOUR, LINE_MM } from '../sheet/style.ts';
import { element, rectangle } from '../sheet/svg.ts';
import type { TextStyle } from '../sheet/text.ts';
import { centred, framed, type PaperOrder, READ_HEAD, READ_TITLE, ticked, toWrite } from './parts.ts';
import { askedOfOccupants, whenWords } from './words.ts';

/** mm. A knob with its rose passes; common practice, no published source. */
const HOLE = 30;
const PAD = 5;
/** How small the type may become, mm, and in which steps it is tried. */
const SIZES = [3.3, 3.1, 2.9, 2.7, 2.5] as const;

/**
 * Two hangers for door knobs on one page, to be cut out: a test is under way, what to keep, until when. After ANSI/AARST MAH-2019,
 * Exh. 4 (a notice is hung where people come in); the words are ours. The cautions stand on each, for the foot of the page is cut off.
 */
export function drawDoorHanger(order: PaperOrder): readonly string[] {
  const area = inset(contentArea(order.paper), 5);
  const width = (area.width - 8) / 2;
  const hangers = [0, 1].map((i) => drawHanger(order, { ...area, x: area.x + i * (width + 8), width }));
  return framed(order, 'Door hangers, to be cut out along the broken line', [hangers.join('')]);
}

function drawHanger(order: PaperOrder, area: Area): string {
  const { x, y, width, height } = area;
  const cut = { fill: 'none', stroke: COLOUR.ink, 'stroke-width': LINE_MM.box, 'stroke-dasharray': '3 2' };
  const words = fitting(order, width - 2 * PAD, height - HOLE - 2 * PAD);
  return (
    rectangle(x, y, width, height, cut) +
    element('circle', { cx: x + width / 2, cy: y + PAD + HOLE / 2, r: HOLE / 2, ...cut }) +
    words.draw(x + PAD, y + HOLE + 1.5 * PAD)
  );
}

/** The words in the largest type that the hanger holds. */
function fitting(order: PaperOrder, width: number, height: number): Block {
  const tried = SIZES.map((size) => hangerWords(order, width, { size }));
  const fits = tried.find((block) => block.height <= height);
  if (!fits) throw new Error('The words are too long for a door hanger.');
  return fits;
}

function hangerWords({ plan }: PaperOrder, width: number, style: TextStyle): Block {
  const soft = { ...style, size: style.size * 0.86, colour: COLOUR.inkSoft };
  const when = whenWords(plan)
    .filter(([name]) => name !== 'Detectors set out')
    .map(([name, at]) => paragraph(`${name}: ${at}.`, width, { ...style, weight: 'bold' }));
  return stack([
    centred('Radon test under way', width, READ_TITLE),
    centred('Please keep the house closed', width, READ_HEAD),
    space(1.5),
    stack(when, 0.4),
    space(1.5),
    stack(
      askedOfOccupants(plan).map((text) => ticked(text, width, style)),
      0.5,
    ),
    toWrite('Tester and telephone', width),
    space(1),
    paragraph(CAUTIONS.join(' '), width, soft),
  ]);
}
