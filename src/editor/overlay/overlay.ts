import { nearLimit } from '../../../geometry/check/near-limit.ts';
import { roomAt } from '../../../geometry/check/room.ts';
import { headlineText } from '../../../geometry/messages/index.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { ringsPart } from '../../drawing/display-list.ts';
import { pointedZones } from '../../drawing/floor.ts';
import { measureWords } from '../../drawing/words.ts';
import { selectDragged, selectHoverChecks, selectLevel, selectModel, selectShownPlan } from '../../state/selectors.ts';
import { useShown } from '../../state/shown.ts';
import { shownRegion } from '../../state/shown-results.ts';
import { thicknessFrom } from '../../state/wall-chain.ts';
import { drawnFigures } from '../lengths/paint-figures.ts';
import { paintDrawn, paintOnPlan, paintShapes } from '../paint/canvas.ts';
import { detectorLabel, detectorShapes, drawnMeasures } from '../paint/detectors.ts';
import type { Pen } from '../paint/pen.ts';
import { type DrawnChain, drawnSketch, handleShapes } from '../paint/sketch.ts';
import { type Picture, picture } from '../stage/picture.ts';
import { shownHandles } from '../tools/pick-at.ts';
import { drawnMarks, paintNote } from './late-pictures.ts';
import { isOverFloor } from './over-floor.ts';
import { readOverlay } from './overlay-inputs.ts';
import { type OverlayScene, overlayScene } from './overlay-scene.ts';

/** A picture of the overlay. It is repainted when the sheet is at rest, because labels stay inside the stage. */
const overlayPicture = (name: string, paint: (pen: Pen, scene: OverlayScene) => void): Picture =>
  picture({ name, read: readOverlay, anchored: () => true, paint: (pen) => paint(pen, overlayScene(pen)) });

/** The zones of the worst check at the spot under the pointer. */
const POINTED_ZONES = overlayPicture('pointed-zones', (pen, { state, pointed }) => {
  const [worst] = selectHoverChecks(state, pointed);
  if (!worst || !isOverFloor(state, pointed)) return;
  const region = shownRegion(state);
  const zones = region.zones.filter(({ rule, subject }) => rule === worst.rule && subject === worst.subject);
  paintShapes(pen, pointedZones(region, zones));
});

const HANDLES = overlayPicture('handles', (pen, { state }) => {
  const { selection, previewPlan, tool } = state;
  const hasHandles = tool.kind === 'select' || tool.kind === 'grip';
  if (previewPlan || !hasHandles) return;
  const { scale } = pen.view;
  paintShapes(pen, handleShapes(shownHandles(selectLevel(state), selection, scale), 1 / scale));
});

/** The floor of the room whose use is being asked for. */
const ASKED_ROOM = overlayPicture('asked-room', (pen, { state }) => {
  const room = state.roomAsked && roomAt(selectModel(state), state.roomAsked);
  if (room) paintShapes(pen, [{ ink: { line: 3, color: 'accent' }, parts: [ringsPart(room.floorRings)] }]);
});

/** What is being drawn and is not in the plan yet: wall chain, room, opening, thing; guides, gaps, marquee and the keyboard's cross. */
const PREVIEW = overlayPicture('preview', (pen, scene) => {
  const { state, sketch } = scene;
  const shown = drawnSketch(
    { ...sketch, cross: sketch.cross ?? tappedSpot(scene) },
    chainOf(scene),
    selectLevel(state),
    // A line on a tracing image has no figure: the scale may not be known yet, and the figure would cover the one in the image.
    state.tool.kind === 'tracing' ? null : pen.unit,
    1 / pen.view.scale,
  );
  paintOnPlan(pen, shown);
});

/** What the panels ask to be shown: direct sun, corners, the route of the air, good places. */
const MARKS = overlayPicture('marks', (pen, { state, placer }) => {
  const plan = selectShownPlan(state);
  const { sun } = useShown.getState();
  if (sun) {
    const parts = [ringsPart(sun)];
    paintShapes(pen, [
      { ink: { fill: 'accent', opacity: 0.3 }, parts },
      { ink: { hatch: 'sunlit' }, parts },
    ]);
  }
  paintDrawn(pen, ...drawnMarks(pen, selectLevel(state).id, (check) => measureWords(check, plan), placer));
});

/** Lines from the selected detectors to the subjects near their limits. */
const MEASURED_LINES = overlayPicture('measured-lines', (pen, { state, sketch, placer, detectors }) => {
  const plan = selectShownPlan(state);
  for (const { report, chosen } of detectors) {
    if (report && chosen && report.id !== sketch.glide?.id)
      paintDrawn(pen, ...drawnMeasures(pen, nearLimit(report), (check) => measureWords(check, plan), placer));
  }
});

/** Detectors with their verdicts in words too, so that no color has to be known; a dragged one has its verdict in the note. */
const DETECTORS = overlayPicture('detectors', (pen, { state, names, detectors, discs }) => {
  const carried = selectDragged(state);
  paintDrawn(pen, { shapes: detectorShapes(pen, detectors, discs), texts: [] });
  for (const [index, { detector, report }] of detectors.entries()) {
    const disc = discs[index];
    const place = detector === carried ? undefined : names.tags.get(detector.id);
    if (place && report && disc) paintDrawn(pen, detectorLabel(pen, detector, headlineText(report), place, disc));
  }
});

/** The lengths that position the selected thing. */
const LENGTHS = overlayPicture('lengths', (pen, { state }) => paintDrawn(pen, ...drawnFigures(pen, state)));

/** The note at the pointer, and what Enter does at the keyboard's cross. */
const NOTE = overlayPicture('note', paintNote);

/** The spot for which a finger asks why no detector may be placed there: it is marked, since the finger covers it and is then lifted. */
const tappedSpot = ({ state: { tool, hover }, sketch }: OverlayScene): XY | null =>
  tool.kind === 'ask' && sketch.touch && hover ? hover.at : null;

/**
 * The chain with the corners set so far, which also shows while no pointer is on the sheet: after a reload, or when the finger is lifted.
 */
function chainOf({ state, sketch }: OverlayScene): DrawnChain | null {
  const points = state.chain.corners;
  const start = points[0] ?? sketch.nextCorner;
  return (
    start && {
      points,
      next: sketch.nextCorner,
      thickness: thicknessFrom(selectModel(state), start, state.wallSettings),
    }
  );
}

/** What follows the pointer, from the lowest up. */
export const OVERLAY: readonly Picture[] = [
  POINTED_ZONES,
  ASKED_ROOM,
  HANDLES,
  PREVIEW,
  MARKS,
  MEASURED_LINES,
  DETECTORS,
  LENGTHS,
  NOTE,
];
