import type { XY } from '../../../geometry/plan/model.ts';
import { onEdge } from '../../../geometry/region/visible-edges.ts';
import { unbrokenFigures } from '../../../geometry/units/no-break.ts';
import { arc, type Part, ringsPart } from '../display-list.ts';
import type { Ink } from '../inks.ts';
import type { Drawn, MeasureText, Text, TextStyle } from '../text.ts';
import { CAP_HEIGHT, DESCENT, LEADING, textAt } from '../text.ts';
import { type Slot, slotCorners } from './placer.ts';

/** A few lines of text about a middle. Lengths are in units of the medium. */
export interface Block {
  readonly lines: readonly Line[];
  readonly width: number;
  readonly height: number;
}
export type Size = Pick<Block, 'width' | 'height'>;

interface Line {
  readonly text: string;
  readonly style: TextStyle;
}

/** Free ground about the letters, in sizes of the type. */
const AIR = 0.2;

export function blockOf(lines: readonly Line[], measure: MeasureText): Block {
  const [first, last] = [lines[0], lines.at(-1)];
  if (!first || !last) return { lines, width: 0, height: 0 };
  const air = 2 * AIR * first.style.size;
  const steps = lines.slice(1).reduce((sum, { style }) => sum + style.size * LEADING, 0);
  return {
    lines,
    width: Math.max(...lines.map(({ text, style }) => measure(text, style))) + air,
    height: first.style.size * CAP_HEIGHT + steps + last.style.size * DESCENT + air,
  };
}

/** The same text in one line, in two and in three, as far as it can be parted between words. */
export function blockForms(text: string, style: TextStyle, measure: MeasureText): readonly Block[] {
  const whole = measure(text, style);
  const words = wordsOf(text);
  const longest = Math.max(0, ...words.map((word) => measure(word, style)));
  const forms = [blockOf([{ text, style }], measure)];
  for (const parts of [2, 3]) {
    for (let width = Math.max(whole / parts, longest); width < whole; width += style.size * 0.5) {
      const lines = wrapWords(words, width, (line) => measure(line, style));
      if (lines.length > parts) continue;
      if (lines.length === parts) {
        forms.push(
          blockOf(
            lines.map((line) => ({ text: line, style })),
            measure,
          ),
        );
      }
      break;
    }
  }
  return forms;
}

/** A figure and its unit are one word. */
export function wordsOf(text: string): readonly string[] {
  return unbrokenFigures(text).split(/ +/);
}

/** Words in lines no wider than `width`; a word that is wider by itself has a line of its own. */
export function wrapWords(
  words: readonly string[],
  width: number,
  measure: (line: string) => number,
): readonly string[] {
  const lines: string[] = [];
  for (const word of words) {
    const longer = `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && measure(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

export function blockSlot({ width, height }: Size, [x, y]: XY, turn = 0): Slot {
  return { x, y, width, height, turn };
}

export function slotPart(slot: Slot): Part {
  return ringsPart([slotCorners(slot)]);
}

/** A slot with rounded corners. */
export function roundedPart({ turn, width, height, ...middle }: Slot, radius: number): Part {
  const within = slotCorners({ ...middle, turn, width: width - 2 * radius, height: height - 2 * radius });
  const arcs = within.map((corner, i) => arc(corner, radius, ((turn + 90 * (i + 2)) * Math.PI) / 180, Math.PI / 2));
  const sides = arcs.map(
    (each, i) => ({ kind: 'line', from: onEdge(each, 1), to: onEdge(arcs[(i + 1) % 4] ?? each, 0) }) as const,
  );
  return ringsPart([arcs.flatMap((each, i) => [each, sides[i] ?? each])]);
}

/** A line of text in the middle of a slot that is filled, and edged, to be read over anything. */
export function plateLabel(text: string, style: TextStyle, slot: Slot, ink: Ink, part = slotPart(slot)): Drawn {
  return { shapes: [{ ink, parts: [part] }], texts: [textAt(text, [slot.x, slot.y], style, slot.turn)] };
}

/** The largest rectangle that lies in every one of some blocks about the same middle: where it is not free, none of them is. */
export function coreOf(blocks: readonly Size[]): Size {
  return {
    width: Math.min(...blocks.map(({ width }) => width)),
    height: Math.min(...blocks.map(({ height }) => height)),
  };
}

/** The lines of a block with its middle at a place. */
export function blockTexts({ lines, height }: Block, [x, y]: XY, turn = 0): readonly Text[] {
  const [first] = lines;
  if (!first) return [];
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  let down = -height / 2 + (AIR + CAP_HEIGHT / 2) * first.style.size;
  return lines.map(({ text, style }, index) => {
    if (index > 0) down += style.size * LEADING;
    return { text, at: [x - down * sin, y + down * cos], turn, style };
  });
}

/** Degrees at which a text along a line is not upside down; upright text is read from the right, as on a drawing. */
export function uprightTurn(degrees: number): number {
  const turn = ((((degrees + 90) % 180) + 180) % 180) - 90;
  return turn > 89.9 - 1e-9 ? turn - 180 : turn;
}

/** Degrees of a text along a line. */
export function turnAlong([ax, ay]: XY, [bx, by]: XY): number {
  return uprightTurn((Math.atan2(by - ay, bx - ax) * 180) / Math.PI);
}

/** Steps of the grid on which a name looks for its place, and points on the edge of a slot, in heights of a line. */
const EDGE_STEP = 1;

/** Whether the edge of a slot stays within rings: its corners and points between them. @param holds of a point */
export function isInside(holds: (p: XY) => boolean, slot: Slot): boolean {
  const corners = slotCorners(slot);
  const step = slot.height * EDGE_STEP;
  return corners.every(([x, y], i) => {
    const [nx, ny] = corners[(i + 1) % 4] ?? [x, y];
    const steps = Math.max(1, Math.ceil(Math.hypot(nx - x, ny - y) / step));
    for (let k = 0; k < steps; k++) if (!holds([x + ((nx - x) * k) / steps, y + ((ny - y) * k) / steps])) return false;
    return true;
  });
}

/** Where the way from a slot's middle to a point leaves the slot; the point itself when it lies within. */
export function edgeToward({ x, y, width, height, turn }: Slot, [px, py]: XY): XY {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const dx = (px - x) * cos + (py - y) * sin;
  const dy = (py - y) * cos - (px - x) * sin;
  const share = Math.min(width / 2 / Math.max(Math.abs(dx), 1e-9), height / 2 / Math.max(Math.abs(dy), 1e-9), 1);
  return [x + (px - x) * share, y + (py - y) * share];
}
