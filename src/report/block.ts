/** Pieces of a page whose height is known before they are drawn, so that layout comes before drawing. All lengths in mm of paper. */
import { COLOR, LINE_MM } from './style.ts';
import { type Attributes, group, line, rectElement } from './svg.ts';
import { balancedText, drawText, lineHeight, shortened, type TextStyle, wrapText } from './text.ts';

/** `draw` returns SVG with the block's upper left corner at (x, y), mm. */
export interface Block {
  readonly height: number;
  readonly draw: (x: number, y: number) => string;
}

/** Returns an empty block of a height, mm. */
export function space(height: number): Block {
  return { height, draw: () => '' };
}

/** A text of more lines is shortened with "…": a long text that was pasted by mistake must not run past the edge of a page. */
const MOST_LINES = 12;

/** Returns whether a paragraph shows the whole text, not shortened. */
export function fitsParagraph(text: string, width: number, style: TextStyle): boolean {
  return wrapText(text, width, style).length <= MOST_LINES;
}

/** Returns the text in parts that each fit into a paragraph, so that nothing of a long record is lost; empty text is one part. */
export function paragraphParts(text: string, width: number, style: TextStyle): readonly string[] {
  const lines = wrapText(text, width, style);
  if (lines.length <= MOST_LINES) return [text];
  const count = Math.ceil(lines.length / MOST_LINES);
  return Array.from({ length: count }, (_, i) => lines.slice(i * MOST_LINES, (i + 1) * MOST_LINES).join(' '));
}

/** Returns text wrapped to a width, shortened after `MOST_LINES` lines. Empty text has no height. */
export function paragraph(text: string, width: number, style: TextStyle): Block {
  const all = style.anchor === 'middle' ? balancedText(text, width, style) : wrapText(text, width, style);
  const lines =
    all.length > MOST_LINES
      ? [...all.slice(0, MOST_LINES - 1), shortened(all.slice(MOST_LINES - 1).join(' '), width, style)]
      : all;
  const step = lineHeight(style);
  const { anchor = 'start' } = style;
  const shift = { start: 0, middle: width / 2, end: width }[anchor];
  return {
    height: lines.length * step,
    draw: (x, y) => {
      const drawn = lines.map((one, i) => drawText(x + shift, y + i * step + style.size * 0.95, one, style)).join('');
      return lines.length > 1 ? group({ role: 'paragraph' }, drawn) : drawn;
    },
  };
}

/** Returns a thin horizontal line. */
export function ruling(width: number, weight: number = LINE_MM.rule, color: string = COLOR.inkSoft): Block {
  return { height: weight, draw: (x, y) => line(x, y, x + width, y, { stroke: color, 'stroke-width': weight }) };
}

/** Returns the blocks one below the other, `gap` mm apart; blocks without height are left out. */
export function stack(blocks: readonly Block[], gap = 0): Block {
  const shown = blocks.filter(({ height }) => height > 0);
  return {
    height: shown.reduce((sum, { height }) => sum + height, 0) + Math.max(0, shown.length - 1) * gap,
    draw: (x, y) => {
      let top = y;
      const parts: string[] = [];
      for (const block of shown) {
        parts.push(block.draw(x, top));
        top += block.height + gap;
      }
      return parts.join('');
    },
  };
}

/** Returns blocks side by side, tops aligned, each `left` mm from the left edge. */
export function besides(cells: readonly { readonly left: number; readonly block: Block }[]): Block {
  return {
    height: Math.max(0, ...cells.map(({ block }) => block.height)),
    draw: (x, y) => cells.map(({ left, block }) => block.draw(x + left, y)).join(''),
  };
}

/** Returns the block moved to the right. */
export function indented(block: Block, by: number): Block {
  return { height: block.height, draw: (x, y) => block.draw(x + by, y) };
}

/** Returns the block in a heavy frame. `width` is that of the frame; the block has 4 mm less. */
export function boxed(block: Block, width: number): Block {
  const height = block.height + 3;
  return {
    height,
    draw: (x, y) =>
      rectElement(x + 0.35, y + 0.35, width - 0.7, height - 0.7, {
        fill: 'none',
        stroke: COLOR.ink,
        'stroke-width': 0.7,
      }) + block.draw(x + 2, y + 1.5),
  };
}

/** Returns the block with its role in the page (WAI-ARIA 1.2), for screen readers. */
export function withRole({ height, draw }: Block, role: string, more: Attributes = {}): Block {
  return { height, draw: (x, y) => group({ role, ...more }, draw(x, y)) };
}
