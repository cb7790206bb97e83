import type { Deg, Mm, XY } from '../../geometry/plan/model.ts';
import { formatLength, type LengthUnit, parseLength } from '../../geometry/units/index.ts';

/** Returns the length of a move as its text gives it, mm: rounded up to the next mark of the tape. */
export function lengthAsWritten(mm: Mm, unit: LengthUnit): Mm {
  const read = parseLength(formatLength(mm, unit, 'up'), unit);
  return read.ok ? read.mm : mm;
}

/** Returns the point `far` mm along a direction, degrees clockwise on screen from +x. */
export function pointAlong([x, y]: XY, direction: Deg, far: Mm): XY {
  const radians = (direction * Math.PI) / 180;
  return [x + Math.cos(radians) * far, y + Math.sin(radians) * far];
}
