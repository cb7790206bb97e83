import { Layer } from 'konva/lib/Layer';
import { Shape } from 'konva/lib/Shape';
import type { Viewport } from '../../state/viewport.ts';
import { THEMES } from '../../theme/tokens.ts';
import type { Pen } from '../paint/pen.ts';
import { measuredBy } from '../paint/text.ts';
import { dirtyRect } from './dirty-rect.ts';
import { countPaint, countPlacement } from './paint-counts.ts';
import { type Inputs, type Picture, sameInputs } from './picture.ts';
import { areaOf, exposedStrips, extentOf, type RectPx, snappedOut, stageRect } from './rect.ts';
import { lookOf, type SheetView } from './sheet-view.ts';
import { cssPlacement, viewportMove } from './viewport-move.ts';

/** Margin that is painted beyond each edge of the stage, px: a pan moves the painted canvas until some of it is used up. */
export const MARGIN_PX = 72;
/** If more than this share of a canvas is dirty, all of it is painted. */
const MOSTLY = 0.7;
/** A clip that lets nothing be drawn. */
const NOWHERE: RectPx = { left: 0, top: 0, right: 0, bottom: 0 };

/** What a canvas shows. */
interface Painted {
  readonly viewport: Viewport;
  readonly inputs: readonly Inputs[];
  readonly look: Inputs;
}

/**
 * A canvas of the sheet: a Konva layer with a shape for each picture. The frame loop draws it through a clip of the dirty rectangle; it is
 * never cleared as a whole.
 */
export class SheetLayer {
  readonly node: Layer;
  /** Time that the last whole repaint took, ms. */
  cost = 0;
  readonly #pictures: readonly Picture[];
  readonly #isOpaque: boolean;
  #painted: Painted | null = null;
  /** The CSS transform of the canvas. */
  #placement = '';
  /** Pictures that threw; they are left out until `retry`. */
  readonly #broken = new Set<Picture>();
  /** The picture that is being read or painted: an error that is thrown meanwhile comes from it. */
  #atWork: Picture | null = null;
  /** What the shapes paint now. Null outside of a pass, so that a draw that the library starts by itself changes nothing. */
  #pass: { readonly pen: Pen; readonly inputs: readonly Inputs[] } | null = null;

  /** @param isOpaque whether the lowest picture covers everything, so that nothing has to be erased first */
  constructor(name: string, pictures: readonly Picture[], isOpaque: boolean) {
    this.#pictures = pictures;
    this.#isOpaque = isOpaque;
    this.node = new Layer({
      name,
      x: MARGIN_PX,
      y: MARGIN_PX,
      listening: false, // no hit graph
      clearBeforeDraw: false,
      clipFunc: (ctx) => {
        const { left, top, right, bottom } = this.#pass?.pen.area ?? NOWHERE;
        ctx.rect(left, top, right - left, bottom - top);
      },
    });
    for (const [index, picture] of pictures.entries()) this.node.add(this.#shapeOf(picture, index));
    const canvas = this.node.getNativeCanvasElement();
    canvas.className = 'plan-canvas__layer';
    canvas.dataset.layer = name;
    canvas.style.transformOrigin = `${MARGIN_PX}px ${MARGIN_PX}px`;
  }

  /** Whether the canvas is moved or scaled from the viewport that it was painted for. */
  get isMoved(): boolean {
    return this.#placement !== '';
  }

  /** Whether a picture is left out because it threw. */
  get isBroken(): boolean {
    return this.#broken.size > 0;
  }

  /** Makes the next update paint every picture, also those that threw. */
  retry(): void {
    this.#broken.clear();
    this.invalidate();
  }

  /**
   * Paints what changed and places the canvas for the viewport. Returns whether its place changed. A picture that throws is left out and
   * the others are painted without it; if it is an essential one, none is painted.
   */
  update(view: SheetView): boolean {
    for (;;) {
      this.#atWork = null;
      try {
        return this.#update(view);
      } catch (error) {
        const picture = this.#atWork as Picture | null;
        // Empties the canvas and removes the clip and transform that the picture has left.
        this.node.getCanvas().setPixelRatio(view.ratio);
        this.#pass = null;
        const isFirst = this.#painted !== null;
        this.invalidate();
        if (picture) for (const each of picture.isEssential ? this.#pictures : [picture]) this.#broken.add(each);
        else if (!isFirst) throw error;
        console.error(error);
      }
    }
  }

  #update(view: SheetView): boolean {
    const inputs = this.#readAll();
    const look = lookOf(view);
    if (this.#painted && sameInputs(look, this.#painted.look)) this.#paintChanges(view, this.#painted, inputs);
    else this.#repaint(view, inputs);
    return this.#place(view.viewport);
  }

  /** Makes the next update paint everything, because the pixels are lost. */
  invalidate(): void {
    this.#painted = null;
  }

  #shapeOf(picture: Picture, index: number): Shape {
    const { name, paint } = picture;
    const sceneFunc = () => {
      if (!this.#pass || this.#broken.has(picture)) return;
      const { pen, inputs } = this.#pass;
      this.#atWork = picture;
      paint(pen, inputs[index] as Inputs);
      this.#atWork = null;
      countPaint(name, areaOf(pen.area));
    };
    return new Shape({ name, sceneFunc, listening: false, perfectDrawEnabled: false });
  }

  #paintChanges(view: SheetView, painted: Painted, inputs: readonly Inputs[]): void {
    const whole = stageRect(view.size, MARGIN_PX);
    const dirty = dirtyRect(this.#pictures, painted.inputs, inputs, this.#pen(view, painted.viewport, whole));
    const isAnchored = this.#pictures.some(
      (picture, index) => !this.#broken.has(picture) && picture.anchored?.(inputs[index] as Inputs),
    );
    const move = viewportMove(painted.viewport, view.viewport, { ...view, isAnchored });
    if (move === 'repaint' || (dirty && areaOf(dirty) > MOSTLY * areaOf(whole))) {
      this.#repaint(view, inputs);
      return;
    }
    if (dirty) this.#paintRect(view, painted.viewport, inputs, snappedOut(dirty, view.ratio));
    const viewport = move === 'shift' ? this.#shift(view, painted.viewport, inputs) : painted.viewport;
    this.#painted = { ...painted, viewport, inputs };
  }

  #repaint(view: SheetView, inputs: readonly Inputs[]): void {
    const start = performance.now();
    this.#paintRect(view, view.viewport, inputs, stageRect(view.size, MARGIN_PX));
    this.cost = performance.now() - start;
    this.#painted = { viewport: view.viewport, inputs, look: lookOf(view) };
  }

  /**
   * Moves the painted pixels by whole canvas pixels toward the viewport and paints the uncovered strips. Returns the viewport that is then
   * shown.
   */
  #shift(view: SheetView, from: Viewport, inputs: readonly Inputs[]): Viewport {
    const { viewport, ratio, size } = view;
    const [dx, dy] = [Math.round((viewport.x - from.x) * ratio), Math.round((viewport.y - from.y) * ratio)];
    movePixels(this.node, dx, dy);
    const now = { ...from, x: from.x + dx / ratio, y: from.y + dy / ratio };
    const strips = exposedStrips(stageRect(size, MARGIN_PX), dx / ratio, dy / ratio);
    for (const strip of strips) this.#paintRect(view, now, inputs, strip);
    return now;
  }

  #paintRect(view: SheetView, viewport: Viewport, inputs: readonly Inputs[], rect: RectPx): void {
    const { left, top, right, bottom } = rect;
    const bounds = { x: left + MARGIN_PX, y: top + MARGIN_PX, width: right - left, height: bottom - top };
    if (!this.#isOpaque) this.node.getContext().clear(bounds);
    this.#pass = { pen: this.#pen(view, viewport, rect), inputs };
    this.node.drawScene();
    this.#pass = null;
  }

  /** Pictures that share a `read` get the same inputs. */
  #readAll(): readonly Inputs[] {
    const known = new Map<Picture['read'], Inputs>();
    return this.#pictures.map((picture) => {
      if (this.#broken.has(picture)) return [];
      this.#atWork = picture;
      const inputs = known.get(picture.read) ?? picture.read();
      known.set(picture.read, inputs);
      this.#atWork = null;
      return inputs;
    });
  }

  #pen({ theme, unit, ratio }: SheetView, view: Viewport, area: RectPx): Pen {
    const ctx = this.node.getContext()._context;
    return { ctx, view, measure: measuredBy(ctx), theme: THEMES[theme], unit, ratio, area, seen: extentOf(view, area) };
  }

  #place(now: Viewport): boolean {
    const placement = this.#painted ? cssPlacement(this.#painted.viewport, now) : '';
    if (placement === this.#placement) return false;
    this.#placement = placement;
    this.node.getNativeCanvasElement().style.transform = placement;
    if (placement) countPlacement();
    return true;
  }
}

/** Moves the pixels of a layer by whole canvas pixels. The uncovered strips are left empty. */
function movePixels(node: Layer, dx: number, dy: number): void {
  const ctx = node.getContext()._context;
  ctx.save();
  ctx.setTransform(1, 0, 0, 1, 0, 0);
  ctx.globalCompositeOperation = 'copy';
  ctx.drawImage(node.getNativeCanvasElement(), dx, dy);
  ctx.restore();
}
