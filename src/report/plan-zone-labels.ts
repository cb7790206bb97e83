/** The rule and its distance along the edge of each zone, on the hatched side. */

import type { Edge } from '../../geometry/arrangement/types.ts';
import { capital, OPENING_NOUN } from '../../geometry/messages/index.ts';
import type { XY } from '../../geometry/plan/model.ts';
import type { Zone } from '../../geometry/region/types.ts';
import { edgeLength, onEdge, visibilityTest } from '../../geometry/region/visible-edges.ts';
import { formatRequired } from '../../geometry/units/index.ts';
import { openRooms } from '../drawing/floor.ts';
import { drawLabel, type Label, labelSlot, makeLabel } from './label.ts';
import type { Placer } from './placer.ts';
import { insideRings } from './places.ts';
import { COLOUR, TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { onPaper, toPaper, type View } from './view.ts';

const STYLE = { size: TYPE_MM.fine, colour: COLOUR.hatchEdge, weight: 'bold' } as const;
/** The same words again only beyond this, mm of paper. */
const APART = 32;
/** From the edge to the text, mm. */
const GAP = 0.35;
/** Places along an edge are tried at this distance, mm of paper. */
const STEP = 2;

/** A place for a label: its middle and its turn. */
interface Spot {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}
/** A stretch of places next to each other where the label may stand. */
interface Stretch {
  readonly edge: Edge;
  readonly spots: readonly Spot[];
}

export function placeZoneLabels(matter: SubjectMatter, view: View, placer: Placer): string {
  const floors = openRooms(matter.region).map(({ room }) =>
    room.floorRings.map((ring) => ring.map((p) => toPaper(view, p))),
  );
  const placed: { readonly words: string; readonly x: number; readonly y: number }[] = [];
  const drawn: string[] = [];
  for (const zone of matter.zones) {
    const words = zoneWords(matter, zone);
    const label = makeLabel([{ text: words, style: STYLE }]);
    const isFree = ({ x, y, turn }: Spot) => {
      const slot = labelSlot(label, x, y, turn);
      const again = placed.some((one) => one.words === words && Math.hypot(one.x - x, one.y - y) < APART);
      return !again && placer.isFree(slot) && floors.some((rings) => insideRings(rings, slot));
    };
    const spot = bestSpot(matter, view, zone, label, isFree);
    if (!spot) continue;
    placer.take(labelSlot(label, spot.x, spot.y, spot.turn));
    placed.push({ words, x: spot.x, y: spot.y });
    drawn.push(drawLabel(label, spot.x, spot.y, spot.turn));
  }
  return drawn.join('');
}

/** "Sump pit 7 ft", "Window 3 ft". Of a stream, what it is. */
function zoneWords({ plan, level, rules }: SubjectMatter, { rule, subject, distance, stream }: Zone): string {
  if (stream) return 'Stream of air';
  const opening = level.openings.find(({ id }) => id === subject);
  const name = opening ? capital(OPENING_NOUN[opening.kind]) : (rules.find(({ id }) => id === rule)?.name ?? rule);
  return `${name} ${formatRequired(distance, plan.display.length)}`;
}

/** The middle of the longest stretch of the outline along which the label may stand; straight edges before round ones. */
function bestSpot(
  { zones }: SubjectMatter,
  view: View,
  zone: Zone,
  label: Label,
  isFree: (spot: Spot) => boolean,
): Spot | null {
  const isDrawn = visibilityTest(zone, zones);
  const stretches = zone.outlines.flat().flatMap((edge) => freeStretches(view, edge, label, isDrawn, isFree));
  const rank = ({ edge, spots }: Stretch) => spots.length * (edge.kind === 'line' ? 3 : 1);
  const [best] = stretches.sort((a, b) => rank(b) - rank(a));
  return best?.spots[Math.floor(best.spots.length / 2)] ?? null;
}

function freeStretches(
  view: View,
  edge: Edge,
  label: Label,
  isDrawn: (p: XY) => boolean,
  isFree: (spot: Spot) => boolean,
): readonly Stretch[] {
  const length = paperLength(view, edge);
  if (edge.kind === 'line' && length < label.width) return [];
  const steps = Math.max(1, Math.ceil(length / STEP));
  const stretches: Spot[][] = [];
  let open = false;
  for (let i = 0; i <= steps; i++) {
    const spot = spotAt(view, edge, i / steps, label);
    const fits = spot !== null && isFree(spot) && isDrawn(onEdge(edge, i / steps));
    if (fits && !open) stretches.push([]);
    if (fits) stretches.at(-1)?.push(spot);
    open = fits;
  }
  return stretches.map((spots) => ({ edge, spots }));
}

/** Outlines have the zone on their right, so the text goes to the right of the way along the edge. */
function spotAt(view: View, edge: Edge, share: number, { width, height }: Label): Spot | null {
  const at = toPaper(view, onEdge(edge, share));
  if (edge.kind === 'line') {
    const angle = Math.atan2(edge.to[1] - edge.from[1], edge.to[0] - edge.from[0]);
    const reach = share * paperLength(view, edge);
    const within = reach >= width / 2 && paperLength(view, edge) - reach >= width / 2;
    return within ? inward(at, angle + Math.PI / 2, height / 2 + GAP) : null;
  }
  const radius = onPaper(view, edge.radius);
  if (edge.sweep < 0 || radius <= width / 2 + height) return null;
  // So deep that the ends of the straight text stay within the curve.
  const depth = radius - Math.sqrt(radius * radius - (width / 2) ** 2) + height / 2 + GAP;
  return inward(at, edge.start + edge.sweep * share + Math.PI, depth);
}

/** Moved from the edge into the zone; text is never upside down, and upright text is read from the right. */
function inward([x, y]: XY, direction: number, depth: number): Spot {
  const degrees = ((((direction * 180) / Math.PI + 90) % 180) + 180) % 180;
  return {
    x: x + Math.cos(direction) * depth,
    y: y + Math.sin(direction) * depth,
    turn: degrees > 89.9 ? degrees - 180 : degrees,
  };
}

function paperLength(view: View, edge: Edge): number {
  return onPaper(view, edgeLength(edge));
}
