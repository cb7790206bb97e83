import { toneOf } from '../../../geometry/messages/index.ts';
import type { AppState } from '../../state/app-state.ts';
import { selectLevel, selectShownPlan } from '../../state/selectors.ts';
import { useShown } from '../../state/shown.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { sunVersion } from '../../state/sun-version.ts';
import { useLengths } from '../lengths/store.ts';
import type { Inputs } from '../stage/picture.ts';
import { type Sketch, useSketch } from './sketch.ts';

/** Fields of the store that the overlay depends on. */
const OVERLAY_KEYS = [
  'plan',
  'previewPlan',
  'levelId',
  'tool',
  'selection',
  'hover',
  'draggedDetector',
  'chain',
  'sitHeight',
  'stageSize',
  'menu',
  'roomAsked',
] as const satisfies readonly (keyof AppState)[];

/**
 * Returns everything that the overlay depends on. All of its pictures share it, because the places of their labels depend on one another.
 */
export function readOverlay(): Inputs {
  const [state, sketch] = [useAppStore.getState(), useSketch.getState()];
  const isDrag =
    state.previewPlan !== null &&
    state.draggedDetector === null &&
    state.hover === null &&
    state.tool.kind === 'select';
  if (isDrag) return inputsOfDrag(state, sketch);
  return [
    ...[sketch, useShown.getState(), useLengths.getState()],
    ...OVERLAY_KEYS.map((key) => state[key]),
    // Verdicts can change without the plan: direct sun is computed later, and the second computation may differ.
    ...[sunVersion(), state.second?.doubts],
  ];
}

/**
 * Returns what the overlay depends on while walls or things are dragged: most moves of a wall change none of it, so that nothing is
 * repainted.
 */
function inputsOfDrag(state: AppState, sketch: Sketch): readonly unknown[] {
  const { levelId, selection, chain, stageSize } = state;
  const { pointer, cursor: _, ...drawn } = sketch;
  const { protocol, display } = selectShownPlan(state);
  const reports = shownReports(state);
  const detectors = selectLevel(state).detectors.flatMap((detector) => {
    const report = reports.find(({ id }) => id === detector.id);
    return [detector, selection.includes(detector.id) ? report : report && toneOf(report)];
  });
  return [
    'pulled',
    ...[levelId, selection, chain, stageSize, protocol, display, useShown.getState()],
    ...Object.values(drawn).map((value) => (Array.isArray(value) && value.length === 0 ? '' : value)),
    // A note with lengths follows the pointer.
    sketch.reading.length > 0 ? pointer : '',
    ...detectors,
  ];
}
