import { Layer } from 'konva/lib/Layer';
import { Shape } from 'konva/lib/Shape';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { SizePx, Viewport } from '../../state/viewport.ts';
import { THEMES, type ThemeName } from '../../theme/tokens.ts';
import type { Pen } from '../paint/pen.ts';
import { dirtyRect } from './dirty-rect.ts';
import { countPaint, countPlacement } from './paint-counts.ts';
import { type Inputs, type Picture, sameInputs } from './picture.ts';
import { areaOf, exposedStrips, extentOf, type RectPx, snappedOut, stageRect } from './rect.ts';
import { cssPlacement, viewportMove } from './viewport-move.ts';

/** Painted beyond each edge of the stage, px: a pan moves the canvas as it is until some of this has been used up. */
export const MARGIN_PX = 72;
/** Where more than this share of a canvas is dirty, all of it is painted. */
const MOSTLY = 0.7;

/** What the sheet is to be shown with. */
interface SheetView {
  readonly viewport: Viewport;
  readonly size: SizePx;
  readonly theme: ThemeName;
  readonly unit: Plan['display']['length'];
  /** Canvas pixels to a px. */
  readonly ratio: number;
  /** The viewport has not changed for a while. */
  readonly atRest: boolean;
  /** A whole repaint of all canvases fits into a frame. */
  readonly isCheap: boolean;
}

/** What a canvas shows. */
interface Painted {
  readonly viewport: Viewport;
  readonly inputs: readonly Inputs[];
  readonly look: Inputs;
}

/** A canvas of the sheet. */
export interface SheetLayer {
  readonly node: Layer;
  /** Paints what changed and lays the canvas where the viewport wants it. Returns whether it now lies elsewhere than it was painted for, and newly so. */
  update(view: SheetView): boolean;
  /** What the last whole repaint took, ms. */
  cost(): number;
  /** The pixels are gone: the next update paints all. */
  invalidate(): void;
}

/**
 * A Konva layer with a shape for each picture. It is drawn from the frame loop, not by the library, through a clip of the dirty rectangle, and
 * never cleared as a whole.
 * @param opaque the lowest picture covers everything, so that nothing has to be erased before
 */
export function createSheetLayer(name: string, pictures: readonly Picture[], opaque: boolean): SheetLayer {
  let painted: Painted | null = null;
  let cost = 0;
  let placement = '';
  /** What the shapes paint now. Null outside of a pass: a draw that the library starts by itself changes nothing. */
  let pass: { readonly pen: Pen; readonly inputs: readonly Inputs[] } | null = null;

  const node = new Layer({
    name,
    x: MARGIN_PX,
    y: MARGIN_PX,
    listening: false, // no hit graph
    clearBeforeDraw: false,
    clipFunc: (ctx) => {
      const { left, top, right, bottom } = pass?.pen.area ?? { left: 0, top: 0, right: 0, bottom: 0 };
      ctx.rect(left, top, right - left, bottom - top);
    },
  });
  for (const [index, { name: title, paint }] of pictures.entries()) {
    const sceneFunc = () => {
      if (!pass) return;
      paint(pass.pen, pass.inputs[index] as Inputs);
      countPaint(title, areaOf(pass.pen.area));
    };
    node.add(new Shape({ name: title, sceneFunc, listening: false, perfectDrawEnabled: false }));
  }
  const canvas = node.getNativeCanvasElement();
  canvas.className = 'plan-canvas__layer';
  canvas.dataset.layer = name;
  canvas.style.transformOrigin = `${MARGIN_PX}px ${MARGIN_PX}px`;

  const paintRect = (view: SheetView, viewport: Viewport, inputs: readonly Inputs[], rect: RectPx) => {
    const { left, top, right, bottom } = rect;
    const bounds = { x: left + MARGIN_PX, y: top + MARGIN_PX, width: right - left, height: bottom - top };
    if (!opaque) node.getContext().clear(bounds);
    pass = { pen: penFor(node, view, viewport, rect), inputs };
    node.drawScene();
    pass = null;
  };

  /** Moves the pixels to where the viewport wants them, by whole ones, and paints the strips that this uncovers. */
  const shift = (view: SheetView, from: Viewport, inputs: readonly Inputs[], whole: RectPx): Viewport => {
    const { viewport, ratio } = view;
    const [dx, dy] = [Math.round((viewport.x - from.x) * ratio), Math.round((viewport.y - from.y) * ratio)];
    movePixels(node, dx, dy);
    const now = { ...from, x: from.x + dx / ratio, y: from.y + dy / ratio };
    for (const strip of exposedStrips(whole, dx / ratio, dy / ratio)) paintRect(view, now, inputs, strip);
    return now;
  };

  const repaint = (view: SheetView, inputs: readonly Inputs[], whole: RectPx, look: Inputs) => {
    const start = performance.now();
    paintRect(view, view.viewport, inputs, whole);
    cost = performance.now() - start;
    painted = { viewport: view.viewport, inputs, look };
  };

  const place = (now: Viewport): boolean => {
    const wanted = painted ? cssPlacement(painted.viewport, now) : '';
    if (wanted === placement) return false;
    placement = wanted;
    canvas.style.transform = wanted;
    if (wanted) countPlacement();
    return wanted !== '';
  };

  return {
    node,
    update: (view) => {
      const inputs = readAll(pictures);
      const whole = stageRect(view.size, MARGIN_PX);
      const look: Inputs = [view.theme, view.unit, view.ratio, view.size.width, view.size.height];
      if (!painted || !sameInputs(look, painted.look)) {
        repaint(view, inputs, whole, look);
        return place(view.viewport);
      }
      const dirty = dirtyRect(pictures, painted.inputs, inputs, penFor(node, view, painted.viewport, whole));
      const isAnchored = pictures.some(({ anchored }, index) => anchored?.(inputs[index] as Inputs));
      const move = viewportMove(painted.viewport, view.viewport, { ...view, isAnchored });
      if (move === 'repaint' || (dirty && areaOf(dirty) > MOSTLY * areaOf(whole))) {
        repaint(view, inputs, whole, look);
        return place(view.viewport);
      }
      if (dirty) paintRect(view, painted.viewport, inputs, snappedOut(dirty, view.ratio));
      const viewport = move === 'shift' ? shift(view, painted.viewport, inputs, whole) : painted.viewport;
      painted = { viewport, inputs, look };
      return place(view.viewport);
    },
    cost: () => cost,
    invalidate: () => {
      painted = null;
    },
  };
}

/** Pictures that share a `read` get the same inputs. */
function readAll(pictures: readonly Picture[]): readonly Inputs[] {
  const known = new Map<Picture['read'], Inputs>();
  return pictures.map(({ read }) => {
    const inputs = known.get(read) ?? read();
    known.set(read, inputs);
    return inputs;
  });
}

function penFor(node: Layer, { theme, unit, ratio }: SheetView, view: Viewport, area: RectPx): Pen {
  const ctx = node.getContext()._context;
  return { ctx, view, theme: THEMES[theme], unit, ratio, area, seen: extentOf(view, area) };
}

/** By whole canvas pixels. What is uncovered is left empty. */
function movePixels(node: Layer, dx: number, dy: number): void {
  const ctx = node.getContext()._context;
  ctx.save();
  ctx.setTransform(1, 0, 0, 1, 0, 0);
  ctx.globalCompositeOperation = 'copy';
  ctx.drawImage(node.getNativeCanvasElement(), dx, dy);
  ctx.restore();
}
