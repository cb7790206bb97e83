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

/** What labels are laid out for: a screen at one scale, or a sheet of paper. Lengths are mm of the plan, those of type too. */
export interface LabelMedium {
  readonly measure: MeasureText;
  readonly type: { readonly fine: number; readonly small: number; readonly tag: number; readonly name: number };
  /** Nothing is placed beyond it; null for no bound. */
  readonly area: Area | null;
  /** The house is drawn so small that rooms are named in small type, and things not at all. */
  readonly isSmall: boolean;
  /** Whether a room's label has the sizes of the room too. */
  readonly roomSizes: boolean;
  /** From an outside wall, from a face inside, and from one line of dimensions to the next; a figure's least target. */
  readonly dimensions: Readonly<Record<'outside' | 'inside' | 'step' | 'target', number>>;
  /** Radius of the least symbol of a detector. */
  readonly symbol: number;
}

/** A medium with the ground that is taken on it. */
export interface LabelSheet extends LabelMedium {
  readonly placer: Placer;
}

/** Something written, with the lines that belong to it. Plan mm. */
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

/** Where a block may stand: on what ground, of whom, and inside of what. */
export interface Terms {
  readonly over?: readonly Ground[];
  readonly owner?: string;
  /** Whether it holds a point. */
  readonly holds: (p: XY) => boolean;
}

/** Writes the first of some blocks that has room at one of some places; null where none has. */
export function writeFirst(
  tries: readonly { readonly block: Block; readonly turn: number }[],
  places: () => readonly XY[],
  { over, owner, holds }: Terms,
  sheet: LabelSheet,
): Label | null {
  if (tries.length === 0) return null;
  const { placer } = sheet;
  // What lies in every block however it is turned: where it is not free, none of them is.
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

/** A few lines of text about a middle. Lengths are in the units of their type. */
export interface Block extends Size {
  readonly lines: readonly Line[];
}

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

/** A figure and its unit are one word. */
export function wordsOf(text: string): readonly string[] {
  return unbrokenFigures(text).split(/ +/);
}

/** Words in lines no wider than `width`; a word that is wider by itself has a line of its own. */
export function wrapWords(words: readonly string[], width: number, measure: (line: string) => number): string[] {
  const lines: string[] = [];
  for (const word of words) {
    const longer = `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && measure(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** A line of text in the middle of a slot that is filled, and edged, to be read over anything. */
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
