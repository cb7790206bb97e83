import type { Tone } from '../../geometry/messages/tone.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { arc, discsPart, edgesPart, linesPart, type Shape } from './display-list.ts';

/**
 * The sign of a verdict, told apart by shape, without color: clear a white disc with its axis, clear of what is drawn the same with its rim
 * left open at the upper right, tight a doubled rim, blocked hatched over, unknown a broken rim.
 * @param radius to the outer edge, in the unit of `at`
 */
export function verdictSign(tone: Tone, at: XY, radius: number): readonly Shape[] {
  const line = radius * 0.22;
  const rim = radius - line / 2;
  const stroke = { line, color: tone } as const;
  const ground: Shape = { ink: { fill: 'paper' }, parts: [discsPart([at], radius)] };
  const ring: Shape = { ink: stroke, parts: [discsPart([at], rim)] };
  const axis: Shape = { ink: { fill: tone }, parts: [discsPart([at], radius * 0.22)] };
  switch (tone) {
    case 'clear':
      return [ground, ring, axis];
    case 'clear-of-drawn':
      return [ground, { ink: stroke, parts: [edgesPart([[arc(at, rim, 0, 1.5 * Math.PI)]])] }, axis];
    case 'tight':
      return [ground, ring, { ink: { ...stroke, line: line * 0.8 }, parts: [discsPart([at], rim * 0.58)] }];
    case 'blocked':
      return [ground, { ink: stroke, parts: [linesPart(bars(at, rim))] }, ring];
    case 'unknown': {
      const dash = (2 * Math.PI * rim) / 16;
      return [ground, { ink: { ...stroke, dash: [dash, dash] }, parts: [discsPart([at], rim)] }];
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
