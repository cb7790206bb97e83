/** The floor on paper, and the ground that its edge takes. */
import { onEdge, visibleEdges } from '../../geometry/region/visible-edges.ts';
import { floorShapes, openRooms, regionEdge, zoneShapes } from '../drawing/floor.ts';
import { lineSlot, type Slot } from './placer.ts';
import { LINE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { svgShapes } from './svg-shapes.ts';
import { toPaper, type View } from './view.ts';

export function drawGround({ region, zones }: SubjectMatter, view: View): string {
  const shapes = [...floorShapes(region), ...zoneShapes(region, zones, visibleEdges(zones)), regionEdge(region)];
  return svgShapes(view, shapes);
}

/** The edge of the white in short pieces. */
export function edgeSlots({ region }: SubjectMatter, view: View): readonly Slot[] {
  return openRooms(region).flatMap(({ rings }) =>
    rings.flat().flatMap((edge) => {
      const pieces = edge.kind === 'line' ? 1 : Math.max(1, Math.ceil(Math.abs(edge.sweep) * 4));
      return Array.from({ length: pieces }, (_, i) => {
        const [a, b] = [toPaper(view, onEdge(edge, i / pieces)), toPaper(view, onEdge(edge, (i + 1) / pieces))];
        return lineSlot(a[0], a[1], b[0], b[1], LINE_MM.region);
      });
    }),
  );
}
