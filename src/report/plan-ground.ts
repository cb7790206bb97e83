/** The floor: white where a detector may sit, hatched where a rule takes it away. */
import type { Zone } from '../../geometry/region/types.ts';
import { onEdge, visibleEdges } from '../../geometry/region/visible-edges.ts';
import { type HatchName, roomHatch, ruleHatch } from '../theme/hatches.ts';
import { hatchFill } from './hatch-fill.ts';
import { lineSlot, type Slot } from './placer.ts';
import { COLOUR, FULL_WEIGHT_RATIO, LINE_MM, TAKEN_GROUND } from './style.ts';
import { openRooms, type SubjectMatter } from './subject-matter.ts';
import { element, group } from './svg.ts';
import { arcRingsPath, edgesPath, ringsPath, toPaper, type View } from './view.ts';

const OPEN_FLOOR = 'open-floor';

/** Everything on the floor, from the ground up. The clip path keeps zones to rooms that are not out as a whole. */
export function drawGround(matter: SubjectMatter, view: View): string {
  const open = openRooms(matter);
  const floor = open.map(({ room }) => ringsPath(view, room.floorRings)).join('');
  return group(
    {},
    element('clipPath', { id: OPEN_FLOOR }, element('path', { d: floor, 'clip-rule': 'evenodd' })),
    ...matter.region.rooms
      .filter(({ barred }) => barred)
      .map((region) => {
        const hatch = roomHatch(region);
        const d = ringsPath(view, region.room.floorRings);
        return group({}, floorPath(d, TAKEN_GROUND), hatch ? floorPath(d, hatchFill(hatch)) : '');
      }),
    // One path of floor and region: what lies in one of them and not in the other is what the rules take.
    ...open.map(({ room, rings }) =>
      floorPath(ringsPath(view, room.floorRings) + arcRingsPath(view, rings), TAKEN_GROUND),
    ),
    group({ 'clip-path': `url(#${OPEN_FLOOR})` }, ...byRule(matter.zones).map((zones) => drawRule(zones, view))),
    ...open.map(({ rings }) =>
      element('path', {
        d: arcRingsPath(view, rings),
        fill: 'none',
        stroke: COLOUR.verdict.clear.line,
        'stroke-width': regionWeight(view),
        'stroke-linejoin': 'round',
      }),
    ),
  );
}

/** Names of the hatches on the drawing, in the order of the legend. */
export function usedHatches(matter: SubjectMatter): readonly HatchName[] {
  const rules = matter.zones.map(({ rule }) => ruleHatch(rule));
  const rooms = matter.region.rooms.map(roomHatch);
  return [...new Set([...rules, ...rooms])].filter((name) => name !== null);
}

/** The edge of the white in short pieces. */
export function edgeSlots(matter: SubjectMatter, view: View): readonly Slot[] {
  return openRooms(matter).flatMap(({ rings }) =>
    rings.flat().flatMap((edge) => {
      const pieces = edge.kind === 'line' ? 1 : Math.max(1, Math.ceil(Math.abs(edge.sweep) * 4));
      return Array.from({ length: pieces }, (_, i) => {
        const [a, b] = [toPaper(view, onEdge(edge, i / pieces)), toPaper(view, onEdge(edge, (i + 1) / pieces))];
        return lineSlot(a[0], a[1], b[0], b[1], regionWeight(view));
      });
    }),
  );
}

/** The edge of the white: finer where the house is drawn small. */
function regionWeight({ scale: { ratio } }: View): number {
  return LINE_MM.region * Math.min(1, Math.max(0.5, FULL_WEIGHT_RATIO / ratio));
}

/** All zones of one rule as one area. Outlines have the zone on their right, so the non-zero rule joins them. */
function drawRule(zones: readonly Zone[], view: View): string {
  const [first] = zones;
  const hatch = first && ruleHatch(first.rule);
  if (!hatch) return '';
  const d = arcRingsPath(
    view,
    zones.flatMap(({ outlines }) => outlines),
  );
  const edges = [...visibleEdges(zones).values()].flat().map((edge) => edgesPath(view, edge));
  return (
    element('path', { d, fill: hatchFill(hatch) }) +
    element('path', { d: edges.join(''), fill: 'none', stroke: COLOUR.hatchEdge, 'stroke-width': LINE_MM.zone })
  );
}

function byRule(zones: readonly Zone[]): readonly (readonly Zone[])[] {
  return [...new Set(zones.map(({ rule }) => rule))].map((rule) => zones.filter((zone) => zone.rule === rule));
}

function floorPath(d: string, fill: string): string {
  return element('path', { d, fill, 'fill-rule': 'evenodd' });
}
