import type { LevelRegion, Zone } from '../../../geometry/region/types.ts';
import { HATCHES, type HatchName, roomHatch, ruleHatch } from '../../theme/hatches.ts';
import { LINE_PX } from '../../theme/tokens.ts';
import { hatchFill } from './hatch-pattern.ts';
import { floorsOnScreen, whiteOnScreen, zoneEdgesOnScreen, zonesOnScreen } from './paths.ts';
import { type Pen, strokePath, within } from './pen.ts';

/** What the rules take away: each rule's zones in its own hatch, on the floors of the rooms that are not out as a whole. `pulled`: in haste. */
export function paintZones(pen: Pen, region: LevelRegion, pulled: boolean): void {
  for (const [hatch, rooms] of byHatch(region.rooms, roomHatch)) fillHatch(pen, hatch, floorsOnScreen(pen, rooms));
  within(pen, () => {
    pen.ctx.clip(floorsOnScreen(pen, openRooms(region)), 'nonzero');
    for (const [hatch, zones] of byHatch(region.zones, ({ rule }) => ruleHatch(rule))) {
      fillHatch(pen, hatch, zonesOnScreen(pen, zones));
    }
    strokePath(pen, zoneEdgesOnScreen(pen, region, pulled), pen.theme.hatchEdge, LINE_PX.zoneEdge);
  });
}

/** The edge of the white: where a detector may sit. */
export function paintRegionEdge(pen: Pen, { rooms }: LevelRegion): void {
  strokePath(pen, whiteOnScreen(pen, rooms), pen.theme.verdict.clear.line, LINE_PX.zoneEdge * 1.5);
}

/** Zones lit up under the pointer: their whole edge. */
export function paintLitZones(pen: Pen, region: LevelRegion, zones: readonly Zone[]): void {
  if (zones.length === 0) return;
  within(pen, () => {
    const { ctx, theme } = pen;
    ctx.clip(floorsOnScreen(pen, openRooms(region)), 'nonzero');
    for (const zone of zones) {
      const path = zonesOnScreen(pen, [zone]);
      ctx.globalAlpha = 0.08;
      ctx.fillStyle = theme.accent;
      ctx.fill(path, 'nonzero');
      ctx.globalAlpha = 1;
      strokePath(pen, path, theme.accent, LINE_PX.zoneEdge * 2);
    }
  });
}

const openRooms = ({ rooms }: LevelRegion) => rooms.filter(({ barred }) => !barred);

/** In one fill for each hatch: a hatch that is laid twice would be darker where zones overlap. */
function byHatch<T>(parts: readonly T[], hatchOf: (part: T) => HatchName | null): ReadonlyMap<HatchName, readonly T[]> {
  const sorted = new Map<HatchName, T[]>();
  for (const part of parts) {
    const hatch = hatchOf(part);
    const others = hatch && sorted.get(hatch);
    if (others) others.push(part);
    else if (hatch) sorted.set(hatch, [part]);
  }
  return sorted;
}

function fillHatch(pen: Pen, hatch: HatchName, path: Path2D): void {
  const fill = hatchFill(pen, HATCHES[hatch], pen.theme.hatch);
  if (!fill) return;
  pen.ctx.fillStyle = fill;
  // Floors run outer rings one way and holes the other, so the non-zero rule leaves the holes out.
  pen.ctx.fill(path, 'nonzero');
}
