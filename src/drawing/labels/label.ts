import type { RunningDimension } from '../../../geometry/dimension/running-dimensions.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { RoomRegion, Zone } from '../../../geometry/region/types.ts';
import type { Drawn, MeasureText } from '../text.ts';
import type { Thing } from '../things.ts';
import { type Block, blockTexts } from './block.ts';
import type { Area, Ground, Placer } from './placer.ts';
import { isInside, type Slot, slotAt } from './slot.ts';

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
  readonly over: readonly Ground[];
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
