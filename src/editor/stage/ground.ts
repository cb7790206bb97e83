import { levelExtent, unionExtent } from '../../../geometry/level/level-extent.ts';
import { tracingExtent } from '../../../geometry/level/tracing-extent.ts';
import type { Level } from '../../../geometry/plan/model.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { floorShapes, regionEdge, zoneShapes } from '../../drawing/floor.ts';
import { thingExtent, thingShapes } from '../../drawing/things.ts';
import { belowShapes, openingShapes, wallShapes } from '../../drawing/walls.ts';
import { selectBelow, selectLevel, selectLevelAtRest, selectModel } from '../../state/selectors.ts';
import { shownRegion } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { drawnEdges, isOutlined } from '../drawing.ts';
import { openingExtent } from '../extents.ts';
import { selectNamed } from '../named.ts';
import { paintShapes } from '../paint/canvas.ts';
import { dirtyNames, paintSheetNames } from '../paint/names/sheet-names.ts';
import { paintSheet, paintTracing } from '../paint/paper.ts';
import { isSeen } from '../paint/pen.ts';
import { dirtyBySelection, dirtyInRegion, dirtyInWalls } from './dirty-extents.ts';
import { type Picture, picture } from './picture.ts';
import { tracingImageOf } from './tracing-images.ts';

/** The extents that the paper surrounds: that of the house, and until a room is closed that of the tracing image too. */
const extentsOf = memoize((level: Level) => {
  const [house, picture] = [levelExtent(level), level.tracing?.shown ? tracingExtent(level.tracing) : null];
  return { house, begun: house && picture ? unionExtent(house, picture) : (house ?? picture) };
});

/** Desk, sheet, floors; white where a detector may be placed. */
const SHEET = picture({
  name: 'sheet',
  read: () => {
    const state = useAppStore.getState();
    // The paper grows when a drag ends: during the drag of a wall all of it would have to be repainted at every step.
    const { house, begun } = extentsOf(selectLevelAtRest(state));
    const region = shownRegion(state);
    const isClosed = region.rooms.length > 0;
    return [isClosed ? house : begun, region, isClosed];
  },
  paint: (pen, [extent, region, begun]) => {
    paintSheet(pen, extent, begun);
    paintShapes(pen, floorShapes(region));
  },
  dirty: ([paper, before, began], [extent, now, begun]) =>
    paper === extent && began === begun ? dirtyInRegion(before, now) : 'everywhere',
});

/** The tracing image, over the paper and under everything that is drawn. */
const TRACING = picture({
  name: 'tracing',
  read: () => {
    const { tracing } = selectLevel(useAppStore.getState());
    return [tracing, tracing?.shown ? tracingImageOf(tracing.image) : null];
  },
  paint: (pen, [tracing, bitmap]) => {
    if (tracing && bitmap) paintTracing(pen, tracing, bitmap);
  },
});

/** The level below, faint under everything that is drawn on this one. */
const BELOW = picture({
  name: 'below',
  read: () => [selectBelow(useAppStore.getState())],
  paint: (pen, [below]) => {
    if (below) paintShapes(pen, belowShapes(below));
  },
});

/** The floor that rules exclude, hatched, and the edge of the allowed floor. */
const ZONES = picture({
  name: 'zones',
  // Without hatches every floor would be white, as if it were allowed.
  isEssential: true,
  read: () => {
    const region = shownRegion(useAppStore.getState());
    return [region, drawnEdges(region)];
  },
  paint: (pen, [region, edges]) => paintShapes(pen, [...zoneShapes(region, region.zones, edges), regionEdge(region)]),
  // If the region is the same, its outlines are what is new.
  dirty: ([before], [now]) => (before === now ? 'everywhere' : dirtyInRegion(before, now)),
});

/** Things, then the walls and openings over them. */
const WALLS = picture({
  name: 'walls',
  read: () => {
    const state = useAppStore.getState();
    return [selectModel(state), state.selection];
  },
  paint: (pen, [model, selection]) => {
    const chosen = new Set(selection);
    paintShapes(pen, [
      ...wallShapes(model, chosen),
      ...openingShapes(model, chosen, (opening) => isSeen(pen, openingExtent(opening))),
      ...thingShapes(model.level, chosen, (thing) => isSeen(pen, thingExtent(thing))),
    ]);
  },
  dirty: ([before, were], [now, are]) => [...dirtyInWalls(before, now), ...dirtyBySelection(now, were, are)],
});

/** Labels of rooms, things, rules and dimensions, and the text under the drawing; a label that finds no free place is left out. */
const NAMES = picture({
  name: 'names',
  read: () => {
    const state = useAppStore.getState();
    const named = selectNamed(state);
    return [named, state.stageSize, isOutlined(named.region)];
  },
  paint: (pen, [named, size]) => paintSheetNames(pen, named, size),
  dirty: ([before, size, hasEdges], [now, resized, haveCome], pen) => {
    if (haveCome && !hasEdges) return 'everywhere';
    // The place of the text under the drawing depends on the edges of the stage.
    const underDrawing = before.bar !== '' || now.bar !== '';
    return underDrawing || size !== resized ? 'everywhere' : dirtyNames(pen, now);
  },
  anchored: ([{ bar }]) => bar !== '',
});

/** The plan, from the desk up. A new picture takes its place in this list. */
export const GROUND: readonly Picture[] = [SHEET, TRACING, BELOW, ZONES, WALLS, NAMES];
