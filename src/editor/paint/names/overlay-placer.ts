import { createPlacer, DRAWN, type Ground, type Placer } from '../../../drawing/labels/placer.ts';
import type { Slot } from '../../../drawing/labels/slot.ts';
import type { SizePx, Viewport } from '../../../state/viewport.ts';

/** Finds places for texts on the overlay, over the labels of the sheet. Screen px. */
export interface OverlayPlacer {
  /**
   * Takes and returns the first slot with no text under it; if there is none, the one that hides the least of the sheet's labels. Null if
   * all slots are taken on the overlay.
   * @param slots tried in this order; one that is not reached is not computed
   * @param over ground of the sheet that it may cover
   */
  readonly claim: (slots: Iterable<Slot>, over?: readonly Ground[]) => Slot | null;
  /** Takes a slot even if it is taken already, for what must always be shown. */
  readonly take: (slot: Slot) => void;
  /** Area of text that the slot would hide, px²; labels of the sheet count one eighth. */
  readonly covered: (slot: Slot) => number;
}

/**
 * Ground of the sheet that texts on the overlay may cover. It includes the ground reserved for marks, since the overlay takes their real
 * places itself.
 */
const UNDER: readonly Ground[] = [...DRAWN, 'mark'];

/** @param sheet the placer of the sheet's labels, plan mm @param stage no text is placed beyond it; null for no bound */
export function overlayPlacer(sheet: Placer, view: Viewport, stage: SizePx | null): OverlayPlacer {
  const own = createPlacer(stage && { x: 0, y: 0, ...stage }, 50);
  return {
    claim: (slots, over = UNDER) => {
      const free: Slot[] = [];
      let found: Slot | null = null;
      for (const slot of slots) {
        if (!own.isFree(slot)) continue;
        if (sheet.isFree(planSlot(view, slot), over)) {
          found = slot;
          break;
        }
        free.push(slot);
      }
      found ??= leastOf(free, (slot) => sheet.covered(planSlot(view, slot)));
      if (found) own.take(found);
      return found;
    },
    take: (slot) => own.take(slot),
    covered: (slot) => own.covered(slot) + (sheet.covered(planSlot(view, slot)) * view.scale ** 2) / 8,
  };
}

/** Returns the slot that hides the least, the first of equals; null for no slots. */
function leastOf(slots: readonly Slot[], hides: (slot: Slot) => number): Slot | null {
  const costs = slots.map(hides);
  return slots[costs.indexOf(Math.min(...costs))] ?? null;
}

/** Returns a slot of the screen, px, as one of the plan, mm. */
export function planSlot({ scale, x, y }: Viewport, slot: Slot): Slot {
  const { width, height, turn } = slot;
  return { x: (slot.x - x) / scale, y: (slot.y - y) / scale, width: width / scale, height: height / scale, turn };
}
