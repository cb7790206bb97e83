import { nearLimit } from '../../geometry/check/near-limit.ts';
import { roomAt } from '../../geometry/check/room.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import { handlesOf } from '../../geometry/edit/reshape.ts';
import {
  capital,
  describeCheck,
  describeCollision,
  describeReport,
  headWord,
  inOrder,
  toneOf,
} from '../../geometry/messages/index.ts';
import type { Detector, XY } from '../../geometry/plan/model.ts';
import type { Line } from '../../geometry/plane/types.ts';
import { pointedZones } from '../drawing/floor.ts';
import { thicknessFrom } from '../state/chain.ts';
import { useMenu } from '../state/menu.ts';
import {
  selectCarried,
  selectHoverChecks,
  selectLevel,
  selectModel,
  selectRegion,
  selectReports,
  selectShownPlan,
} from '../state/selectors.ts';
import { useShown } from '../state/shown.ts';
import { type AppState, useAppStore } from '../state/store.ts';
import { toScreen } from '../state/viewport.ts';
import { selectWhyNotWords } from '../state/why-not.ts';
import { measureWords } from './drawing.ts';
import { judgedGhost } from './ghost.ts';
import { figuresOn } from './lengths/figures.ts';
import { paintFigures } from './lengths/paint-figures.ts';
import { useLengths } from './lengths/store.ts';
import { selectNamed } from './named.ts';
import { paintShapes } from './paint/canvas.ts';
import { type DrawnDetector, paintDetector, paintMeasures } from './paint/detectors.ts';
import { writeLabel } from './paint/names/detector-labels.ts';
import { createPlaces } from './paint/names/places.ts';
import { sheetNames } from './paint/names/sheet-names.ts';
import { type PointerNote, paintNote } from './paint/note.ts';
import type { NoteGround } from './paint/note-place.ts';
import type { Pen } from './paint/pen.ts';
import { type DrawnChain, paintHandles, paintSketch } from './paint/sketch.ts';
import { paintShown } from './paint/spots.ts';
import { type Sketch, useSketch } from './sketch.ts';
import { picture } from './stage/picture.ts';
import { HANDLE_OFF_PX } from './tools/select-tool.ts';

/** Detectors with their measured lines, grips, and what is under the hand. The only layer that a drag of a detector repaints. */
export const TOP = picture({
  name: 'top',
  read: () => {
    const [state, sketch] = [useAppStore.getState(), useSketch.getState()];
    const isPull = state.draft !== null && state.live === null && state.hover === null && state.tool.kind === 'select';
    if (isPull) return seenWhilePulled(state, sketch);
    const { plan, draft, levelId, tool, selection, hover, live, chain, sitHeight, stageSize } = state;
    return [
      sketch,
      useShown.getState(),
      useMenu.getState(),
      useLengths.getState(),
      plan,
      draft,
      levelId,
      tool,
      selection,
      hover,
      live,
      chain,
      sitHeight,
      stageSize,
    ];
  },
  anchored: () => true,
  // The sheet may lie elsewhere than this picture: see `surface.ts`.
  paint: (pen) => paintTop(pen, { ...askedSpot(useAppStore.getState()), viewport: pen.view }, useSketch.getState()),
});

/** What is seen here of a plan that is pulled at: most moves of a wall change none of it, and this picture stays. */
function seenWhilePulled(state: AppState, sketch: Sketch): readonly unknown[] {
  const { levelId, selection, chain, stageSize } = state;
  const { pointer, cursor: _, ...drawn } = sketch;
  const { protocol, display } = selectShownPlan(state);
  const reports = selectReports(state);
  const detectors = selectLevel(state).detectors.flatMap((detector) => {
    const report = reports.find(({ id }) => id === detector.id);
    return [detector, selection.includes(detector.id) ? report : report && toneOf(report)];
  });
  return [
    'pulled',
    ...[levelId, selection, chain, stageSize, protocol, display, useShown.getState()],
    ...Object.values(drawn).map((value) => (Array.isArray(value) && value.length === 0 ? '' : value)),
    // A note with lengths goes along with the pointer.
    sketch.reading.length > 0 ? pointer : '',
    ...detectors,
  ];
}

/** While the acts for a spot of the floor are listed, what keeps a detector from it stays lit. */
function askedSpot(state: AppState): AppState {
  const { ask } = useMenu.getState();
  const onThing = ask?.ids.some((id) => selectLevel(state).rooms.every((room) => room.id !== id));
  return ask?.at && !onThing ? { ...state, hover: { at: ask.at, id: null } } : state;
}

function paintTop(pen: Pen, state: AppState, sketch: Sketch): void {
  const level = selectLevel(state);
  paintHovered(pen, state);
  const [handled] = state.selection;
  const grips = state.tool.kind === 'select' || state.tool.kind === 'grip';
  if (handled && state.selection.length === 1 && !state.draft && grips) {
    paintHandles(pen, handlesOf(level, handled, HANDLE_OFF_PX / pen.view.scale));
  }
  paintSketch(pen, sketch, chainOf(state, sketch), level, state.tool.kind === 'ask');
  const ground = paintAllDetectors(pen, state, sketch);
  paintFigures(pen, state);
  const note = noteFor(state, sketch);
  if (note) paintNote(pen, note, state.stageSize, ground);
}

/** Corners that are kept show also while no pointer is on the sheet: after a reload, under a finger that has left. */
function chainOf(state: AppState, { nextCorner }: Sketch): DrawnChain | null {
  const points = state.chain.corners;
  const start = points[0] ?? nextCorner;
  return start && { points, next: nextCorner, thickness: thicknessFrom(selectModel(state), start) };
}

/** The zones that take the spot under the pointer away. */
function paintHovered(pen: Pen, state: AppState): void {
  const [worst] = selectHoverChecks(state);
  if (!worst || !overSomeFloor(state)) return;
  const region = selectRegion(state);
  const zones = region.zones.filter(({ rule, subject }) => rule === worst.rule && subject === worst.subject);
  paintShapes(pen, pointedZones(region, zones));
}

/** Answers what stands about them, for a note to keep off. */
function paintAllDetectors(pen: Pen, state: AppState, sketch: Sketch): NoteGround {
  const { glide } = sketch;
  const plan = selectShownPlan(state);
  const carried = selectCarried(state);
  const reports = selectReports(state);
  const names = sheetNames(pen, selectNamed(state));
  const places = createPlaces(state.stageSize, { places: names.places, origin: [pen.view.x, pen.view.y] });
  const drawn = selectLevel(state).detectors.map((each): DrawnDetector => {
    const standing = glide?.id === each.id ? { ...each, at: glide.at } : each;
    const detector = carried?.id === each.id ? carried : standing;
    const report = reports.find(({ id }) => id === each.id) ?? null;
    return { detector, report, chosen: state.selection.includes(each.id) };
  });
  const ghost = judgedGhost(state, sketch);
  if (ghost) drawn.push({ ...ghost, chosen: true });
  for (const { detector } of drawn) places.keep(toScreen(pen.view, detector.at), 30, 30);
  for (const { middle, width } of figuresOn(pen, state).own) {
    places.keep([middle[0] + pen.view.x, middle[1] + pen.view.y], width + 12, 24);
  }
  paintShown(pen, selectLevel(state).id, (check) => measureWords(check, plan), places);
  for (const { report, chosen } of drawn) {
    if (report && chosen && report.id !== glide?.id)
      paintMeasures(pen, nearLimit(report), (check) => measureWords(check, plan), places);
  }
  for (const each of drawn) paintDetector(pen, each);
  // In words too, so that no one has to know the colours; what is carried has its verdict on the note.
  for (const { detector, report } of drawn) {
    const place = detector === carried ? undefined : names.labels.get(detector.id);
    if (place && report) writeLabel(pen, detector, headWord(report), place);
  }
  if (sketch.cross) {
    // The cross says below itself how it is moved.
    const [x, y] = toScreen(pen.view, sketch.cross);
    places.keep([x, y + 42], 190, 24);
  }
  return { places, lines: measuredLines(pen, state, sketch, drawn) };
}

/** The lines that are measured on the sheet now, screen px. */
function measuredLines(pen: Pen, state: AppState, sketch: Sketch, drawn: readonly DrawnDetector[]): readonly Line[] {
  const screen = ([a, b]: Line): Line => [toScreen(pen.view, a), toScreen(pen.view, b)];
  const chosen = drawn.flatMap(({ report, chosen }) => (report && chosen ? nearLimit(report) : []));
  return [
    ...chosen.flatMap(({ witness }) => (witness ? [screen([witness.rim, witness.subject])] : [])),
    ...figuresOn(pen, state).own.map(({ line }) => screen(line)),
    ...sketch.gaps.map(screen),
    ...(sketch.opening?.offsets ?? []).map(screen),
  ];
}

/** What stands beside the pointer: the verdict of what is carried, lengths of what is drawn, or why not here. */
function noteFor(state: AppState, sketch: Sketch): PointerNote | null {
  const screen = (at: XY) => toScreen(state.viewport, at);
  const level = selectLevel(state);
  const verdictNote = (detector: Detector, report: DetectorReport, touch: boolean): PointerNote => ({
    at: screen(detector.at),
    verdict: { tone: toneOf(report), word: capital(headWord(report)) },
    lines: sentences(`${reasonOf(report, state)} ${describeCollision(level, detector, report)}`),
    byTouch: touch,
  });
  const carried = selectCarried(state);
  if (carried && state.live) {
    const report = selectReports(state).find(({ id }) => id === carried.id);
    return report ? verdictNote(carried, report, state.live.byTouch) : null;
  }
  const ghost = judgedGhost(state, sketch);
  if (ghost) return verdictNote(ghost.detector, ghost.report, false);
  const pointer = sketch.cross ?? sketch.pointer;
  if (!pointer) return null;
  if (sketch.reading.length > 0)
    return {
      at: screen(pointer),
      verdict: null,
      lines: sketch.reading,
      byTouch: sketch.touch,
    };
  return whyNotNote(state, sketch);
}

/** Why no detector may sit under the pointer: the one rule, subject, distance and need, and the way to the nearest white. */
function whyNotNote(state: AppState, { touch }: Sketch): PointerNote | null {
  const { hover, tool } = state;
  const asked = tool.kind === 'ask';
  if (!hover || useMenu.getState().ask || !(asked || overSomeFloor(state))) return null;
  const { head, lines } = selectWhyNotWords(state, hover.at);
  const [worst] = selectHoverChecks(state);
  // White says for itself that nothing is in the way; who asks is told.
  if (!asked && !touch && !worst) return null;
  const at = toScreen(state.viewport, hover.at);
  return { at, verdict: null, lines: head ? [head, ...lines] : lines, byTouch: touch };
}

/** Whether the pointer is over floor, or over a thing that stands on it: not over a wall, an opening, a detector. */
function overSomeFloor(state: AppState): boolean {
  const { hover, tool } = state;
  if (!hover || !(tool.kind === 'select' || tool.kind === 'ask') || !roomAt(selectModel(state), hover.at)) return false;
  return !selectLevel(state).detectors.some(({ id }) => id === hover.id);
}

/** The tightest clearance in a sentence: the worst check where it is short of one, else what there is to spare. */
function reasonOf(report: DetectorReport, state: AppState): string {
  const plan = selectShownPlan(state);
  const level = selectLevel(state);
  const [worst] = inOrder(report.checks.filter(({ notRun }) => !notRun));
  if (worst && (report.verdict === 'blocked' || report.verdict === 'unknown')) return describeCheck(worst, plan, level);
  return describeReport(report, plan, level);
}

/** One sentence a line. */
function sentences(text: string): readonly string[] {
  return text.trim().split(/(?<=\.)\s+/);
}
