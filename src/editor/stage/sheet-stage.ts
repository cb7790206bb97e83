import { Konva } from 'konva/lib/Global';
import { Stage } from 'konva/lib/Stage';
import { takeDeferred } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import type { SizePx } from '../../state/viewport.ts';
import { cancelInNextFrame, inNextFrame } from './frame-loop.ts';
import type { Picture } from './picture.ts';
import { MARGIN_PX, SheetLayer } from './sheet-layer.ts';

/** A canvas that was moved as it is is repainted when the viewport has rested so long, ms. */
const REST_MS = 140;
/** Where a whole repaint takes longer, ms, canvases are scaled while the sheet is zoomed, and repainted at rest. */
const EXPENSIVE_MS = 9;
/** More canvas pixels than this to a px cost memory that a tablet does not have. */
const MAX_RATIO = 2;

/** The pictures of the two canvases, each from the lowest up. */
interface SheetPictures {
  /** The plan: changes by edits. Its lowest picture covers everything. */
  readonly ground: readonly Picture[];
  /** What follows the pointer. */
  readonly overlay: readonly Picture[];
}

/**
 * The Konva stage of the sheet in its container: two layers that follow the stores. The stage is larger than its place by a margin on
 * every side; screen coordinates begin inside of it.
 */
export class SheetStage {
  readonly #stage: Stage;
  readonly #layers: readonly SheetLayer[];
  #restTimer: ReturnType<typeof setTimeout> | undefined;
  #atRest = false;

  constructor(container: HTMLDivElement, { ground, overlay }: SheetPictures) {
    // A draw that the library starts by itself would come one frame late.
    Konva.autoDrawEnabled = false;
    Konva.pixelRatio = pixelRatio();
    this.#stage = new Stage({ container, width: 0, height: 0, listening: false });
    this.#layers = [new SheetLayer('ground', ground, true), new SheetLayer('overlay', overlay, false)];
    for (const { node } of this.#layers) {
      this.#stage.add(node);
      node.getNativeCanvasElement().addEventListener('contextrestored', this.#onRestored);
    }
  }

  /** Paints in the next frame what has changed. */
  readonly wake = (): void => inNextFrame('paint', this.#frame);

  destroy(): void {
    cancelInNextFrame(this.#frame);
    clearTimeout(this.#restTimer);
    this.#stage.destroy();
  }

  readonly #frame = (): void => {
    const { viewport, stageSize: size, theme, plan } = useAppStore.getState();
    if (size.width <= 0) return;
    const ratio = pixelRatio();
    this.#fitTo(size, ratio);
    // All canvases are scaled, or none: labels on one are laid out for what the other shows.
    const isCheap = this.#layers.every(({ cost }) => cost < EXPENSIVE_MS);
    const view = { viewport, size, theme, unit: plan.display.length, ratio, atRest: this.#atRest, isCheap };
    const changes = this.#layers.map((layer) => layer.update(view));
    this.#atRest = false;
    if (changes.some(Boolean)) this.#awaitRest();
    // Deferred work is done in the next frame.
    if (takeDeferred()) this.wake();
  };

  #awaitRest(): void {
    clearTimeout(this.#restTimer);
    if (!this.#layers.some(({ isMoved }) => isMoved)) return;
    this.#restTimer = setTimeout(() => {
      this.#atRest = true;
      this.wake();
    }, REST_MS);
  }

  /** Sets size and pixel ratio where they differ: that empties the canvases. */
  #fitTo({ width, height }: SizePx, ratio: number): void {
    Konva.pixelRatio = ratio;
    const size = { width: width + 2 * MARGIN_PX, height: height + 2 * MARGIN_PX };
    if (this.#stage.width() !== size.width || this.#stage.height() !== size.height) this.#stage.size(size);
    for (const { node } of this.#layers) {
      const canvas = node.getCanvas();
      if (canvas.getPixelRatio() !== ratio) canvas.setPixelRatio(ratio);
    }
  }

  /** A browser that is short of memory drops the pixels of a canvas and its transform. */
  readonly #onRestored = (): void => {
    for (const layer of this.#layers) {
      layer.node.getCanvas().setPixelRatio(pixelRatio());
      layer.invalidate();
    }
    this.wake();
  };
}

function pixelRatio(): number {
  return Math.min(MAX_RATIO, window.devicePixelRatio || 1);
}
