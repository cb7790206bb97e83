import { type RunningDimension, wholeDimensions } from '../../../../geometry/dimension/running-dimensions.ts';
import { levelExtent } from '../../../../geometry/level/level-extent.ts';
import type { XY } from '../../../../geometry/plan/model.ts';
import type { Extent } from '../../../../geometry/plane/body.ts';
import { memoizeLatest } from '../../../../geometry/plane/memoize.ts';
import { formatMeasured } from '../../../../geometry/units/index.ts';
import { dimensionLabels } from '../../../drawing/labels/dimensions.ts';
import { type Labels, layOutLabels } from '../../../drawing/labels/layout.ts';
import type { LabelMedium } from '../../../drawing/labels/medium.ts';
import { createPlacer, type Placer, type Slot } from '../../../drawing/labels/placer.ts';
import type { TagPlace } from '../../../drawing/labels/tags.ts';
import type { SizePx } from '../../../state/viewport.ts';
import { minTargetPx } from '../../../theme/target-size.ts';
import { TYPE_PX } from '../../../theme/tokens.ts';
import { drawnDimensions, drawnEdges } from '../../drawing.ts';
import { paintDrawn } from '../canvas.ts';
import { LEAST_RADIUS_PX } from '../detectors.ts';
import { type Pen, px } from '../pen.ts';
import { labelWidths, placesFromDiscs } from './detector-labels.ts';
import { levelBar, levelBarSlot } from './level-bar.ts';
import { accentedMark, boxOf, followedMark, type Mark, type Named, paintMarks } from './mark.ts';

/** A length on the sheet that can be pressed; px from the plan's origin, at the scale that it was laid out for. */
interface DimensionFigure {
  readonly dimension: RunningDimension;
  readonly middle: XY;
  readonly angle: number;
  readonly text: string;
  /** Along its line. */
  readonly width: number;
}

/** The labels of the sheet at one scale. Places are px from the plan's origin: a pan moves them all. */
export interface SheetNames {
  readonly marks: readonly Mark[];
  /** The ground that is taken, for what stands on a layer above. */
  readonly placer: Placer;
  /** Of detectors, as measured from their discs. */
  readonly tags: ReadonlyMap<string, TagPlace>;
  readonly figures: readonly DimensionFigure[];
}

/** A mark and the tag above and beside it, px. */
const MARK_PX = { side: 38, off: 8 } as const;
/** Smaller than this, px for a mm, a level shows its rooms and detectors by name, and its things only as they are drawn. */
const LEAST_SCALE_FOR_THINGS = 0.025;
/** How far a line of dimensions stands off the wall's outer face, and inside a room off the face, px. */
const OFF_PX = { outside: 20, inside: 13 } as const;

function screenMedium(pen: Pen): LabelMedium {
  const target = minTargetPx();
  return {
    scale: pen.view.scale,
    measure: pen.measure,
    type: { fine: TYPE_PX.fine, small: TYPE_PX.small, tag: TYPE_PX.read, name: TYPE_PX.read },
    area: null,
    isSmall: pen.view.scale < LEAST_SCALE_FOR_THINGS,
    roomSizes: false,
    dimensions: { ...OFF_PX, step: target + 2, target },
    symbol: LEAST_RADIUS_PX + 2.5,
  };
}

function layOut(pen: Pen, { plan, model, region, bar, marked }: Named): SheetNames {
  const medium = screenMedium(pen);
  const extent = levelExtent(model.level);
  const axes = marked.flatMap((mark) => mark.axes);
  const dimensions = drawnDimensions(model);
  const labels = layOutLabels(
    {
      plan,
      model,
      region,
      edges: drawnEdges(region),
      dimensions: (['whole', 'string'] as const).map((row) => dimensions.filter((each) => each.row === row)),
      measured: [],
      tagWidths: (detector) => labelWidths(pen, detector),
      reserved: [...axes.map((at) => markSlot(pen, at)), ...(bar && extent ? [levelBarSlot(pen, bar, extent)] : [])],
    },
    medium,
  );
  return {
    marks: marksOf(labels),
    placer: labels.placer,
    tags: placesFromDiscs(pen, model, labels.tags),
    figures: labels.dimensions.map(({ dimension, middle, turn, width, texts: [text] }) => ({
      dimension,
      middle,
      width,
      angle: (turn * Math.PI) / 180,
      text: text?.text ?? '',
    })),
  };
}

function markSlot(pen: Pen, at: XY): Slot {
  const [x, y] = px(pen, at);
  return { x: x + MARK_PX.off, y: y - MARK_PX.off, width: MARK_PX.side, height: MARK_PX.side, turn: 0 };
}

function marksOf({ rooms, things, zones, dimensions }: Labels): readonly Mark[] {
  return [
    ...zones.map((label) => ({ label, box: boxOf(label), of: { zone: label.zone } })),
    ...dimensions.map((label) => ({ label, box: boxOf(label), of: { dimension: label.dimension } })),
    ...things.map((label) => ({ label, box: boxOf(label), of: { thing: label.thing } })),
    ...rooms.map((label) => ({ label, box: boxOf(label), of: { room: label.region } })),
  ];
}

let atRest: { readonly inputs: readonly unknown[]; readonly named: Named; readonly names: SheetNames } | null = null;
let inDrag: { readonly rest: SheetNames; readonly inputs: readonly unknown[]; readonly names: SheetNames } | null =
  null;

/** Returns the labels for the pen's scale and theme; the same objects while no input has changed. */
export function sheetNames(pen: Pen, named: Named): SheetNames {
  const { plan, model, region, bar, marked } = named;
  const looks = [plan.display.length, plan.protocol, bar, marked, pen.view.scale, pen.theme, minTargetPx()] as const;
  const inputs = [...looks, model, region];
  const stays = atRest !== null && named.dragged && looks.every((look, index) => look === atRest?.inputs[index]);
  if (!atRest || !(stays || sameList(inputs, atRest.inputs))) {
    atRest = { inputs, named, names: layOut(atOrigin(pen), named) };
  }
  const rest = atRest;
  if (!stays || sameList(inputs, rest.inputs)) return rest.names;
  if (inDrag?.rest !== rest.names || !sameList(inputs, inDrag.inputs)) {
    inDrag = { rest: rest.names, inputs, names: followed(atOrigin(pen), rest.names, rest.named, named) };
  }
  return inDrag.names;
}

/** Returns the labels during a drag that changes the plan: none states what no longer holds. */
function followed(pen: Pen, rest: SheetNames, before: Named, now: Named): SheetNames {
  const kept = rest.marks.map((mark) => followedMark(mark, pen, before, now)).filter((mark) => mark !== null);
  const stand = new Set(before.model.rooms);
  const changed = now.model.rooms.filter((room) => !stand.has(room));
  // Strings of openings are left out during a drag: they are many, and nobody reads them while the wall moves.
  const fresh = wholeDimensions({ ...now.model, rooms: changed });
  const words = ({ length }: RunningDimension) => formatMeasured(length, now.plan.display.length);
  const anywhere = createPlacer(null);
  const labels = dimensionLabels(fresh, words, screenMedium(pen), anywhere, createPlacer(null));
  return {
    ...rest,
    marks: [...kept, ...labels.map((label) => ({ label, box: boxOf(label), of: { dimension: label.dimension } }))],
  };
}

function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((value, index) => value === b[index]);
}

export function paintSheetNames(pen: Pen, named: Named, stage: SizePx): void {
  const marks = currentMarks(pen, named);
  painted = marks;
  pen.ctx.save();
  pen.ctx.translate(pen.view.x, pen.view.y);
  paintMarks(atOrigin(pen), marks, [pen.view.x, pen.view.y]);
  pen.ctx.restore();
  const extent = named.bar ? levelExtent(named.model.level) : null;
  if (extent) paintDrawn(pen, levelBar(pen, named.bar, extent, stage));
}

/** Returns the marks as they are painted: a selection changes a color, and lays nothing out again. */
function currentMarks(pen: Pen, named: Named): readonly Mark[] {
  return accented(sheetNames(pen, named).marks, named.selection);
}

const accented = memoizeLatest((marks: readonly Mark[], selection: readonly string[]) => {
  const isSelected = ({ of }: Mark) => 'room' in of && selection.includes(of.room.room.label?.id ?? '');
  return marks.some(isSelected) ? marks.map((mark) => (isSelected(mark) ? accentedMark(mark) : mark)) : marks;
});

/** The marks that were painted last. */
let painted: readonly Mark[] = [];

/** Returns the dirty rectangles, mm: where the painted labels differ from those that should be. */
export function dirtyNames(pen: Pen, named: Named): readonly Extent[] {
  const marks = currentMarks(pen, named);
  if (marks === painted) return [];
  const [old, young] = [new Set(painted), new Set(marks)];
  const differing = [...painted.filter((mark) => !young.has(mark)), ...marks.filter((mark) => !old.has(mark))];
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
