import { memoizeLatest } from '../../geometry/plane/memoize.ts';
import type { AppState } from '../state/app-state.ts';
import { selectLevelBar, selectModel, selectShownPlan } from '../state/selectors.ts';
import { spotsOn, useShown } from '../state/shown.ts';
import { shownRegion } from '../state/shown-results.ts';
import type { Named } from './paint/names/followed.ts';

const namedOf = memoizeLatest(
  (
    plan: Named['plan'],
    model: Named['model'],
    region: Named['region'],
    selection: Named['selection'],
    bar: Named['bar'],
    marked: Named['marked'],
    dragged: Named['dragged'],
    stage: Named['stage'],
  ): Named => ({ plan, model, region, selection, bar, marked, dragged, stage }),
);

/** Returns what the names of the sheet depend on; the same object as long as all of it is the same. */
export function selectNamed(state: AppState): Named {
  const model = selectModel(state);
  const marked = spotsOn(model.level.id, useShown.getState());
  const isDragged = state.previewPlan !== null;
  const { selection } = state;
  return namedOf(
    selectShownPlan(state),
    model,
    shownRegion(state),
    selection,
    selectLevelBar(state),
    marked,
    isDragged,
    state.wholeInView ? state.stageSize : null,
  );
}
