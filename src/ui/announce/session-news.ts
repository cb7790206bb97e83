import { capital, describeReport, headlineText } from '../../../geometry/messages/index.ts';
import { spokenName } from '../../../geometry/messages/spoken-name.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { enterWords } from '../../editor/input/enter-words.ts';
import { detectorPreview } from '../../editor/overlay/detector-preview.ts';
import { useSketch } from '../../editor/overlay/sketch.ts';
import type { AppState } from '../../state/app-state.ts';
import { selectLevel, selectModel, selectShownPlan } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { selectWhyNotWords } from '../../state/why-not.ts';

/** Returns the selection as a sentence; for a detector with its verdict. */
export function selectionWords(): string {
  const state = useAppStore.getState();
  const { selection } = state;
  const [id] = selection;
  if (!id) return 'Nothing is selected.';
  if (selection.length > 1) return `${selection.length} things are selected.`;
  const report = shownReports(state).find((each) => each.id === id);
  const name = spokenName(selectLevel(state), selectModel(state), id);
  return `${capital(name)} is selected${report ? `: ${headlineText(report)}` : ''}.`;
}

/** Returns what the crosshair, or the pointer with a tool, shows: lengths, a verdict, why not here, and what Enter does. */
export function toolWords(): string {
  const [state, sketch] = [useAppStore.getState(), useSketch.getState()];
  const enter = enterWords(state, sketch);
  return [shownWords(state), enter && `${enter}.`].filter(Boolean).join(' ');
}

function shownWords(state: AppState): string {
  const sketch = useSketch.getState();
  const preview = detectorPreview(state, sketch);
  if (preview) {
    const { report } = preview;
    const reason = describeReport(report, selectShownPlan(state), selectLevel(state));
    return `Here: ${capital(headlineText(report))}. ${reason}`;
  }
  if (state.tool.kind === 'ask' && state.hover) return whyNotWords(state, state.hover.at);
  return sketch.cross && sketch.reading.length > 0 ? `${sketch.reading.join(', ')}.` : '';
}

function whyNotWords(state: AppState, at: XY): string {
  const { head, lines } = selectWhyNotWords(state, at);
  return [head && `${head}.`, ...lines].filter(Boolean).join(' ');
}
