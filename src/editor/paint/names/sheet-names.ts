import { type RunningDimension, wholeDimensions } from '../../../../geometry/dimension/running-dimensions.ts';
import { levelExtent } from '../../../../geometry/level/level-extent.ts';
import type { LevelModel } from '../../../../geometry/level/types.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Extent } from '../../../../geometry/plane/body.ts';
import type { LevelRegion } from '../../../../geometry/region/types.ts';
import { formatMeasured } from '../../../../geometry/units/index.ts';
import type { SpotMark } from '../../../state/shown.ts';
import type { SizePx } from '../../../state/viewport.ts';
import { leastTargetPx } from '../../../theme/target-size.ts';
import { drawnDimensions, drawnEdges, namesOfThing, roomSign, zoneName } from '../../drawing.ts';
import { type Pen, px, within } from '../pen.ts';
import { type LabelPlace, placeLabels } from './detector-labels.ts';
import { type DimensionFigure, type Ground, placeDimensions } from './dimensions.ts';
import { keepLevelBar, paintLevelBar } from './level-bar.ts';
import { drawMarks, type Mark } from './mark.ts';
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
  /** Whether a hand pulls at the plan: names then stay where they are, and are laid out anew when it lets go. */
  readonly pulled: boolean;
}

/** Everything that is written on the sheet, laid out for one scale. Places are px from the plan's origin: a pan moves them all. */
export interface SheetNames {
  readonly marks: readonly Mark[];
  /** Places that are taken, for what stands on a layer above. */
  readonly places: Places;
  readonly labels: ReadonlyMap<string, LabelPlace>;
  /** Lengths that can be pressed. */
  readonly figures: readonly DimensionFigure[];
}

/** A mark and the tag above and beside it, px. */
const MARK_PX = { side: 38, off: 8 } as const;
/** Smaller than this, px for a mm, a level shows its rooms and detectors by name, and its things only as they are drawn. */
const LEAST_SCALE_FOR_THINGS = 0.025;

/** Detectors first, then rooms, things, whole lengths, rules, strings of openings; what finds no room is left out. */
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
  const marks: Mark[] = [...roomSigns(pen, signs, places, (now, room) => roomSign(room, now.plan, now.selection))];
  if (pen.view.scale >= LEAST_SCALE_FOR_THINGS) marks.push(...thingNames(pen, model, namesOfThing, places));
  if (bar && extent) keepLevelBar(pen, bar, extent, places);
  const dimensions = drawnDimensions(model);
  const ground = groundFor(places);
  const words = ({ length }: { readonly length: number }) => formatMeasured(length, plan.display.length);
  const placed = (row: RunningDimension['row']) =>
    placeDimensions(
      pen,
      dimensions.filter((each) => each.row === row),
      words,
      ground,
      model,
    );
  const wholes = placed('whole');
  marks.push(...wholes.marks, ...zoneNames(pen, drawnEdges(region), floors, (zone) => zoneName(zone, plan), places));
  const strings = placed('string');
  marks.push(...strings.marks);
  return { marks, places, labels, figures: [...wholes.figures, ...strings.figures] };
}

function groundFor(places: Places): Ground {
  return { places, targets: createPlaces(), targetPx: leastTargetPx() };
}

let atRest: { readonly inputs: readonly unknown[]; readonly named: Named; readonly names: SheetNames } | null = null;
let pulled: { readonly rest: SheetNames; readonly inputs: readonly unknown[]; readonly names: SheetNames } | null =
  null;

/** The names laid out for the pen's scale and theme; the same ones again while nothing that they hang on has changed. */
export function sheetNames(pen: Pen, named: Named): SheetNames {
  const { plan, model, region, selection, bar, marked } = named;
  const looks = [plan.display.length, plan.protocol, bar, marked, pen.view.scale, pen.theme, leastTargetPx()] as const;
  const inputs = [...looks, model, region, selection];
  const stays = atRest !== null && named.pulled && looks.every((look, index) => look === atRest?.inputs[index]);
  if (!atRest || !(stays || sameList(inputs, atRest.inputs))) {
    atRest = { inputs, named, names: layOut(atOrigin(pen), named) };
  }
  const rest = atRest;
  if (!stays || sameList(inputs, rest.inputs)) return rest.names;
  if (pulled?.rest !== rest.names || !sameList(inputs, pulled.inputs)) {
    pulled = { rest: rest.names, inputs, names: followed(atOrigin(pen), rest.names, rest.named, named) };
  }
  return pulled.names;
}

/** The names of the sheet at rest while a hand pulls at the plan: none says what is not so. */
function followed(pen: Pen, rest: SheetNames, before: Named, now: Named): SheetNames {
  const kept = rest.marks.map((mark) => mark.followed(pen, now)).filter((mark) => mark !== null);
  const stand = new Set(before.model.rooms);
  const changed = now.model.rooms.filter((room) => !stand.has(room));
  // Strings of openings come back when the hand lets go: they are many, and nobody reads them while the wall moves.
  const fresh = wholeDimensions({ ...now.model, rooms: changed });
  const words = ({ length }: { readonly length: number }) => formatMeasured(length, now.plan.display.length);
  return {
    ...rest,
    marks: [...kept, ...placeDimensions(pen, fresh, words, groundFor(createPlaces()), now.model).marks],
  };
}

function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((value, index) => value === b[index]);
}

export function paintSheetNames(pen: Pen, named: Named, stage: SizePx): void {
  const { marks } = sheetNames(pen, named);
  written = marks;
  within(pen, () => {
    pen.ctx.translate(pen.view.x, pen.view.y);
    drawMarks(atOrigin(pen), marks, [pen.view.x, pen.view.y]);
  });
  const extent = named.bar ? levelExtent(named.model.level) : null;
  if (extent) paintLevelBar(pen, named.bar, extent, stage);
}

/** What is written on the sheet that is seen. */
let written: readonly Mark[] = [];

/** Where the names that are seen differ from those that should be, mm. */
export function spoiltNames(pen: Pen, named: Named): readonly Extent[] {
  const { marks } = sheetNames(pen, named);
  if (marks === written) return [];
  const [old, young] = [new Set(written), new Set(marks)];
  const differing = [...written.filter((mark) => !young.has(mark)), ...marks.filter((mark) => !old.has(mark))];
  const { scale } = pen.view;
  return differing.map(({ box: { left, top, right, bottom } }) => ({
    minX: left / scale,
    minY: top / scale,
    maxX: right / scale,
    maxY: bottom / scale,
  }));
}

function atOrigin(pen: Pen): Pen {
  return { ...pen, view: { scale: pen.view.scale, x: 0, y: 0 } };
}
