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

/**
 * Each rule's name and distance along the edge of its zones, on the hatched side, where no other edge runs along it: the longest edges first.
 * @param edges what is seen of each zone's outline; they run with the zone on their right
 * @param onFloor whether a point lies on a floor that is not out as a whole
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
  // Made when a label first finds a free place: on a small drawing of a large house none does.
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

/** The middle of the longest run of places next to each other that are free; straight edges before round ones. */
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
    // Only as long as the rest of the edge could still be better.
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

/** Whether the block is no longer than the edge, and the edge's curve not too tight for it. */
function canHold(edge: Edge, { width, height }: Block): boolean {
  if (edgeLength(edge) < width) return false;
  return edge.kind === 'line' || (edge.sweep >= 0 && edge.radius > width / 2 + height);
}

/** Where the block stands beside the edge, to the right of the way along it; null where it would reach past an end. */
function slotBeside(edge: Edge, share: number, block: Block, gap: number): Slot | null {
  const half = block.width / 2;
  const isLine = edge.kind === 'line';
  if (isLine && Math.min(share, 1 - share) * edgeLength(edge) < half) return null;
  const inward = isLine
    ? (lineSlot(edge.from, edge.to, 0).turn * Math.PI) / 180 + Math.PI / 2
    : edge.start + edge.sweep * share + Math.PI;
  // In a curve so deep that the ends of the straight text stay within it.
  const bulge = isLine ? 0 : edge.radius - Math.sqrt(edge.radius ** 2 - half ** 2);
  const at = polar(onEdge(edge, share), bulge + block.height / 2 + gap, inward);
  return slotAt(block, at, uprightTurn((inward * 180) / Math.PI + 90));
}
