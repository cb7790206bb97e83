import { createPlacer, DRAWN, type Ground, type Placer } from '../../../drawing/labels/placer.ts';
import type { Slot } from '../../../drawing/labels/slot.ts';
import type { SizePx, Viewport } from '../../../state/viewport.ts';

/** Finds places for what is written on the overlay, over the labels of the sheet. Screen px. */
export interface OverlayPlacer {
  /**
   * Takes and returns the first slot with nothing written under it; where there is none, the one that hides the least of the sheet's labels.
   * @param over what of the sheet may lie under it
   */
  readonly claim: (slots: readonly Slot[], over?: readonly Ground[]) => Slot | null;
  /** Takes it whatever is there: for what must be shown. */
  readonly take: (slot: Slot) => void;
  /** So much of what is written the slot would hide, px²; labels of the sheet count by an eighth. */
  readonly covered: (slot: Slot) => number;
}

/** What may lie under something on the overlay: its own marks are told by what it has taken itself. */
const UNDER: readonly Ground[] = [...DRAWN, 'mark'];

/** @param sheet in mm of the plan @param stage nothing is placed beyond it; null for no bound */
export function overlayPlacer(sheet: Placer, view: Viewport, stage: SizePx | null): OverlayPlacer {
  const own = createPlacer(stage && { x: 0, y: 0, ...stage }, 50);
  return {
    claim: (slots, over = UNDER) => {
      const free = slots.filter((slot) => own.isFree(slot));
      const found =
        free.find((slot) => sheet.isFree(planSlot(view, slot), over)) ??
        leastOf(free, (slot) => sheet.covered(planSlot(view, slot)));
      if (found) own.take(found);
      return found;
    },
    take: (slot) => own.take(slot),
    covered: (slot) => own.covered(slot) + (sheet.covered(planSlot(view, slot)) * view.scale ** 2) / 8,
  };
}

/** Returns the first slot that hides the least; null for no slots. */
function leastOf(slots: readonly Slot[], hides: (slot: Slot) => number): Slot | null {
  const costs = slots.map(hides);
  return slots[costs.indexOf(Math.min(...costs))] ?? null;
}

/** A slot of the screen, px, on the plan, mm. */
export function planSlot({ scale, x, y }: Viewport, slot: Slot): Slot {
  const { width, height, turn } = slot;
  return { x: (slot.x - x) / scale, y: (slot.y - y) / scale, width: width / scale, height: height / scale, turn };
}
