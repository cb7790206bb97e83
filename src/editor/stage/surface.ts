import { type AppState, useAppStore } from '../../state/store.ts';
import { takeOwed } from '../../state/turns.ts';
import type { Viewport } from '../../state/viewport.ts';
import { THEMES } from '../../theme/tokens.ts';
import type { Pen } from '../paint/pen.ts';
import { type AreaPx, about, areaOf, common, extentOf, sizeOfArea, stageArea, strips, wholePixels } from './area.ts';
import { inNextFrame, notInNextFrame } from './frames.ts';
import { type Inputs, type Layer, sameInputs } from './layer.ts';
import { noteLaid, notePainted } from './tally.ts';

/** Painted beyond each edge of the stage, px: the picture is laid elsewhere as it is until some of this has been used up. */
const ABOUT_PX = 72;
/** So far off, px, the picture is moved on its canvas, and a strip of this breadth is painted. */
const STRIP_PX = 56;
/** A jump by more, px, leaves too little of the picture. */
const MOST_SHIFT_PX = 400;
/** A picture that was laid elsewhere is painted anew when the hand has rested so long, ms. */
const REST_MS = 140;
/** A picture that took longer to paint, ms, is stretched while the sheet is zoomed, and painted when the hand rests. */
const DEAR_MS = 9;
/** More canvas pixels than this to a px cost memory that a tablet does not have. */
const MOST_RATIO = 2;
/** Where more than this share of a picture is spoilt, all of it is painted. */
const MOSTLY = 0.7;

export interface Surface {
  /** Looks in the next frame what has changed, and paints that. */
  wake(): void;
  stop(): void;
}

/** What was painted last, and for what. */
interface Painted {
  readonly view: Viewport;
  readonly inputs: readonly Inputs[];
  readonly looks: Inputs;
  readonly width: number;
  readonly height: number;
}

/** The frames of all surfaces, with what the last whole picture of each has cost, ms. */
const frames = new Map<() => void, number>();

/**
 * Pictures that lie on one another on one canvas. In a frame in which something has changed, only what differs is painted; a
 * moved sheet is laid where it belongs as it is, and painted when the hand rests or bare canvas would come into view.
 * @param opaque the lowest layer leaves nothing bare: what lies below need not be mixed in
 */
export function createSurface(canvas: HTMLCanvasElement, layers: readonly Layer[], opaque: boolean): Surface {
  let painted: Painted | null = null;
  let rest: ReturnType<typeof setTimeout> | undefined;
  let rested = false;
  let laid = '';

  const frame = () => {
    const state = useAppStore.getState();
    const { viewport, stageSize, theme, plan } = state;
    if (stageSize.width <= 0) return;
    const ratio = Math.min(MOST_RATIO, window.devicePixelRatio || 1);
    const looks: Inputs = [theme, plan.display.length, ratio];
    const inputs = layers.map(({ read }) => read());
    const whole = stageArea(stageSize, ABOUT_PX);
    const fits =
      painted !== null &&
      sameInputs(looks, painted.looks) &&
      painted.width === stageSize.width &&
      painted.height === stageSize.height;
    const pen = painted && penFor(state, painted.view, ratio, whole);
    const spoilt = fits && painted && pen ? spoiltArea(layers, painted.inputs, inputs, pen) : whole;
    const mostly = spoilt !== null && sizeOfArea(spoilt) > MOSTLY * sizeOfArea(whole);
    const move = !painted || mostly ? 'afresh' : moveTo(viewport, painted, inputs, ratio);
    if (!painted || move === 'afresh') {
      const before = performance.now();
      fitCanvas(canvas, stageSize, ratio);
      paintArea(state, viewport, ratio, whole, inputs);
      frames.set(frame, performance.now() - before);
      painted = { view: viewport, inputs, looks, ...stageSize };
    } else {
      if (spoilt) paintArea(state, painted.view, ratio, wholePixels(spoilt, ratio), inputs);
      const view = move === 'shift' ? shift(state, painted.view, ratio, whole, inputs) : painted.view;
      painted = { ...painted, view, inputs };
    }
    lay(viewport);
    // Whoever it is owed to reads it in the next frame.
    if (takeOwed()) for (const each of frames.keys()) inNextFrame('paint', each);
  };

  /** What becomes of the picture at hand when the sheet lies elsewhere. */
  const moveTo = (
    { scale, x, y }: Viewport,
    { view }: Painted,
    inputs: readonly Inputs[],
    ratio: number,
  ): 'stay' | 'shift' | 'afresh' => {
    // All surfaces are stretched, or none: names on one are laid out for what the other shows.
    if (view.scale !== scale) return rested || Math.max(...frames.values()) < DEAR_MS ? 'afresh' : 'stay';
    const [dx, dy] = [x - view.x, y - view.y];
    const far = Math.max(Math.abs(dx), Math.abs(dy));
    if (far === 0) return 'stay';
    if (far > MOST_SHIFT_PX) return 'afresh';
    if (!rested) return far > STRIP_PX ? 'shift' : 'stay';
    const between = !Number.isInteger(dx * ratio) || !Number.isInteger(dy * ratio);
    return between || layers.some(({ anchored }, index) => anchored?.(inputs[index] as Inputs)) ? 'afresh' : 'stay';
  };

  /** Moves the picture by whole pixels to where the sheet is, and paints the strips that were beyond its edge. */
  const shift = (
    state: AppState,
    view: Viewport,
    ratio: number,
    whole: AreaPx,
    inputs: readonly Inputs[],
  ): Viewport => {
    const ctx = canvas.getContext('2d', { alpha: !opaque });
    if (!ctx) return view;
    const { viewport } = state;
    const [dx, dy] = [Math.round((viewport.x - view.x) * ratio), Math.round((viewport.y - view.y) * ratio)];
    ctx.setTransform(1, 0, 0, 1, 0, 0);
    ctx.globalCompositeOperation = 'copy';
    ctx.drawImage(canvas, dx, dy);
    ctx.globalCompositeOperation = 'source-over';
    const now = { ...view, x: view.x + dx / ratio, y: view.y + dy / ratio };
    for (const strip of strips(whole, dx / ratio, dy / ratio)) paintArea(state, now, ratio, strip, inputs);
    return now;
  };

  const penFor = ({ theme, plan }: AppState, view: Viewport, ratio: number, area: AreaPx): Pen | null => {
    const ctx = canvas.getContext('2d', { alpha: !opaque });
    return (
      ctx && { ctx, view, theme: THEMES[theme], unit: plan.display.length, ratio, area, seen: extentOf(view, area) }
    );
  };
  const paintArea = (state: AppState, view: Viewport, ratio: number, area: AreaPx, inputs: readonly Inputs[]) => {
    const pen = penFor(state, view, ratio, area);
    if (!pen) return;
    const { ctx } = pen;
    ctx.setTransform(ratio, 0, 0, ratio, ABOUT_PX * ratio, ABOUT_PX * ratio);
    const { left, top, right, bottom } = area;
    ctx.save();
    ctx.beginPath();
    ctx.rect(left, top, right - left, bottom - top);
    ctx.clip();
    ctx.clearRect(left, top, right - left, bottom - top);
    layers.forEach((each, index) => {
      ctx.save();
      each.paint(pen, inputs[index] as Inputs);
      ctx.restore();
      notePainted(each.name, sizeOfArea(area));
    });
    ctx.restore();
  };

  /** Lays the picture where the sheet is. */
  const lay = (viewport: Viewport) => {
    if (!painted) return;
    const { view } = painted;
    const share = viewport.scale / view.scale;
    const [x, y] = [viewport.x - view.x * share, viewport.y - view.y * share];
    const still = x === 0 && y === 0 && share === 1;
    const place = still ? '' : `translate(${x}px, ${y}px) scale(${share})`;
    rested = false;
    if (place === laid) return;
    laid = place;
    canvas.style.transform = place;
    clearTimeout(rest);
    if (still) return;
    noteLaid();
    rest = setTimeout(() => {
      rested = true;
      inNextFrame('paint', frame);
    }, REST_MS);
  };

  const onRestored = () => {
    painted = null;
    inNextFrame('paint', frame);
  };
  // A browser short of memory takes a canvas away and gives an empty one back.
  canvas.addEventListener('contextrestored', onRestored);
  frames.set(frame, 0);
  return {
    wake: () => inNextFrame('paint', frame),
    stop: () => {
      canvas.removeEventListener('contextrestored', onRestored);
      frames.delete(frame);
      notInNextFrame(frame);
      clearTimeout(rest);
    },
  };
}

/** The rectangle in which anything differs from what was painted, px of the picture; null where nothing does. */
function spoiltArea(
  layers: readonly Layer[],
  before: readonly Inputs[],
  inputs: readonly Inputs[],
  pen: Pen,
): AreaPx | null {
  let area: AreaPx | null = null;
  for (const [index, { differs }] of layers.entries()) {
    const [old, now] = [before[index] as Inputs, inputs[index] as Inputs];
    if (sameInputs(old, now)) continue;
    const spoilt = differs ? differs(old, now, pen) : 'everywhere';
    if (spoilt === 'everywhere') return pen.area;
    for (const extent of spoilt) {
      const seen = common(areaOf(pen.view, extent), pen.area);
      if (seen) area = area ? about(area, seen) : seen;
    }
  }
  return area;
}

/** As many pixels as the stage and what lies about it have. Setting the size empties a canvas, so only where it differs. */
function fitCanvas(canvas: HTMLCanvasElement, stage: { width: number; height: number }, ratio: number): void {
  const [width, height] = [stage.width + 2 * ABOUT_PX, stage.height + 2 * ABOUT_PX];
  const [across, down] = [Math.round(width * ratio), Math.round(height * ratio)];
  if (canvas.width !== across) canvas.width = across;
  if (canvas.height !== down) canvas.height = down;
  const { style } = canvas;
  style.width = `${width}px`;
  style.height = `${height}px`;
  style.left = style.top = `${-ABOUT_PX}px`;
  style.transformOrigin = `${ABOUT_PX}px ${ABOUT_PX}px`;
}
