import type { XY } from '../../../../geometry/plan/model.ts';
import { createPlacer, type Ground, type Placer, type Slot } from '../../../drawing/labels/placer.ts';
import type { SizePx } from '../../../state/viewport.ts';

/** Finds places for what is written on the overlay, over the labels of the sheet. Screen px. */
export interface OverlayPlacer {
  /**
   * Takes and returns the first slot with nothing written under it; where there is none, the first that hides labels of the sheet alone.
   * @param over what of the sheet may lie under it
   */
  readonly claim: (slots: readonly Slot[], over?: readonly Ground[]) => Slot | null;
  /** Takes it whatever is there: for what must be shown. */
  readonly take: (slot: Slot) => void;
  /** So much of what is written the slot would hide, px²; labels of the sheet count by an eighth. */
  readonly covered: (slot: Slot) => number;
}

/** Ground of the sheet that is neither written nor a symbol. */
const DRAWN: readonly Ground[] = ['edge', 'thing', 'outline', 'wall', 'line'];

/** @param stage nothing is placed beyond it; null for no bound @param origin where the plan's origin is */
export function overlayPlacer(sheet: Placer, [x, y]: XY, stage: SizePx | null): OverlayPlacer {
  const own = createPlacer(stage && { x: 0, y: 0, ...stage }, 50);
  const onSheet = (slot: Slot): Slot => ({ ...slot, x: slot.x - x, y: slot.y - y });
  return {
    claim: (slots, over = DRAWN) => {
      const free = slots.filter((slot) => own.isFree(slot));
      const found = free.find((slot) => sheet.isFree(onSheet(slot), over)) ?? free[0] ?? null;
      if (found) own.take(found);
      return found;
    },
    take: (slot) => own.take(slot),
    covered: (slot) => own.covered(slot) + sheet.covered(onSheet(slot)) / 8,
  };
}
