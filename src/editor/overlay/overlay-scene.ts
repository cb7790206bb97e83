import { nearLimit } from '../../../geometry/check/near-limit.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { type Disc, discsApart } from '../../drawing/discs-apart.ts';
import { slotAt } from '../../drawing/labels/slot.ts';
import type { AppState, Hover } from '../../state/app-state.ts';
import { selectDragged, selectLevel } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { toScreen } from '../../state/viewport.ts';
import { figuresOn } from '../lengths/figures.ts';
import { selectNamed } from '../named.ts';
import { type DrawnDetector, SYMBOL_PX } from '../paint/detectors.ts';
import { type OverlayPlacer, overlayPlacer } from '../paint/names/overlay-placer.ts';
import { type SheetNames, sheetNames } from '../paint/names/sheet-names.ts';
import { lengthPx, type Pen, px } from '../paint/pen.ts';
import { detectorPreview } from './detector-preview.ts';
import { type Sketch, useSketch } from './sketch.ts';

/** Space of a detector that labels do not cover, px. */
const DETECTOR_PX = { width: 30, height: 30 } as const;

/** What the pictures of the overlay share while they are painted once. */
export interface OverlayScene {
  readonly state: AppState;
  /** The spot whose zones are shown: under the pointer, or the spot of the floor that the open menu is for. */
  readonly pointed: Hover | null;
  readonly sketch: Sketch;
  readonly names: SheetNames;
  /** The places that are taken: each picture that writes something claims its place here, in the order of painting. */
  readonly placer: OverlayPlacer;
  readonly detectors: readonly DrawnDetector[];
  /** Their symbols on the screen, in the same order. */
  readonly discs: readonly Disc[];
}

/** Returns the scene of one pass: a pen is made for each. */
export const overlayScene = memoize((pen: Pen): OverlayScene => {
  // The viewport of this pass is that of the pen; that of the store may have changed meanwhile.
  const state = useAppStore.getState();
  const sketch = useSketch.getState();
  const names = sheetNames(pen, selectNamed(state));
  const placer = overlayPlacer(names.placer, pen.view, state.stageSize);
  const detectors = detectorsOf(state, sketch);
  const discs = discsApart(
    detectors.map(({ detector }) => ({ at: px(pen, detector.at), radius: lengthPx(pen, detector.radius) })),
    SYMBOL_PX,
  );
  for (const { at } of discs) placer.take(slotAt(DETECTOR_PX, at));
  // Tags of detectors are painted over the other pictures, so their places are taken first.
  for (const { slot } of names.tags.values()) {
    placer.take(
      slotAt({ width: lengthPx(pen, slot.width), height: lengthPx(pen, slot.height) }, px(pen, [slot.x, slot.y])),
    );
  }
  for (const { middle, width } of figuresOn(pen, state).own) {
    placer.take(slotAt({ width: width + 12, height: 24 }, [middle[0] + pen.view.x, middle[1] + pen.view.y]));
  }
  return { state, pointed: pointedAt(state), sketch, names, placer, detectors, discs };
});

/** While the menu for a spot of the floor is open, the zones of that spot stay highlighted. */
function pointedAt(state: AppState): Hover | null {
  const { menu: ask } = state;
  const onThing = ask?.ids.some((id) => selectLevel(state).rooms.every((room) => room.id !== id));
  return ask?.at && !onThing ? { at: ask.at, id: null } : state.hover;
}

/** All detectors of the level where they are shown now: at rest, dragged, moving to a new place, or not placed yet. */
function detectorsOf(state: AppState, sketch: Sketch): readonly DrawnDetector[] {
  const { glide } = sketch;
  const carried = selectDragged(state);
  const reports = shownReports(state);
  const standing = selectLevel(state).detectors.map((each): DrawnDetector => {
    const seen = glide?.id === each.id ? { ...each, at: glide.at } : each;
    return {
      detector: carried?.id === each.id ? carried : seen,
      report: reports.find(({ id }) => id === each.id) ?? null,
      chosen: state.selection.includes(each.id),
    };
  });
  const preview = detectorPreview(state, sketch);
  return preview ? [...standing, { ...preview, chosen: true }] : standing;
}

/** Returns the measured lines that are shown on the sheet now, screen px; a note does not cover them. */
export function measuredLines(pen: Pen, { state, sketch, detectors }: OverlayScene): readonly Line[] {
  const screen = ([a, b]: Line): Line => [toScreen(pen.view, a), toScreen(pen.view, b)];
  const chosen = detectors.flatMap(({ report, chosen }) => (report && chosen ? nearLimit(report) : []));
  return [
    ...chosen.flatMap(({ witness }) => (witness ? [screen([witness.rim, witness.subject])] : [])),
    ...figuresOn(pen, state).own.map(({ line }) => screen(line)),
    ...sketch.gaps.map(screen),
    ...(sketch.opening?.offsets ?? []).map(screen),
  ];
}
