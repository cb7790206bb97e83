/** The signs of the verdicts, told apart by shape: the same as on screen. */
import type { Tone } from '../../geometry/messages/index.ts';
import { COLOUR } from './style.ts';
import { element, group, line, num } from './svg.ts';

/**
 * A disc about (x, y). Clear: white with its axis. Clear of what is drawn: its rim left open at the upper right. Tight: the rim doubled. Blocked: hatched over. Unknown: a broken rim.
 * @param radius to the outer edge, mm
 */
export function verdictMark(verdict: Tone, x: number, y: number, radius: number): string {
  const colour = COLOUR.verdict[verdict].line;
  const weight = radius * 0.22;
  const rim = radius - weight / 2;
  const disc = (r: number, more: Record<string, string | number> = {}) =>
    element('circle', { cx: x, cy: y, r, fill: COLOUR.paper, stroke: colour, 'stroke-width': weight, ...more });
  switch (verdict) {
    case 'clear':
      return group({}, disc(rim), element('circle', { cx: x, cy: y, r: radius * 0.22, fill: colour }));
    case 'clear-of-drawn':
      return group(
        {},
        element('path', {
          d: `M${num(x + rim)} ${num(y)}A${num(rim)} ${num(rim)} 0 1 1 ${num(x)} ${num(y - rim)}`,
          fill: COLOUR.paper,
          stroke: colour,
          'stroke-width': weight,
        }),
        element('circle', { cx: x, cy: y, r: radius * 0.22, fill: colour }),
      );
    case 'tight':
      return group({}, disc(rim), disc(rim * 0.58, { fill: 'none' }));
    case 'blocked':
      return group({}, disc(rim), ...bars(x, y, rim, colour));
    case 'unknown': {
      const dash = (2 * Math.PI * rim) / 16;
      return disc(rim, { 'stroke-dasharray': `${dash} ${dash}` });
    }
  }
}

/** Slanting bars across the disc, cut at its rim by arithmetic so that no clipping is needed. */
function bars(x: number, y: number, radius: number, colour: string): readonly string[] {
  return [-0.6, -0.2, 0.2, 0.6].map((share) => {
    const off = share * radius;
    const half = Math.sqrt(radius * radius - off * off);
    const [nx, ny] = [Math.SQRT1_2, Math.SQRT1_2];
    const [dx, dy] = [Math.SQRT1_2, -Math.SQRT1_2];
    return line(
      x + nx * off - dx * half,
      y + ny * off - dy * half,
      x + nx * off + dx * half,
      y + ny * off + dy * half,
      { stroke: colour, 'stroke-width': radius * 0.22 },
    );
  });
}
