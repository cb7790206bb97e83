import type { Tone } from '../../geometry/messages/tone.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { arc, discsPart, inked, linesPart, type Shape } from './display-list.ts';

/**
 * Returns the sign of a verdict. Each has its own shape, so that none depends on color: clear is a white disc with its axis; clear of what
 * is drawn is the same with its rim open at the upper right; tight has a doubled rim; blocked is hatched; unknown has a broken rim.
 * @param radius to the outer edge, in the unit of `at`
 */
export function verdictSign(tone: Tone, at: XY, radius: number): readonly Shape[] {
  const line = radius * 0.22;
  const rim = radius - line / 2;
  const stroke = { line, color: tone } as const;
  const disc = (reach: number) => discsPart([at], reach);
  const ground = inked({ fill: 'paper' }, disc(radius));
  const ring = inked(stroke, disc(rim));
  const axis = inked({ fill: tone }, disc(radius * 0.22));
  switch (tone) {
    case 'clear':
      return [ground, ring, axis];
    case 'clear-of-drawn':
      return [ground, inked(stroke, linesPart([[arc(at, rim, 0, 1.5 * Math.PI)]])), axis];
    case 'tight':
      return [ground, ring, inked({ ...stroke, line: line * 0.8 }, disc(rim * 0.58))];
    case 'blocked':
      return [ground, inked(stroke, linesPart(bars(at, rim))), ring];
    case 'unknown': {
      const dash = (2 * Math.PI * rim) / 16;
      return [ground, inked({ ...stroke, dash: [dash, dash] }, disc(rim))];
    }
  }
}

/** Slanting bars across a disc, cut at its rim by arithmetic so that no clipping is needed. */
function bars([x, y]: XY, radius: number): readonly (readonly XY[])[] {
  return [-0.6, -0.2, 0.2, 0.6].map((share): readonly XY[] => {
    const off = share * radius * Math.SQRT1_2;
    const half = Math.sqrt(1 - share * share) * radius * Math.SQRT1_2;
    return [
      [x + off - half, y + off + half],
      [x + off + half, y + off - half],
    ];
  });
}
