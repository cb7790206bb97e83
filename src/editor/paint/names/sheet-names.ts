import { wholeDimensions } from '../../../../geometry/dimension/running-dimensions.ts';
import { levelExtent } from '../../../../geometry/level/level-extent.ts';
import { type Extent, ringExtent } from '../../../../geometry/plane/extent.ts';
import { memoize, memoizeLatest } from '../../../../geometry/plane/memoize.ts';
import { dimensionWriter } from '../../../drawing/labels/dimensions.ts';
import {
  blockOf,
  blockTexts,
  type DimensionLabel,
  type Label,
  type LabelMedium,
} from '../../../drawing/labels/label.ts';
import { layOutLabels } from '../../../drawing/labels/layout.ts';
import { type Area, createPlacer, type Placer } from '../../../drawing/labels/placer.ts';
import { slotAt, slotCorners } from '../../../drawing/labels/slot.ts';
import type { TagPlace } from '../../../drawing/labels/tags.ts';
import type { SizePx } from '../../../state/viewport.ts';
import { dimensionStepPx, minTargetPx } from '../../../theme/target-size.ts';
import { DIMENSION_PX, TYPE_PX } from '../../../theme/tokens.ts';
import { drawnDimensions, drawnEdges, isOutlined } from '../../drawing.ts';
import { type Inputs, sameInputs } from '../../stage/picture.ts';
import { paintDrawn, paintOnPlan } from '../canvas.ts';
import { labelWidths, SYMBOL_PX } from '../detectors.ts';
import { isSeen, type Pen, px } from '../pen.ts';
import { READ } from '../text.ts';
import { followedLabel, type Named, type SheetLabel } from './followed.ts';
import { planSlot } from './overlay-placer.ts';

/** The labels of the sheet, laid out for one scale. Plan mm, so that a pan moves them all. */
export interface SheetNames {
  /** In the order of painting. */
  readonly labels: readonly SheetLabel[];
  /** The taken ground, for texts on the overlay. */
  readonly placer: Placer;
  readonly tags: ReadonlyMap<string, TagPlace>;
  /** Lengths that can be pressed. */
  readonly dimensions: readonly DimensionLabel[];
}

/** Size and offset of the ground of a mark and its tag, px. */
const MARK_PX = { side: 40, off: 9 } as const;
/** At a smaller scale than this, px per mm, rooms and detectors have names, and things have none. */
const LEAST_SCALE_FOR_THINGS = 0.025;
/** Distances of the text under the drawing: from the drawing, past its dimensions, and from the edge of the stage, px. */
const BAR_PX = { under: 66, edge: 6 } as const;

function screenMedium({ view: { scale }, measure }: Pen, area: Area | null): LabelMedium {
  const mm = (px: number) => px / scale;
  const target = minTargetPx();
  return {
    measure: (text, style) => mm(measure(text, { ...style, size: style.size * scale })),
    type: { fine: mm(TYPE_PX.fine), small: mm(TYPE_PX.small), tag: mm(TYPE_PX.read), name: mm(TYPE_PX.read) },
    area,
    isSmall: scale < LEAST_SCALE_FOR_THINGS,
    roomSizes: false,
    dimensions: {
      outside: mm(DIMENSION_PX.outside),
      inside: mm(DIMENSION_PX.inside),
      step: mm(dimensionStepPx()),
      target: mm(target),
    },
    symbol: mm(SYMBOL_PX.single + 2.5),
  };
}

function layOut(pen: Pen, { plan, model, region, bar, marked, stage }: Named): SheetNames {
  const extent = levelExtent(model.level);
  const all = drawnDimensions(model);
  const marks = marked
    .flatMap(({ axes }) => axes)
    .map((axis) => {
      const [x, y] = px(pen, axis);
      return slotAt({ width: MARK_PX.side, height: MARK_PX.side }, [x + MARK_PX.off, y - MARK_PX.off]);
    });
  const reserved = bar && extent ? [levelBar(pen, bar, extent).slot] : [];
  const labels = layOutLabels(
    {
      plan,
      model,
      region,
      edges: drawnEdges(region),
      dimensions: (['whole', 'string'] as const).map((row) => all.filter((each) => each.row === row)),
      lines: null,
      tagWidths: (detector) => labelWidths(pen, detector),
      reserved: reserved.map((slot) => planSlot(pen.view, slot)),
      marks: marks.map((slot) => planSlot(pen.view, slot)),
    },
    screenMedium(pen, stageArea(pen, stage)),
  );
  const { placer, tags, rooms, things, zones, dimensions } = labels;
  return { labels: [...zones, ...dimensions, ...things, ...rooms], placer, tags, dimensions };
}

/** The stage in mm of the plan. */
function stageArea({ view: { scale, x, y } }: Pen, stage: SizePx | null): Area | null {
  if (!stage) return null;
  return { x: -x / scale, y: -y / scale, width: stage.width / scale, height: stage.height / scale };
}

/** The text under the drawing: that this is not the level to test, and why. Screen px. */
function levelBar(pen: Pen, bar: string, { minX, maxX, maxY }: Extent) {
  const lines = [
    { text: 'Not the level to test', style: { ...READ, color: 'blocked', halo: 'card' } },
    { text: bar, style: { size: READ.size, color: 'ink', halo: 'card' } },
  ] as const;
  const block = blockOf(lines, pen.measure);
  const [x, bottom] = px(pen, [(minX + maxX) / 2, maxY]);
  return { block, slot: slotAt(block, [x, bottom + BAR_PX.under]) };
}

interface AtRest {
  /** What the labels depend on in addition to the plan. */
  readonly looks: Inputs;
  readonly named: Named;
  readonly names: SheetNames;
}
let atRest: AtRest | null = null;

/** Returns the labels for the pen's scale and theme; the same objects while no input has changed. */
export function sheetNames(pen: Pen, named: Named): SheetNames {
  const { plan, model, region, bar, marked } = named;
  const { scale, x, y } = pen.view;
  const looks: unknown[] = [plan.display.length, plan.protocol, bar, marked, scale, pen.theme, minTargetPx()];
  looks.push(isOutlined(region));
  // Labels that end at the edge of the stage depend on its place.
  if (named.stage) looks.push(named.stage, x, y);
  if (atRest && sameInputs(looks, atRest.looks)) {
    if (model === atRest.named.model && region === atRest.named.region) return atRest.names;
    if (named.dragged) return followedNames(pen, atRest, named);
  }
  atRest = { looks, named, names: layOut(pen, named) };
  return atRest.names;
}

/** Returns the labels during a drag that changes the plan, without those that are no longer true. */
const followedNames = memoizeLatest(
  (pen: Pen, { named, names }: AtRest, now: Named): SheetNames => {
    const following = names.labels.map((label) => followedLabel(label, named, now)).filter((label) => label !== null);
    const stand = new Set(named.model.rooms);
    const changed = now.model.rooms.filter((room) => !stand.has(room));
    // Strings of openings are left out during a drag: they are many, and they are not read while a wall moves.
    const medium = screenMedium(pen, null);
    const placer = createPlacer(null, 4 * medium.type.fine);
    const write = dimensionWriter(now.plan.display.length, { ...medium, placer });
    return { ...names, labels: [...following, ...write(wholeDimensions({ ...now.model, rooms: changed }))] };
  },
  (_, rest, { model, region }) => [rest, model, region],
);

export function paintSheetNames(pen: Pen, named: Named, stage: SizePx): void {
  painted = currentLabels(pen, named);
  for (const label of painted) if (isSeen(pen, labelExtent(label))) paintOnPlan(pen, label);
  const extent = named.bar ? levelExtent(named.model.level) : null;
  if (!extent) return;
  const { block, slot } = levelBar(pen, named.bar, extent);
  // Kept in view, however large the drawing is.
  const y = Math.min(slot.y, stage.height - block.height / 2 - BAR_PX.edge);
  paintDrawn(pen, { shapes: [], texts: blockTexts(block, { ...slot, y }) });
}

/** Returns the labels as they are painted. A selection changes a color only, so nothing is laid out again. */
function currentLabels(pen: Pen, named: Named): readonly SheetLabel[] {
  return accented(sheetNames(pen, named).labels, named.selection);
}

const accented = memoizeLatest((labels: readonly SheetLabel[], selection: readonly string[]) => {
  const isSelected = (label: SheetLabel) => 'region' in label && selection.includes(label.region.room.label?.id ?? '');
  return labels.some(isSelected) ? labels.map((label) => (isSelected(label) ? inAccent(label) : label)) : labels;
});

const inAccent = memoize((label: SheetLabel): SheetLabel => {
  const accent = ({ color, ...style }: SheetLabel['texts'][number]['style']) =>
    ({ ...style, color: color === 'ink' ? 'accent' : color }) as const;
  return { ...label, texts: label.texts.map((text) => ({ ...text, style: accent(text.style) })) };
});

/** The labels that were painted last. */
let painted: readonly SheetLabel[] = [];

/** Returns the dirty rectangles, mm: where the painted labels differ from those that should be. */
export function dirtyNames(pen: Pen, named: Named): readonly Extent[] {
  const labels = currentLabels(pen, named);
  if (labels === painted) return [];
  const [old, young] = [new Set(painted), new Set(labels)];
  return [...painted.filter((label) => !young.has(label)), ...labels.filter((label) => !old.has(label))].map(
    labelExtent,
  );
}

/** The bounding rectangle of a label, without halos and the width of lines. */
const labelExtent = memoize(({ slots, shapes }: Label): Extent => {
  const reach = ({ extent }: { readonly extent: Extent }) =>
    [
      [extent.minX, extent.minY],
      [extent.maxX, extent.maxY],
    ] as const;
  return ringExtent([...slots.flatMap(slotCorners), ...shapes.flatMap(({ parts }) => parts.flatMap(reach))]);
});
