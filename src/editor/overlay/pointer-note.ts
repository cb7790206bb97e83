import type { DetectorReport } from '../../../geometry/check/types.ts';
import {
  capital,
  checksInOrder,
  describeCheck,
  describeReport,
  headlineText,
  toneOf,
} from '../../../geometry/messages/index.ts';
import type { Detector, XY } from '../../../geometry/plan/model.ts';
import type { AppState } from '../../state/app-state.ts';
import { selectDragged, selectHoverChecks, selectLevel, selectShownPlan } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { toScreen, type Viewport } from '../../state/viewport.ts';
import { selectWhyNotWords } from '../../state/why-not.ts';
import type { PointerNote } from '../paint/note.ts';
import { detectorPreview } from './detector-preview.ts';
import { isOverFloor } from './over-floor.ts';
import type { Sketch } from './sketch.ts';

/**
 * Returns the note beside the pointer: the verdict of a dragged or new detector, lengths of what is being drawn, or why no detector may be
 * placed there.
 */
export function pointerNote(state: AppState, sketch: Sketch, viewport: Viewport): PointerNote | null {
  const screen = (at: XY) => toScreen(viewport, at);
  const verdictNote = (detector: Detector, report: DetectorReport, touch: boolean): PointerNote => ({
    at: screen(detector.at),
    verdict: { tone: toneOf(report), word: capital(headlineText(report)) },
    lines: sentences(reasonOf(report, state)),
    byTouch: touch,
  });
  const carried = selectDragged(state);
  if (carried && state.draggedDetector) {
    const report = shownReports(state).find(({ id }) => id === carried.id);
    return report ? verdictNote(carried, report, state.draggedDetector.byTouch) : null;
  }
  const preview = detectorPreview(state, sketch);
  if (preview) return verdictNote(preview.detector, preview.report, false);
  const pointer = sketch.cross ?? sketch.pointer;
  // With the ask tool the note stays after the finger is lifted.
  if (!pointer && state.tool.kind !== 'ask') return null;
  if (pointer && sketch.reading.length > 0)
    return {
      at: screen(pointer),
      verdict: null,
      lines: sketch.reading,
      byTouch: sketch.touch,
    };
  return whyNotNote(state, sketch, viewport);
}

/**
 * Why no detector may be placed under the pointer: rule, subject, measured and required distance, and the direction to the nearest clear
 * spot.
 */
function whyNotNote(state: AppState, { touch }: Sketch, viewport: Viewport): PointerNote | null {
  const { hover, tool } = state;
  const asked = tool.kind === 'ask';
  if (!hover || state.menu || !(asked || isOverFloor(state, hover))) return null;
  const { head, lines } = selectWhyNotWords(state, hover.at);
  const [worst] = selectHoverChecks(state);
  // White floor shows that nothing is in the way; only the ask tool and a finger get that in words.
  if (!asked && !touch && !worst) return null;
  const at = toScreen(viewport, hover.at);
  return { at, verdict: null, lines: head ? [head, ...lines] : lines, byTouch: touch };
}

/** The tightest clearance in a sentence: the worst check if the detector is blocked or its verdict unknown, else what there is to spare. */
function reasonOf(report: DetectorReport, state: AppState): string {
  const plan = selectShownPlan(state);
  const level = selectLevel(state);
  const [worst] = checksInOrder(report.checks.filter(({ notRun }) => !notRun));
  if (worst && (report.verdict === 'blocked' || report.verdict === 'unknown')) return describeCheck(worst, plan, level);
  return describeReport(report, plan, level);
}

/** One line for each sentence. */
function sentences(text: string): readonly string[] {
  return text.trim().split(/(?<=\.)\s+/);
}
