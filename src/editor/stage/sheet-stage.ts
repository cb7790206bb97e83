import { Konva } from 'konva/lib/Global';
import { Stage } from 'konva/lib/Stage';
import type { Plan } from '../../../geometry/plan/model.ts';
import { useFaults } from '../../platform/faults.ts';
import { firstPictureDrawn } from '../../platform/first-picture.ts';
import { takeDeferred } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import type { SizePx } from '../../state/viewport.ts';
import { forgetWidths } from '../paint/text.ts';
import { cancelInNextFrame, inNextFrame } from './frame-loop.ts';
import type { Picture } from './picture.ts';
import { MARGIN_PX, SheetLayer } from './sheet-layer.ts';

/** A canvas that was moved without a repaint is repainted when the viewport has been at rest for this long, ms. */
const REST_MS = 140;
/** A whole repaint that takes at least this long, ms, is expensive: canvases are then scaled during a zoom, and repainted at rest. */
const EXPENSIVE_MS = 9;
/** Time after which a sheet that could not be drawn is drawn again, ms; it doubles each time, up to the longest. */
const FIRST_RETRY_MS = 1000;
const LONGEST_RETRY_MS = 30_000;
/** Most canvas pixels per px: more would need memory that a tablet does not have. */
const MAX_RATIO = 2;

/** The pictures of the two canvases, each from the lowest up. */
interface SheetPictures {
  /** The plan, which changes by edits. The lowest picture covers everything. */
  readonly ground: readonly Picture[];
  /** What follows the pointer. */
  readonly overlay: readonly Picture[];
}

/**
 * The Konva stage of the sheet: two layers that follow the stores. The stage is larger than the visible sheet by a margin on every side;
 * screen coordinates start inside the margin.
 */
export class SheetStage {
  readonly #stage: Stage;
  readonly #layers: readonly SheetLayer[];
  #restTimer: ReturnType<typeof setTimeout> | undefined;
  #atRest = false;
  /** The plan that could not be drawn. */
  #faultyPlan: Plan | null = null;
  #retryTimer: ReturnType<typeof setTimeout> | undefined;
  #retryMs = FIRST_RETRY_MS;

  constructor(container: HTMLDivElement, { ground, overlay }: SheetPictures) {
    // A draw that the library starts by itself would be one frame late.
    Konva.autoDrawEnabled = false;
    Konva.pixelRatio = pixelRatio();
    this.#stage = new Stage({ container, width: 0, height: 0, listening: false });
    this.#layers = [new SheetLayer('ground', ground, true), new SheetLayer('overlay', overlay, false)];
    for (const { node } of this.#layers) {
      this.#stage.add(node);
      node.getNativeCanvasElement().addEventListener('contextrestored', this.#onRestored);
    }
    document.fonts.addEventListener('loadingdone', this.#onFont);
  }

  /** Draws again when a font has loaded: a canvas text that was drawn before keeps the wrong font. */
  readonly #onFont = (): void => {
    forgetWidths();
    this.#drawAgain();
  };

  /** Paints in the next frame what has changed. */
  readonly wake = (): void => inNextFrame('paint', this.#frame);

  destroy(): void {
    cancelInNextFrame(this.#frame);
    document.fonts.removeEventListener('loadingdone', this.#onFont);
    clearTimeout(this.#restTimer);
    clearTimeout(this.#retryTimer);
    this.#stage.destroy();
  }

  readonly #frame = (): void => {
    const { viewport, stageSize: size, theme, plan } = useAppStore.getState();
    if (size.width <= 0) return;
    // The plan has changed, so it may be possible to draw it.
    if (this.#faultyPlan && this.#faultyPlan !== plan) this.#forgetFaults();
    const ratio = pixelRatio();
    this.#fitTo(size, ratio);
    // All canvases are scaled, or none: labels on one are laid out for what the other shows.
    const isCheap = this.#layers.every(({ cost }) => cost < EXPENSIVE_MS);
    const view = { viewport, size, theme, unit: plan.display.length, ratio, atRest: this.#atRest, isCheap };
    const changes = this.#layers.map((layer) => layer.update(view));
    this.#atRest = false;
    firstPictureDrawn();
    if (changes.some(Boolean)) this.#awaitRest();
    // Deferred work is done in the next frame.
    if (takeDeferred()) this.wake();
    this.#checkFaults(plan);
  };

  /** If a picture could not be drawn, reports it and tries again, later each time; else removes the report. */
  #checkFaults(plan: Plan): void {
    const isBroken = this.#layers.some((layer) => layer.isBroken);
    if (isBroken && !this.#faultyPlan) {
      this.#faultyPlan = plan;
      useFaults.setState({ drawAgain: this.#drawAgain });
      this.#retryTimer = setTimeout(this.#drawAgain, this.#retryMs);
      this.#retryMs = Math.min(2 * this.#retryMs, LONGEST_RETRY_MS);
    } else if (!isBroken && useFaults.getState().drawAgain) {
      this.#retryMs = FIRST_RETRY_MS;
      useFaults.setState({ drawAgain: null });
    }
  }

  #forgetFaults(): void {
    clearTimeout(this.#retryTimer);
    this.#faultyPlan = null;
    for (const layer of this.#layers) layer.retry();
  }

  readonly #drawAgain = (): void => {
    this.#forgetFaults();
    this.wake();
  };

  #awaitRest(): void {
    clearTimeout(this.#restTimer);
    if (!this.#layers.some(({ isMoved }) => isMoved)) return;
    this.#restTimer = setTimeout(() => {
      this.#atRest = true;
      this.wake();
    }, REST_MS);
  }

  /** Sets size and pixel ratio only if they differ, because setting them empties the canvases. */
  #fitTo({ width, height }: SizePx, ratio: number): void {
    Konva.pixelRatio = ratio;
    const size = { width: width + 2 * MARGIN_PX, height: height + 2 * MARGIN_PX };
    if (this.#stage.width() !== size.width || this.#stage.height() !== size.height) this.#stage.size(size);
    for (const { node } of this.#layers) {
      const canvas = node.getCanvas();
      if (canvas.getPixelRatio() !== ratio) canvas.setPixelRatio(ratio);
    }
  }

  /** Repaints all after the browser, short of memory, has dropped the pixels and the transform of a canvas. */
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
