import type { AppState } from '../state/app-state.ts';
import { selectLevelBar, selectModel, selectShownPlan } from '../state/selectors.ts';
import { spotsOn, useShown } from '../state/shown.ts';
import { shownRegion } from '../state/shown-results.ts';
import type { Named } from './paint/names/mark.ts';

let last: Named | null = null;

/** What the names of the sheet hang on; the same object as long as all of it is the same. */
export function selectNamed(state: AppState): Named {
  const model = selectModel(state);
  const now: Named = {
    plan: selectShownPlan(state),
    model,
    region: shownRegion(state),
    selection: state.selection,
    bar: selectLevelBar(state),
    marked: spotsOn(model.level.id, useShown.getState()),
    dragged: state.draft !== null,
  };
  if (!last || !sameNamed(last, now)) last = now;
  return last;
}

function sameNamed(a: Named, b: Named): boolean {
  return (Object.keys(a) as (keyof Named)[]).every((key) => a[key] === b[key]);
}
