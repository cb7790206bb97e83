import Flatbush from 'flatbush';
import type { Edge } from '../../../geometry/arrangement/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { Zone } from '../../../geometry/region/types.ts';
import { edgeLength, onEdge, type Stretch, zoneExtent } from '../../../geometry/region/visible-edges.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import type { TextStyle } from '../text.ts';
import { type Block, blockOf, blockSlot, blockTexts, isInside, uprightTurn } from './block.ts';
import { takeEdges } from './grounds.ts';
import { type Label, type LabelMedium, toUnits, unitsOf } from './medium.ts';
import type { Placer, Slot } from './placer.ts';

/** The same words again only beyond this, in sizes of the type. */
const APART = 15;
/** From the edge to the text, and between places along an edge, in the same. */
const GAP = 0.3;
const STEP = 1;
/** Most places along one edge. */
const MOST_STEPS = 30;
/** Labels of a rule, and zones that are tried for them: a house full of furniture has hundreds. */
const MOST = 10;
const TRIES = 30;

export interface ZoneLabel extends Label {
  readonly zone: Zone;
}

/**
 * Each rule's name and distance along the edge of its zones, on the hatched side, where no other edge runs along it: the longest edges first.
 * @param edges what is seen of each zone's outline; they run with the zone on their right
 * @param onFloor whether a point, mm, lies on a floor that is not out as a whole
 */
export function zoneLabels(
  edges: ReadonlyMap<Zone, readonly Stretch[]>,
  nameOf: (zone: Zone) => string,
  onFloor: (p: XY) => boolean,
  medium: LabelMedium,
  placer: Placer,
): readonly ZoneLabel[] {
  const style: TextStyle = { size: medium.type.fine, color: 'inkSoft', halo: 'ground' };
  const placed: ZoneLabel[] = [];
  const counts = new Map<RuleId, { done: number; tries: number }>();
  const takeEdgesNear = edgesTaker(edges, medium, placer);
  const holds = ([x, y]: XY) => onFloor([x / medium.scale, y / medium.scale]);
  for (const { zone, seen } of longestFirst(edges)) {
    const count = counts.get(zone.rule) ?? { done: 0, tries: 0 };
    counts.set(zone.rule, count);
    if (count.done >= MOST || count.tries++ >= TRIES) continue;
    const text = nameOf(zone);
    const block = blockOf([{ text, style }], medium.measure);
    const long = seen.filter((edge) => canHold(edge, block, medium));
    if (long.length === 0) continue;
    takeEdgesNear(zone);
    const isFree = (slot: Slot) =>
      !placed.some(({ texts: [other] }) => other?.text === text && distance(other.at, slot) < APART * style.size) &&
      placer.isFree(slot, ['edge']) &&
      placer.isCrossedSteeply(slot, 'edge') &&
      isInside(holds, slot);
    const slot = bestSlot(long, block, medium, isFree);
    if (!slot) continue;
    count.done += 1;
    placer.take(slot);
    placed.push({ zone, texts: blockTexts(block, [slot.x, slot.y], slot.turn), shapes: [], slots: [slot] });
  }
  return placed;
}

/** Takes the edges that a label of a zone could meet, each once: a large house has thousands. */
function edgesTaker(edges: ReadonlyMap<Zone, readonly Stretch[]>, medium: LabelMedium, placer: Placer) {
  const zones = [...edges];
  const index = new Flatbush(Math.max(1, zones.length));
  for (const [zone] of zones) {
    const { minX, minY, maxX, maxY } = zoneExtent(zone);
    index.add(minX, minY, maxX, maxY);
  }
  if (zones.length === 0) index.add(0, 0, 0, 0);
  index.finish();
  const taken = new Set<number>();
  return (zone: Zone) => {
    const { minX, minY, maxX, maxY } = zoneExtent(zone);
    for (const near of index.search(minX, minY, maxX, maxY, (each) => !taken.has(each))) {
      taken.add(near);
      takeEdges(zones[near]?.[1] ?? [], medium, placer);
    }
  };
}

function distance([x, y]: XY, slot: Slot): number {
  return Math.hypot(x - slot.x, y - slot.y);
}

function longestFirst(edges: ReadonlyMap<Zone, readonly Stretch[]>) {
  return [...edges]
    .map(([zone, stretches]) => {
      const seen = stretches.flat();
      return { zone, seen, long: seen.reduce((sum, edge) => sum + edgeLength(edge), 0) };
    })
    .sort((a, b) => b.long - a.long);
}

/** The middle of the longest run of places next to each other that are free; straight edges before round ones. */
function bestSlot(
  edges: readonly Edge[],
  block: Block,
  medium: LabelMedium,
  isFree: (slot: Slot) => boolean,
): Slot | null {
  let best: readonly Slot[] = [];
  let [most, first] = [0, Number.POSITIVE_INFINITY];
  const weighed = edges.map((edge, index) => ({
    edge,
    index,
    weight: edgeLength(edge) * (edge.kind === 'line' ? 3 : 1),
  }));
  for (const { edge, index, weight } of weighed.sort((a, b) => b.weight - a.weight)) {
    const step = STEP * medium.type.fine;
    const steps = Math.min(MOST_STEPS, Math.ceil(unitsOf(medium, edgeLength(edge)) / step));
    const rankOf = (places: number) => (places * weight) / (steps + 1);
    const isBetter = (rank: number) => rank > most || (rank === most && index < first);
    let run: Slot[] = [];
    // Only as long as the rest of the edge could still be better.
    for (let i = 0; i <= steps && isBetter(rankOf(run.length + steps + 1 - i)); i++) {
      const slot = slotAt(edge, steps === 0 ? 0.5 : i / steps, block, medium);
      if (!slot || !isFree(slot)) run = [];
      else run.push(slot);
      const rank = rankOf(run.length);
      if (run.length > 0 && isBetter(rank)) [best, most, first] = [run, rank, index];
    }
  }
  return best[Math.floor(best.length / 2)] ?? null;
}

/** Whether the block is no longer than the edge, and the edge's curve not too tight for it. */
function canHold(edge: Edge, { width, height }: Block, medium: LabelMedium): boolean {
  if (unitsOf(medium, edgeLength(edge)) < width) return false;
  return edge.kind === 'line' || (edge.sweep >= 0 && unitsOf(medium, edge.radius) > width / 2 + height);
}

/** Where the block stands beside the edge, to the right of the way along it; null where it would reach past an end. */
function slotAt(edge: Edge, share: number, block: Block, medium: LabelMedium): Slot | null {
  const { width, height } = block;
  const at = toUnits(medium, onEdge(edge, share));
  const gap = height / 2 + GAP * medium.type.fine;
  if (edge.kind === 'line') {
    const length = unitsOf(medium, edgeLength(edge));
    if (Math.min(share, 1 - share) * length < width / 2) return null;
    const angle = Math.atan2(edge.to[1] - edge.from[1], edge.to[0] - edge.from[0]);
    return inward(at, angle + Math.PI / 2, gap, block);
  }
  const radius = unitsOf(medium, edge.radius);
  // So deep that the ends of the straight text stay within the curve.
  const depth = radius - Math.sqrt(radius * radius - (width / 2) ** 2) + gap;
  return inward(at, edge.start + edge.sweep * share + Math.PI, depth, block);
}

/** Moved from the edge into the zone. */
function inward([x, y]: XY, direction: number, depth: number, block: Block): Slot {
  const at: XY = [x + Math.cos(direction) * depth, y + Math.sin(direction) * depth];
  return blockSlot(block, at, uprightTurn((direction * 180) / Math.PI + 90));
}
