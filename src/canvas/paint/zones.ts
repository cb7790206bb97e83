import type { LevelRegion, Zone } from '../../../geometry/region/types.ts';
import { HATCHES } from '../../design/hatches.ts';
import { LINE_PX } from '../../design/tokens.ts';
import { hatchFill } from './hatch-pattern.ts';
import { type Hatched, onScreen, regionPaths, zonePath } from './paths.ts';
import { type Pen, strokePath, within } from './pen.ts';

/** What the rules take away: each rule's zones in its own hatch, on the floors of the rooms that are not out as a whole. */
export function paintZones(pen: Pen, region: LevelRegion): void {
  const { openFloors, barred, zones, zoneEdges } = regionPaths(region);
  for (const each of barred) fillHatch(pen, each);
  within(pen, () => {
    pen.ctx.clip(onScreen(pen, openFloors), 'nonzero');
    for (const each of zones) fillHatch(pen, each);
    strokePath(pen, onScreen(pen, zoneEdges), pen.theme.hatchEdge, LINE_PX.zoneEdge);
  });
}

/** The edge of the white: where a detector may sit. */
export function paintRegionEdge(pen: Pen, region: LevelRegion): void {
  strokePath(pen, onScreen(pen, regionPaths(region).white), pen.theme.verdict.clear.line, LINE_PX.zoneEdge * 1.5);
}

/** Zones lit up under the pointer: their whole edge. */
export function paintLitZones(pen: Pen, region: LevelRegion, zones: readonly Zone[]): void {
  within(pen, () => {
    const { ctx, theme } = pen;
    ctx.clip(onScreen(pen, regionPaths(region).openFloors), 'nonzero');
    for (const zone of zones) {
      const path = onScreen(pen, zonePath(zone));
      ctx.globalAlpha = 0.08;
      ctx.fillStyle = theme.accent;
      ctx.fill(path, 'nonzero');
      ctx.globalAlpha = 1;
      strokePath(pen, path, theme.accent, LINE_PX.zoneEdge * 2);
    }
  });
}

function fillHatch(pen: Pen, { hatch, path }: Hatched): void {
  const fill = hatchFill(pen, HATCHES[hatch], pen.theme.hatch);
  if (!fill) return;
  pen.ctx.fillStyle = fill;
  // Floors run outer rings one way and holes the other, so the non-zero rule leaves the holes out.
  pen.ctx.fill(onScreen(pen, path), 'nonzero');
}
