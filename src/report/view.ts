/** The only place where mm of the house become mm of paper. */
import type { ArcRing, Edge } from '../../geometry/arrangement/types.ts';
import type { XY } from '../../geometry/plan/model.ts';
import type { Ring } from '../../geometry/plane/types.ts';
import { onEdge } from '../../geometry/region/visible-edges.ts';
import type { DrawingScale } from './scale.ts';
import { num } from './svg.ts';

export interface View {
  readonly scale: DrawingScale;
  /** Paper point of the house's origin. */
  readonly originX: number;
  readonly originY: number;
}

export function toPaper({ scale: { ratio }, originX, originY }: View, [x, y]: XY): XY {
  return [originX + x / ratio, originY + y / ratio];
}

/** A length in the house, mm, as mm of paper. */
export function onPaper({ scale: { ratio } }: View, length: number): number {
  return length / ratio;
}

/** Closed path of straight rings. */
export function ringsPath(view: View, rings: readonly Ring[]): string {
  return rings.map((ring) => `${ring.map((p, i) => `${i === 0 ? 'M' : 'L'}${point(view, p)}`).join('')}Z`).join('');
}

/** Closed path of rings of lines and circular arcs: the arcs stay true arcs. */
export function arcRingsPath(view: View, rings: readonly ArcRing[]): string {
  return rings
    .filter((ring) => ring.length > 0)
    .map((ring) => `${edgesPath(view, ring)}Z`)
    .join('');
}

/** Open path along edges that join. */
export function edgesPath(view: View, edges: readonly Edge[]): string {
  const [first] = edges;
  return first ? `M${point(view, onEdge(first, 0))}${edges.map((edge) => edgePath(view, edge)).join('')}` : '';
}

function edgePath(view: View, edge: Edge): string {
  if (edge.kind === 'line') return `L${point(view, edge.to)}`;
  const r = num(onPaper(view, edge.radius));
  const clockwise = edge.sweep > 0 ? 1 : 0;
  // An SVG arc cannot say a whole turn, and loses digits near it: such arcs are drawn in two halves.
  const halves = Math.abs(edge.sweep) > Math.PI * 1.5 ? [0.5, 1] : [1];
  const large = halves.length === 1 && Math.abs(edge.sweep) > Math.PI ? 1 : 0;
  return halves.map((share) => `A${r} ${r} 0 ${large} ${clockwise} ${point(view, onEdge(edge, share))}`).join('');
}

function point(view: View, p: XY): string {
  const [x, y] = toPaper(view, p);
  return `${num(x)} ${num(y)}`;
}
