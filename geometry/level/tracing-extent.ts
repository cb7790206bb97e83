import type { Tracing } from '../plan/model.ts';
import type { Extent } from '../plane/extent.ts';

/** Returns the bounding box of a picture under a level, mm. */
export function tracingExtent({ at: [x, y], width, height, scale, turn }: Tracing): Extent {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
  const [halfX, halfY] = [((width * cos + height * sin) * scale) / 2, ((width * sin + height * cos) * scale) / 2];
  return { minX: x - halfX, minY: y - halfY, maxX: x + halfX, maxY: y + halfY };
}
