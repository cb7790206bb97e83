import { levelExtent } from '../../geometry/level-extent.ts';
import { selectLevel, selectLevelBar, selectModel, selectRegion, selectShownPlan } from '../state/selectors.ts';
import { spotsOn, useShown } from '../state/shown.ts';
import { useAppStore } from '../state/store.ts';
import { paintSheetNames } from './paint/names/sheet-names.ts';
import { paintFloors, paintSheet } from './paint/paper.ts';
import { paintThings } from './paint/things.ts';
import { paintWalls } from './paint/walls.ts';
import { paintRegionEdge, paintZones } from './paint/zones.ts';
import { PaintLayer } from './paint-layer.tsx';

/** Desk, sheet, floors; white where a detector may sit. */
export function SheetLayer() {
  const size = useAppStore((state) => state.stageSize);
  const level = useAppStore(selectLevel);
  const region = useAppStore(selectRegion);
  return (
    <PaintLayer
      name="sheet"
      paint={(pen) => {
        paintSheet(pen, size, levelExtent(level), region.rooms.length > 0);
        paintFloors(pen, region);
      }}
    />
  );
}

/** What the rules take away, hatched, and the edge of what is left. */
export function ZoneLayer() {
  const region = useAppStore(selectRegion);
  return (
    <PaintLayer
      name="zones"
      paint={(pen) => {
        paintZones(pen, region);
        paintRegionEdge(pen, region);
      }}
    />
  );
}

/** Things, then the walls and openings over them. */
export function WallLayer() {
  const model = useAppStore(selectModel);
  const level = useAppStore(selectLevel);
  const selection = useAppStore((state) => state.selection);
  return (
    <PaintLayer
      name="walls"
      paint={(pen) => {
        const chosen = new Set(selection);
        paintWalls(pen, model, chosen);
        paintThings(pen, level, chosen);
      }}
    />
  );
}

/** Everything written: detectors first, then rooms, things, rules, dimensions; what finds no room is left out. */
export function NameLayer() {
  const plan = useAppStore(selectShownPlan);
  const model = useAppStore(selectModel);
  const region = useAppStore(selectRegion);
  const selection = useAppStore((state) => state.selection);
  const bar = useAppStore(selectLevelBar);
  const size = useAppStore((state) => state.stageSize);
  const marked = useShown((shown) => spotsOn(model.level.id, shown));
  const named = { plan, model, region, selection, bar, marked };
  return <PaintLayer name="names" paint={(pen) => paintSheetNames(pen, named, size)} />;
}
