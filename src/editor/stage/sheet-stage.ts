import { Konva } from 'konva/lib/Global';
import { Stage } from 'konva/lib/Stage';
import { takeDeferred } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import type { SizePx } from '../../state/viewport.ts';
import { cancelInNextFrame, inNextFrame } from './frame-loop.ts';
import type { Picture } from './picture.ts';
import { createSheetLayer, MARGIN_PX, type SheetLayer } from './sheet-layer.ts';

/** A canvas that was moved as it is is repainted when the viewport has rested so long, ms. */
const REST_MS = 140;
/** Where a whole repaint takes longer, ms, canvases are scaled while the sheet is zoomed, and repainted at rest. */
const EXPENSIVE_MS = 9;
/** More canvas pixels than this to a px cost memory that a tablet does not have. */
const MAX_RATIO = 2;

export interface SheetStage {
  /** Looks in the next frame what has changed, and paints that. */
  wake(): void;
  destroy(): void;
}

/** The pictures of the two canvases, each from the lowest up. */
export interface SheetPictures {
  /** The plan: changes by edits. Its lowest picture covers everything. */
  readonly ground: readonly Picture[];
  /** What follows the pointer. */
  readonly overlay: readonly Picture[];
}

/**
 * The Konva stage of the sheet in its container: two layers that follow the stores. The stage is larger than its place by a margin on
 * every side; screen coordinates begin inside of it.
 */
export function createSheetStage(container: HTMLDivElement, { ground, overlay }: SheetPictures): SheetStage {
  // A draw that the library starts by itself would come one frame late.
  Konva.autoDrawEnabled = false;
  Konva.pixelRatio = pixelRatio();
  const stage = new Stage({ container, width: 0, height: 0, listening: false });
  const layers = [createSheetLayer('ground', ground, true), createSheetLayer('overlay', overlay, false)];
  stage.add(...(layers.map(({ node }) => node) as [SheetLayer['node']]));
  let restTimer: ReturnType<typeof setTimeout> | undefined;
  let atRest = false;

  const frame = () => {
    const { viewport, stageSize: size, theme, plan } = useAppStore.getState();
    if (size.width <= 0) return;
    const ratio = pixelRatio();
    resizeToFit(stage, layers, size, ratio);
    // All canvases are scaled, or none: labels on one are laid out for what the other shows.
    const isCheap = layers.every(({ cost }) => cost() < EXPENSIVE_MS);
    const view = { viewport, size, theme, unit: plan.display.length, ratio, atRest, isCheap };
    const moved = layers.map((layer) => layer.update(view));
    atRest = false;
    if (moved.some(Boolean)) restart();
    // Whoever put work off reads its result in the next frame.
    if (takeDeferred()) inNextFrame('paint', frame);
  };
  const restart = () => {
    clearTimeout(restTimer);
    restTimer = setTimeout(() => {
      atRest = true;
      inNextFrame('paint', frame);
    }, REST_MS);
  };
  // A browser short of memory takes the pixels of a canvas away, and its transform with them.
  const onRestored = () => {
    for (const { node, invalidate } of layers) {
      node.getCanvas().setPixelRatio(pixelRatio());
      invalidate();
    }
    inNextFrame('paint', frame);
  };
  for (const { node } of layers) node.getNativeCanvasElement().addEventListener('contextrestored', onRestored);

  return {
    wake: () => inNextFrame('paint', frame),
    destroy: () => {
      cancelInNextFrame(frame);
      clearTimeout(restTimer);
      stage.destroy();
    },
  };
}

function pixelRatio(): number {
  return Math.min(MAX_RATIO, window.devicePixelRatio || 1);
}

/** Sets size and pixel ratio where they differ: that empties the canvases. */
function resizeToFit(stage: Stage, layers: readonly SheetLayer[], { width, height }: SizePx, ratio: number): void {
  Konva.pixelRatio = ratio;
  const [across, down] = [width + 2 * MARGIN_PX, height + 2 * MARGIN_PX];
  if (stage.width() !== across || stage.height() !== down) stage.size({ width: across, height: down });
  for (const { node } of layers) {
    const canvas = node.getCanvas();
    if (canvas.getPixelRatio() !== ratio) canvas.setPixelRatio(ratio);
  }
}
