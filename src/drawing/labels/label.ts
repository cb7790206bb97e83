import type { RunningDimension } from '../../../geometry/dimension/running-dimensions.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { RoomRegion, Zone } from '../../../geometry/region/types.ts';
import { unbrokenFigures } from '../../../geometry/units/no-break.ts';
import { inked, type Part } from '../display-list.ts';
import type { Ink } from '../inks.ts';
import { CAP_HEIGHT, DESCENT, type Drawn, LEADING, type MeasureText, type Text, type TextStyle } from '../text.ts';
import type { Thing } from '../things.ts';
import type { Area, Ground, Placer } from './placer.ts';
import { isInside, type Size, type Slot, slotAt, slotPart, turned } from './slot.ts';

/** The medium of labels: a screen at one scale, or a sheet of paper. Lengths, type sizes too, are plan mm. */
export interface LabelMedium {
  readonly measure: MeasureText;
  readonly type: { readonly fine: number; readonly small: number; readonly tag: number; readonly name: number };
  /** All labels are placed within it; null for no bound. */
  readonly area: Area | null;
  /** Whether the house is drawn so small that room names are in small type and things have no names. */
  readonly isSmall: boolean;
  /** Whether a room's label has the sizes of the room too. */
  readonly roomSizes: boolean;
  /**
   * Distances of dimensions: from an outside wall, from a face inside, from one row to the next; and the least size of a figure's touch
   * target.
   */
  readonly dimensions: Readonly<Record<'outside' | 'inside' | 'step' | 'target', number>>;
  /** Least radius of a detector's symbol. */
  readonly symbol: number;
}

/** A medium with the ground that is taken on it. */
export interface LabelSheet extends LabelMedium {
  readonly placer: Placer;
}

/** Texts with the lines that belong to them. Plan mm. */
export interface Label extends Drawn {
  /** The ground that its letters take. */
  readonly slots: readonly Slot[];
}
export type RoomLabel = Label & { readonly region: RoomRegion };
export type ThingLabel = Label & { readonly thing: Thing };
export type ZoneLabel = Label & { readonly zone: Zone };
export type DimensionLabel = Label & { readonly dimension: RunningDimension };

/** Takes the ground of a block and returns its label. */
export function writeBlock(block: Block, slot: Slot, { placer }: LabelSheet, shapes: Drawn['shapes'] = []): Label {
  placer.take(slot);
  return { texts: blockTexts(block, slot), shapes, slots: [slot] };
}

/** Where a block may be placed: over these kinds of ground, over the ground of `owner`, and within the area that `holds` tests. */
export interface Terms {
  readonly over?: readonly Ground[];
  readonly owner?: string;
  /** Whether the area contains a point. */
  readonly holds: (p: XY) => boolean;
}

/** Writes the first block that is free at one of the places. Returns its label; null if none is. */
export function writeFirst(
  tries: readonly { readonly block: Block; readonly turn: number }[],
  places: () => readonly XY[],
  { over, owner, holds }: Terms,
  sheet: LabelSheet,
): Label | null {
  if (tries.length === 0) return null;
  const { placer } = sheet;
  // The smallest width and height of all blocks as turned: where this rectangle is not free, no block is.
  const lying = tries.map(({ block: { width, height }, turn }) => (turn === 0 ? [width, height] : [height, width]));
  const [width = 0, height = 0] = [0, 1].map((axis) => Math.min(...lying.map((sizes) => sizes[axis] ?? 0)));
  const free = places().filter((at) => placer.isFree(slotAt({ width, height }, at), over, owner));
  for (const { block, turn } of tries) {
    for (const at of free) {
      const slot = slotAt(block, at, turn);
      if (placer.isFree(slot, over, owner) && isInside(holds, slot)) return writeBlock(block, slot, sheet);
    }
  }
  return null;
}

/** Lines of text, each centered on one point. Lengths are in the units of the type sizes. */
export interface Block extends Size {
  readonly lines: readonly Line[];
}

interface Line {
  readonly text: string;
  readonly style: TextStyle;
}

/** Free margin on each side of the letters, as a multiple of the type size. */
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

/** Returns the text in one line, in two and in three, as far as it can be broken between words. */
export function blockForms(text: string, style: TextStyle, measure: MeasureText): readonly Block[] {
  const widthOf = (line: string) => measure(line, style);
  const whole = widthOf(text);
  const words = wordsOf(text);
  const longest = Math.max(0, ...words.map(widthOf));
  const forms = [[text]];
  for (const parts of [2, 3]) {
    for (let width = Math.max(whole / parts, longest); width < whole; width += style.size * 0.5) {
      const lines = wrapWords(words, width, widthOf);
      if (lines.length > parts) continue;
      if (lines.length === parts) forms.push(lines);
      break;
    }
  }
  return forms.map((lines) => {
    const styled = lines.map((line) => ({ text: line, style }));
    return blockOf(styled, measure);
  });
}

/** Returns the words of a text; a figure and its unit are one word. */
export function wordsOf(text: string): readonly string[] {
  return unbrokenFigures(text).split(/ +/);
}

/** Returns words in lines no wider than `width`; a single word that is wider gets its own line. */
export function wrapWords(words: readonly string[], width: number, measure: (line: string) => number): string[] {
  const whole = words.join(' ');
  // Most texts fit: then only this one is measured.
  if (words.length > 1 && measure(whole) <= width) return [whole];
  const lines: string[] = [];
  for (const word of words) {
    const longer = `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && measure(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** Returns a line of text in the middle of a filled, outlined slot, which is legible over any drawing. */
export function plateLabel(text: string, style: TextStyle, slot: Slot, ink: Ink, part: Part = slotPart(slot)): Drawn {
  return { shapes: [inked(ink, part)], texts: [{ text, at: [slot.x, slot.y], turn: slot.turn, style }] };
}

/** The lines of a block in its slot. */
export function blockTexts({ lines, height }: Block, { x, y, turn }: Pick<Slot, 'x' | 'y' | 'turn'>): readonly Text[] {
  const first = lines[0]?.style.size ?? 0;
  let down = -height / 2 + (AIR + CAP_HEIGHT / 2) * first;
  return lines.map(({ text, style }, index) => {
    if (index > 0) down += style.size * LEADING;
    const [dx, dy] = turned([0, down], turn);
    const at: XY = [x + dx, y + dy];
    return { text, at, turn, style };
  });
}
