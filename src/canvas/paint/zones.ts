import type { LevelRegion, RoomRegion, Zone } from '../../../geometry/region/types.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import type { ZoneEdge } from '../../../geometry/zone-edges.ts';
import { HATCHES, type HatchName, roomHatch, ruleHatch } from '../../design/hatches.ts';
import { LINE_PX } from '../../design/tokens.ts';
import { hatchFill } from './hatch-pattern.ts';
import { type Pen, stroke, traceArcRing, traceLine, traceRing, within } from './pen.ts';

/** What the rules take away: each rule's zones in its own hatch, on the floors of the rooms that are not out as a whole. */
export function paintZones(pen: Pen, region: LevelRegion, edges: readonly ZoneEdge[]): void {
  for (const room of region.rooms) if (room.barred) paintBarred(pen, room);
  within(pen, () => {
    clipToOpenFloors(pen, region);
    for (const [rule, zones] of byRule(region.zones)) {
      const hatch = ruleHatch(rule);
      if (hatch) fillHatch(pen, hatch, () => traceZones(pen, zones));
    }
    pen.ctx.beginPath();
    for (const { runs } of edges) for (const run of runs) traceLine(pen, run);
    stroke(pen, pen.theme.hatchEdge, LINE_PX.zoneEdge);
  });
}

/** One zone lit up under the pointer: its whole edge. */
export function paintLitZones(pen: Pen, region: LevelRegion, zones: readonly Zone[]): void {
  within(pen, () => {
    clipToOpenFloors(pen, region);
    pen.ctx.beginPath();
    traceZones(pen, zones);
    pen.ctx.globalAlpha = 0.08;
    pen.ctx.fillStyle = pen.theme.accent;
    pen.ctx.fill('nonzero');
    pen.ctx.globalAlpha = 1;
    stroke(pen, pen.theme.accent, LINE_PX.zoneEdge * 2);
  });
}

/** A barred use or level, a room that nobody has named, or no spot at this height. */
function paintBarred(pen: Pen, region: RoomRegion): void {
  const hatch = roomHatch(region);
  if (!hatch) return;
  fillHatch(pen, hatch, () => {
    for (const ring of region.room.floorRings) traceRing(pen, ring);
  });
}

function fillHatch(pen: Pen, hatch: HatchName, trace: () => void): void {
  const fill = hatchFill(pen, HATCHES[hatch], pen.theme.hatch);
  if (!fill) return;
  pen.ctx.beginPath();
  trace();
  pen.ctx.fillStyle = fill;
  // Floors run outer rings one way and holes the other, so the non-zero rule leaves the holes out.
  pen.ctx.fill('nonzero');
}

function clipToOpenFloors(pen: Pen, region: LevelRegion): void {
  pen.ctx.beginPath();
  for (const { room, barred } of region.rooms) {
    if (!barred) for (const ring of room.floorRings) traceRing(pen, ring);
  }
  pen.ctx.clip('nonzero');
}

function traceZones(pen: Pen, zones: readonly Zone[]): void {
  for (const { outlines } of zones) for (const ring of outlines) traceArcRing(pen, ring);
}

function byRule(zones: readonly Zone[]): ReadonlyMap<RuleId, readonly Zone[]> {
  const found = new Map<RuleId, Zone[]>();
  for (const zone of zones) {
    const list = found.get(zone.rule);
    if (list) list.push(zone);
    else found.set(zone.rule, [zone]);
  }
  return found;
}
