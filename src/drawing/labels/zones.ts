import type { Edge } from '../../../geometry/arrangement/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import type { Zone } from '../../../geometry/region/types.ts';
import { edgeLength, onEdge, type Stretch } from '../../../geometry/region/visible-edges.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { linesPart, polar } from '../display-list.ts';
import type { TextStyle } from '../text.ts';
import { takeLines } from './grounds.ts';
import { type Block, blockOf, type LabelSheet, writeBlock, type ZoneLabel } from './label.ts';
import { createPlacer, type Placer } from './placer.ts';
import { isInside, lineSlot, type Slot, slotAt, uprightTurn } from './slot.ts';

/** Least distance between labels with the same words, as a multiple of the type size. */
const APART = 15;
/** Distance from the edge to the text, and between the places tried along an edge, as multiples of the type size. */
const GAP = 0.3;
const STEP = 1;
/** Most steps between the places tried along one edge. */
const MOST_STEPS = 30;
/** Most labels of one rule, and most zones that are tried for them: a house full of furniture has hundreds. */
const MOST = 10;
const TRIES = 30;

/**
 * Returns labels with each rule's name and distance along the edge of its zones, on the hatched side, where no other edge runs along them.
 * Zones with the longest visible edges come first.
 * @param edges the visible stretches of each zone's outline, with the zone on their right
 * @param onFloor whether a point is on the floor of a room that is not barred as a whole
 */
export function zoneLabels(
  edges: ReadonlyMap<Zone, readonly Stretch[]>,
  nameOf: (zone: Zone) => string,
  onFloor: (p: XY) => boolean,
  sheet: LabelSheet,
): readonly ZoneLabel[] {
  const { placer, measure, type } = sheet;
  const style: TextStyle = { size: type.fine, color: 'inkSoft', halo: 'ground' };
  const written: ZoneLabel[] = [];
  const counts = new Map<RuleId, { done: number; tries: number }>();
  // Built when a label first finds a free place: on a small drawing of a large house none does.
  let crossing: Placer | null = null;
  const isCrossedSteeply = (slot: Slot) => {
    crossing ??= edgesTaken(edges, sheet);
    return crossing.isCrossedSteeply(slot);
  };
  for (const { zone, seen } of longestFirst(edges)) {
    const count = counts.get(zone.rule) ?? { done: 0, tries: 0 };
    counts.set(zone.rule, count);
    if (count.done >= MOST || count.tries++ >= TRIES) continue;
    const text = nameOf(zone);
    const block = blockOf([{ text, style }], measure);
    const long = seen.filter((edge) => canHold(edge, block));
    if (long.length === 0) continue;
    const isNear = ({ x, y }: Slot, { texts: [other] }: ZoneLabel) =>
      other?.text === text && distance(other.at, [x, y]) < APART * style.size;
    const isFree = (slot: Slot) =>
      !written.some((other) => isNear(slot, other)) &&
      placer.isFree(slot) &&
      isCrossedSteeply(slot) &&
      isInside(onFloor, slot);
    const slot = bestSlot(long, block, type.fine, isFree);
    if (!slot) continue;
    count.done += 1;
    written.push({ ...writeBlock(block, slot, sheet), zone });
  }
  return written;
}

function edgesTaken(edges: ReadonlyMap<Zone, readonly Stretch[]>, sheet: LabelSheet): Placer {
  const placer = createPlacer(null, 4 * sheet.type.fine);
  const parts = [...edges.values()].flat(2).map((edge) => linesPart([[edge]]));
  takeLines(parts, 'line', { ...sheet, placer });
  return placer;
}

function longestFirst(edges: ReadonlyMap<Zone, readonly Stretch[]>) {
  return [...edges]
    .map(([zone, stretches]) => {
      const seen = stretches.flat();
      return { zone, seen, long: seen.reduce((sum, edge) => sum + edgeLength(edge), 0) };
    })
    .sort((a, b) => b.long - a.long);
}

/** Returns the middle of the longest run of adjacent free places, straight edges preferred to arcs; null if no place is free. */
function bestSlot(edges: readonly Edge[], block: Block, size: number, isFree: (slot: Slot) => boolean): Slot | null {
  let best: readonly Slot[] = [];
  let [most, first] = [0, Number.POSITIVE_INFINITY];
  const weighed = edges.map((edge, index) => ({
    edge,
    index,
    weight: edgeLength(edge) * (edge.kind === 'line' ? 3 : 1),
  }));
  for (const { edge, index, weight } of weighed.sort((a, b) => b.weight - a.weight)) {
    const steps = Math.min(MOST_STEPS, Math.ceil(edgeLength(edge) / (STEP * size)));
    const rankOf = (places: number) => (places * weight) / (steps + 1);
    const isBetter = (rank: number) => rank > most || (rank === most && index < first);
    let run: Slot[] = [];
    // Stops once the rest of the edge can no longer beat the best run.
    for (let i = 0; i <= steps && isBetter(rankOf(run.length + steps + 1 - i)); i++) {
      const slot = slotBeside(edge, steps === 0 ? 0.5 : i / steps, block, GAP * size);
      if (!slot || !isFree(slot)) run = [];
      else run.push(slot);
      const rank = rankOf(run.length);
      if (run.length > 0 && isBetter(rank)) [best, most, first] = [run, rank, index];
    }
  }
  return best[Math.floor(best.length / 2)] ?? null;
}

/** Whether the block is no longer than the edge, and the edge is straight or a wide enough arc that curves inward. */
function canHold(edge: Edge, { width, height }: Block): boolean {
  if (edgeLength(edge) < width) return false;
  return edge.kind === 'line' || (edge.sweep >= 0 && edge.radius > width / 2 + height);
}

/** The slot of the block beside the edge, on the right of the edge's direction; null if it would reach past an end of a straight edge. */
function slotBeside(edge: Edge, share: number, block: Block, gap: number): Slot | null {
  const half = block.width / 2;
  const isLine = edge.kind === 'line';
  if (isLine && Math.min(share, 1 - share) * edgeLength(edge) < half) return null;
  const inward = isLine
    ? (lineSlot(edge.from, edge.to, 0).turn * Math.PI) / 180 + Math.PI / 2
    : edge.start + edge.sweep * share + Math.PI;
  // Within an arc the block is moved inward until the ends of its straight text are inside the arc.
  const bulge = isLine ? 0 : edge.radius - Math.sqrt(edge.radius ** 2 - half ** 2);
  const at = polar(onEdge(edge, share), bulge + block.height / 2 + gap, inward);
  return slotAt(block, at, uprightTurn((inward * 180) / Math.PI + 90));
}
