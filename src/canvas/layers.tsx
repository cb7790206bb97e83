import { roomAt } from '../../geometry/check/room.ts';
import { levelExtent } from '../../geometry/level-extent.ts';
import type { XY } from '../../geometry/plan/model.ts';
import type { RoomRegion } from '../../geometry/region/types.ts';
import { ringsContain } from '../../geometry/ring.ts';
import { formatLength } from '../../geometry/units.ts';
import { selectLevel, selectLevelBar, selectModel, selectRegion, selectShownPlan } from '../state/selectors.ts';
import { useAppStore } from '../state/store.ts';
import { toPlan } from '../state/viewport.ts';
import { drawnDimensions, drawnEdges, roomSign, thingNames, zoneName } from './drawing.ts';
import { createPlaces, drawnNames } from './paint/names.ts';
import { paintFloors, paintRegionEdge, paintSheet } from './paint/paper.ts';
import { px } from './paint/pen.ts';
import { paintDimensions, paintLevelBar, paintRoomSigns } from './paint/rooms.ts';
import { keepThings, paintThingNames, paintThings } from './paint/things.ts';
import { paintWalls } from './paint/walls.ts';
import { paintZoneNames } from './paint/zone-names.ts';
import { paintZones } from './paint/zones.ts';
import { PaintLayer } from './paint-layer.tsx';

/** Desk, sheet, floors; white where a detector may sit. */
export function SheetLayer() {
  const size = useAppStore((state) => state.stageSize);
  const level = useAppStore(selectLevel);
  const model = useAppStore(selectModel);
  const region = useAppStore(selectRegion);
  return (
    <PaintLayer
      name="sheet"
      paint={(pen) => {
        paintSheet(pen, size, levelExtent(level));
        paintFloors(pen, model, region);
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
        paintZones(pen, region, drawnEdges(region));
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

/** Smaller than this, px for a mm, a level shows its rooms and detectors by name, and its things only as they are drawn. */
const LEAST_SCALE_FOR_THINGS = 0.025;

/** Everything written: rooms first, then things, rules, dimensions; what finds no room is left out. */
export function NameLayer() {
  const plan = useAppStore(selectShownPlan);
  const level = useAppStore(selectLevel);
  const model = useAppStore(selectModel);
  const region = useAppStore(selectRegion);
  const selection = useAppStore((state) => state.selection);
  const bar = useAppStore(selectLevelBar);
  const size = useAppStore((state) => state.stageSize);
  return (
    <PaintLayer
      name="names"
      paint={(pen) => {
        const places = createPlaces();
        const inRoom = ({ room }: RoomRegion, at: XY) => ringsContain(room.floorRings, toPlan(pen.view, at));
        for (const { at } of level.detectors) places.keep(px(pen, at), 34, 34);
        keepThings(pen, level, places);
        paintRoomSigns(
          pen,
          region.rooms.map((room) => roomSign(room, plan, selection)),
          inRoom,
          places,
        );
        if (pen.view.scale >= LEAST_SCALE_FOR_THINGS)
          paintThingNames(pen, level, thingNames, (at) => roomAt(model, at), places);
        if (bar) paintLevelBar(pen, bar, levelExtent(level), size, places);
        paintZoneNames(pen, drawnEdges(region), (edge) => zoneName(edge, plan), places);
        paintDimensions(pen, drawnDimensions(model), ({ length }) => formatLength(length, plan.display.length), places);
        drawnNames.current = places;
      }}
    />
  );
}
