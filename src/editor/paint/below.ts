import type { LevelModel } from '../../../geometry/level/types.ts';
import { LINE_PX } from '../../theme/tokens.ts';
import { openingExtent, wallExtent } from '../extents.ts';
import { isSeen, type Pen, stroke, traceRing } from './pen.ts';

/** Walls and openings of the level below, faint: to draw over, never to take hold of. Broken lines, so that no one reads them as walls of this level. */
export function paintBelow(pen: Pen, { pieces, joints, openings }: LevelModel): void {
  const { ctx, theme } = pen;
  ctx.beginPath();
  for (const one of [...pieces, ...joints]) if (isSeen(pen, wallExtent(one))) traceRing(pen, one.body);
  // Filled over the line: of the seams between pieces nothing is left.
  stroke(pen, theme.belowEdge, LINE_PX.below * 2, DASH);
  ctx.fillStyle = theme.below;
  ctx.fill('nonzero');
  ctx.beginPath();
  for (const opening of openings) if (isSeen(pen, openingExtent(opening))) traceRing(pen, opening.body);
  ctx.fillStyle = theme.paper;
  ctx.fill();
  stroke(pen, theme.belowEdge, LINE_PX.below, DASH);
}

const DASH = [3, 4] as const;
