import { levelExtent } from '../../../geometry/level/level-extent.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Mm, XY } from '../../../geometry/plan/model.ts';
import type { Extent } from '../../../geometry/plane/extent.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { hitsAt } from '../../../geometry/snap/pick.ts';
import { TOUCHING } from '../../../geometry/snap/room-faces.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { figureSlots } from '../../drawing/labels/measured.ts';
import type { Ground } from '../../drawing/labels/placer.ts';
import type { Slot } from '../../drawing/labels/slot.ts';
import type { Text } from '../../drawing/text.ts';
import type { AppState } from '../../state/app-state.ts';
import { selectLevel, selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { toScreen } from '../../state/viewport.ts';
import { minTargetPx } from '../../theme/target-size.ts';
import { THEMES } from '../../theme/tokens.ts';
import { drawnDimensions } from '../drawing.ts';
import { selectNamed } from '../named.ts';
import { overlayPlacer } from '../paint/names/overlay-placer.ts';
import { type SheetNames, sheetNames } from '../paint/names/sheet-names.ts';
import { LEAST_SHEET, paperAbout } from '../paint/paper.ts';
import { type Pen, px } from '../paint/pen.ts';
import { FINE } from '../paint/text.ts';
import type { ToolPoint } from '../tools/tool-controller.ts';
import { type LengthSubject, useLengths } from './store.ts';
import { axisOf, gapsOf, sameSubject } from './subject.ts';

/** A figure that can be pressed; px from the plan's origin, at `scale`. */
export interface Figure {
  readonly subject: LengthSubject;
  readonly middle: XY;
  readonly angle: number;
  readonly text: string;
  readonly width: number;
}
/** A figure of the selected thing with the line that it measures, plan mm. */
interface GapFigure extends Figure {
  readonly line: Line;
}
export interface Figures {
  readonly scale: number;
  /** Figures of the selected thing, which are drawn over the sheet. */
  readonly own: readonly GapFigure[];
  readonly all: readonly Figure[];
}

/** Height of a figure with its margin, px. */
const HEIGHT_PX = 24;
const GAP_STYLE = { ...FINE, bold: true } as const;

let last: { readonly pen: Pen; readonly inputs: readonly unknown[]; readonly figures: Figures } | null = null;

/** Returns all figures on the sheet that this pen draws; the same object as long as nothing that they depend on has changed. */
export function figuresOn(pen: Pen, state: AppState): Figures {
  const names = sheetNames(pen, selectNamed(state));
  const model = selectModel(state);
  const { selection, tool, previewPlan, draggedDetector } = state;
  const [id] = selection;
  // The lengths of an item that was just placed also show while the tool for the next one is active.
  const shows = tool.kind === 'select' || useLengths.getState().open !== null;
  const owner = id !== undefined && selection.length === 1 && shows && !previewPlan && !draggedDetector ? id : null;
  const inputs = [names, model, owner, minTargetPx()];
  if (last?.inputs.every((input, index) => input === inputs[index])) return last.figures;
  const origin: Pen = { ...pen, view: { scale: pen.view.scale, x: 0, y: 0 } };
  const own = owner === null ? [] : ownFigures(origin, model, owner, names);
  const faces = names.dimensions.map(({ dimension, texts: [figure] }): Figure => {
    const { text, at, turn } = figure as Text;
    const angle = (turn * Math.PI) / 180;
    return { subject: { of: 'face', dimension }, middle: px(origin, at), angle, text, width: pen.measure(text, FINE) };
  });
  const figures = { scale: pen.view.scale, own, all: [...own, ...faces] };
  last = { pen, inputs, figures };
  return figures;
}

/** The figures that were drawn last: a press refers to what the user sees. */
function figuresSeen(): Figures | null {
  return last?.figures ?? null;
}

/** The figures that the next frame will draw: a key refers to what is selected now, even if the sheet does not show it yet. */
function figuresNow(): Figures | null {
  if (!last) return null;
  const state = useAppStore.getState();
  const { viewport, plan, theme } = state;
  return figuresOn({ ...last.pen, view: viewport, unit: plan.display.length, theme: THEMES[theme] }, state);
}

/** Ground of the sheet that a figure may hide. It hides a thing only if there is no other place. */
const OVER: readonly Ground[] = ['outline', 'wall', 'line'];

/** Figures of the lengths that position the selected item, where the sheet has none. They are level, so that they are easy to read. */
function ownFigures(pen: Pen, model: LevelModel, id: string, names: SheetNames): readonly GapFigure[] {
  const placer = overlayPlacer(names.placer, pen.view, null);
  const target = minTargetPx();
  const paper = paperPx(pen, model);
  const lines = [...gapLengths(model, id), ...jambLengths(pen, model, id, names)];
  return lines.map(({ subject, line, mm }): GapFigure => {
    const text = formatMeasured(mm, pen.unit);
    const width = pen.measure(text, GAP_STYLE);
    const taped: Line = [px(pen, line[0]), px(pen, line[1])];
    const slots = [...figureSlots(taped, Math.max(width + 10, target), Math.max(HEIGHT_PX, target))];
    const onPaper = slots.filter((slot) => liesOn(paper, slot));
    const { x, y } = (placer.claim(onPaper.length > 0 ? onPaper : slots, OVER) ?? slots[0]) as Slot;
    return { subject, line, text, width, middle: [x, y], angle: 0 };
  });
}

/** The paper of the whole level, px: figures beyond it would be cut off in a view of the whole level. */
function paperPx(pen: Pen, { level }: LevelModel): Extent {
  const { minX, minY, maxX, maxY } = paperAbout(levelExtent(level) ?? LEAST_SHEET);
  const [[left, top], [right, bottom]] = [px(pen, [minX, minY]), px(pen, [maxX, maxY])];
  return { minX: left, minY: top, maxX: right, maxY: bottom };
}

function liesOn({ minX, minY, maxX, maxY }: Extent, { x, y, width, height }: Slot): boolean {
  return Math.abs(2 * x - minX - maxX) <= maxX - minX - width && Math.abs(2 * y - minY - maxY) <= maxY - minY - height;
}

interface OwnLength {
  readonly subject: LengthSubject;
  readonly line: Line;
  readonly mm: Mm;
}

function gapLengths(model: LevelModel, id: string): readonly OwnLength[] {
  const near = (gapsOf(model, id) ?? []).filter(({ gap }) => gap > TOUCHING);
  return near.map((each) => ({ subject: { of: 'gap', id, axis: axisOf(each) }, line: each.line, mm: each.gap }));
}

/** Distance from the face to the line of a length that positions the selected opening, px. */
const OFF_FACE_PX = 14;

function jambLengths(pen: Pen, model: LevelModel, id: string, { dimensions }: SheetNames): readonly OwnLength[] {
  if (!model.level.openings.some((opening) => opening.id === id)) return [];
  const written = new Set(dimensions.map(({ dimension }) => dimension));
  const off = OFF_FACE_PX / pen.view.scale;
  return drawnDimensions(model)
    .filter((each) => !written.has(each) && each.ends.some((end) => end.kind === 'jamb' && end.opening === id))
    .map((dimension) => {
      const inward = ([x, y]: XY): XY => [x - dimension.outward[0] * off, y - dimension.outward[1] * off];
      return {
        subject: { of: 'face', dimension },
        line: [inward(dimension.from), inward(dimension.to)],
        mm: dimension.length,
      };
    });
}

/** Returns the figure under a point; null for none. A press near a figure counts too, unless an item is under the point. */
export function figureAt(point: ToolPoint): Figure | null {
  const seen = figuresSeen();
  const state = useAppStore.getState();
  if (!seen || state.previewPlan || state.draggedDetector) return null;
  const least = point.touch ? 44 : minTargetPx();
  let best: Figure | null = null;
  let nearest = Number.POSITIVE_INFINITY;
  for (const figure of seen.all) {
    const [dx, dy] = offsetOf(figure, seen.scale, point.screen);
    const [ax, ay] = [Math.abs(dx), Math.abs(dy)];
    if (ax > Math.max(figure.width + 8, least) / 2 || ay > Math.max(HEIGHT_PX, least) / 2) continue;
    const exact = ax <= figure.width / 2 + 4 && ay <= HEIGHT_PX / 2;
    if (!exact && hitsAt(selectLevel(state), point.plan, 0).length > 0) continue;
    const far = Math.hypot(dx, dy);
    if (far < nearest) {
      nearest = far;
      best = figure;
    }
  }
  return best;
}

/** Offset from the middle of a figure to a point of the screen, along the figure and across it, px. */
function offsetOf({ middle, angle }: Figure, scale: number, [x, y]: XY): XY {
  const [mx, my] = toScreen(useAppStore.getState().viewport, [middle[0] / scale, middle[1] / scale]);
  const [dx, dy] = [x - mx, y - my];
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [dx * cos + dy * sin, -dx * sin + dy * cos];
}

/** Returns the place of the figure of a length on the stage, px; null if it has none. */
export function figurePlaceOf(subject: LengthSubject): XY | null {
  const seen = figuresSeen();
  const figure = seen?.all.find((each) => sameSubject(each.subject, subject));
  if (!seen || !figure) return null;
  const [x, y] = figure.middle;
  return toScreen(useAppStore.getState().viewport, [x / seen.scale, y / seen.scale]);
}

/**
 * Returns the label point of a room whose label on the sheet asks what the room is used for, if the given point is on that label; else
 * null.
 */
export function roomPromptAt({ plan: [x, y], touch }: ToolPoint): XY | null {
  if (!last) return null;
  const state = useAppStore.getState();
  const least = (touch ? 44 : minTargetPx()) / state.viewport.scale;
  const isOn = (slot: Slot) =>
    Math.abs(x - slot.x) <= Math.max(slot.width, least) / 2 && Math.abs(y - slot.y) <= Math.max(slot.height, least) / 2;
  const label = sheetNames(last.pen, selectNamed(state)).labels.find(
    (each) => 'region' in each && !('zone' in each) && each.region.room.label === null && each.slots.some(isOn),
  );
  return label && 'region' in label ? label.region.room.labelPoint : null;
}

/** Highlights the figure under the pointer. Returns whether there is one. */
export function lightFigure(point: ToolPoint): boolean {
  const figure = figureAt(point);
  const { highlighted } = useLengths.getState();
  const same = figure === null ? highlighted === null : sameSubject(figure.subject, highlighted);
  if (!same) useLengths.setState({ highlighted: figure?.subject ?? null });
  return figure !== null;
}

/** Returns the length of the figure after (1) or before (-1) the open one, those of the selection first; null if there are no figures. */
export function nextFigure(step: 1 | -1): LengthSubject | null {
  const seen = figuresNow()?.all ?? [];
  const { selection } = useAppStore.getState();
  const all = [
    ...seen.filter(({ subject }) => isAbout(subject, selection)),
    ...seen.filter(({ subject }) => !isAbout(subject, selection)),
  ];
  const { open, left } = useLengths.getState();
  // If something else was selected since, starts at the figures of the selection.
  const goesOn = left !== null && (selection.length === 0 || isAbout(left, selection)) ? left : null;
  const now = all.findIndex(({ subject }) => sameSubject(subject, open?.subject ?? goesOn));
  const begin = step > 0 ? 0 : all.length - 1;
  const at = now < 0 ? begin : (now + step + all.length) % all.length;
  return all[at]?.subject ?? null;
}

function isAbout(subject: LengthSubject, selection: readonly string[]): boolean {
  if (subject.of !== 'face') return selection.includes(subject.id);
  return subject.dimension.ends.some((end) => end.kind === 'jamb' && selection.includes(end.opening));
}
