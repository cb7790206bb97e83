import type { LevelModel } from '../../../../geometry/level/types.ts';
import { levelExtent } from '../../../../geometry/level-extent.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { LevelRegion } from '../../../../geometry/region/types.ts';
import { formatLength } from '../../../../geometry/units.ts';
import type { SpotMark } from '../../../state/shown.ts';
import type { SizePx } from '../../../state/viewport.ts';
import { drawnDimensions, drawnEdges, namesOfThing, roomSign, zoneName } from '../../drawing.ts';
import type { Pen } from '../pen.ts';
import { px, within } from '../pen.ts';
import { type LabelPlace, placeLabels } from './detector-labels.ts';
import { dimensionMarks } from './dimensions.ts';
import { keepLevelBar, paintLevelBar } from './level-bar.ts';
import type { Mark } from './mark.ts';
import { createPlaces, type Places } from './places.ts';
import { roomSigns } from './room-signs.ts';
import { keepThings, thingNames } from './thing-names.ts';
import { zoneNames } from './zone-names.ts';

/** What the names of a sheet hang on. The same objects give the same names. */
export interface Named {
  readonly plan: Plan;
  readonly model: LevelModel;
  readonly region: LevelRegion;
  readonly selection: readonly string[];
  /** Why the level is not the one to test; empty when it is. */
  readonly bar: string;
  /** Places that the panels mark: names keep off them. */
  readonly marked: readonly SpotMark[];
}

/** Everything that is written on the sheet, laid out for one scale. Places are px from the plan's origin: a pan moves them all. */
export interface SheetNames {
  readonly marks: readonly Mark[];
  /** Places that are taken, for what stands on a layer above. */
  readonly places: Places;
  readonly labels: ReadonlyMap<string, LabelPlace>;
}

/** A mark and the tag above and beside it, px. */
const MARK_PX = { side: 38, off: 8 } as const;
/** Smaller than this, px for a mm, a level shows its rooms and detectors by name, and its things only as they are drawn. */
const LEAST_SCALE_FOR_THINGS = 0.025;

/** Detectors first, then rooms, things, rules, dimensions; what finds no room is left out. */
function layOut(pen: Pen, { plan, model, region, selection, bar, marked }: Named): SheetNames {
  const places = createPlaces();
  for (const at of marked.flatMap(({ axes }) => axes)) {
    const [x, y] = px(pen, at);
    places.keep([x + MARK_PX.off, y - MARK_PX.off], MARK_PX.side, MARK_PX.side);
  }
  const extent = levelExtent(model.level);
  const labels = placeLabels(pen, model, places);
  keepThings(pen, model, places);
  const signs = region.rooms.map((room) => roomSign(room, plan, selection));
  const floors = region.rooms.filter(({ barred }) => !barred).map(({ room }) => room.floorRings);
  const marks: Mark[] = [...roomSigns(pen, signs, places)];
  if (pen.view.scale >= LEAST_SCALE_FOR_THINGS) marks.push(...thingNames(pen, model, namesOfThing, places));
  if (bar && extent) keepLevelBar(pen, bar, extent, places);
  marks.push(
    ...zoneNames(pen, drawnEdges(region), floors, (zone) => zoneName(zone, plan), places),
    ...dimensionMarks(pen, drawnDimensions(model), ({ length }) => formatLength(length, plan.display.length), places),
  );
  return { marks, places, labels };
}

let last: { readonly inputs: readonly unknown[]; readonly names: SheetNames } | null = null;

/** The names laid out for the pen's scale and theme; the same ones again while nothing that they hang on has changed. */
export function sheetNames(pen: Pen, named: Named): SheetNames {
  const { plan, model, region, selection, bar, marked } = named;
  const inputs = [
    plan.display.length,
    plan.protocol,
    model,
    region,
    selection,
    bar,
    marked,
    pen.view.scale,
    pen.theme,
  ] as const;
  if (!last?.inputs.every((input, index) => input === inputs[index])) {
    last = { inputs, names: layOut(atOrigin(pen), named) };
  }
  return last.names;
}

export function paintSheetNames(pen: Pen, named: Named, stage: SizePx): void {
  const { marks } = sheetNames(pen, named);
  const moved = atOrigin(pen);
  within(pen, () => {
    pen.ctx.translate(pen.view.x, pen.view.y);
    for (const mark of marks) mark(moved);
  });
  const extent = named.bar ? levelExtent(named.model.level) : null;
  if (extent) paintLevelBar(pen, named.bar, extent, stage);
}

function atOrigin(pen: Pen): Pen {
  return { ...pen, view: { scale: pen.view.scale, x: 0, y: 0 } };
}
