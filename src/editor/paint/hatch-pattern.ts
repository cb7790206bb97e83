import type { Hatch } from '../../theme/hatches.ts';
import type { Pen } from './pen.ts';

/** One tile for each hatch, color, weight and fineness; a theme has a dozen of them. */
const tiles = new Map<string, HTMLCanvasElement>();

/** Returns a fill that repeats the hatch in screen pixels and moves with the sheet. Throws if the browser cannot create it. */
export function hatchFill(pen: Pen, hatch: Hatch, color: string): CanvasPattern {
  const tile = tileOf(hatch, color, pen.theme.weight, Math.max(1, Math.ceil(pen.ratio)));
  const pattern = pen.ctx.createPattern(tile, 'repeat');
  // Floor without its hatch would look allowed.
  if (!pattern) throw new Error('The browser makes no hatch.');
  pattern.setTransform(
    new DOMMatrix()
      .translate(pen.view.x, pen.view.y)
      .rotate(hatch.turn)
      .scale(hatch.width / tile.width, hatch.height / tile.height),
  );
  return pattern;
}

function tileOf(hatch: Hatch, color: string, weight: number, fineness: number): HTMLCanvasElement {
  const key = JSON.stringify([hatch, color, weight, fineness]);
  const known = tiles.get(key);
  if (known) return known;
  // Drawn twice as fine as shown, so that a turned tile stays smooth.
  const zoom = fineness * 2;
  const tile = document.createElement('canvas');
  tile.width = Math.round(hatch.width * zoom);
  tile.height = Math.round(hatch.height * zoom);
  const ctx = tile.getContext('2d');
  if (ctx) {
    ctx.scale(zoom, zoom);
    ctx.strokeStyle = color;
    ctx.fillStyle = color;
    // By the square root of the weight: with lines as heavy as the walls, a hatch would be solid black.
    ctx.lineWidth = hatch.weight * Math.sqrt(weight);
    if (hatch.stroke) ctx.stroke(new Path2D(hatch.stroke));
    if (hatch.fill) ctx.fill(new Path2D(hatch.fill));
  }
  tiles.set(key, tile);
  return tile;
}
