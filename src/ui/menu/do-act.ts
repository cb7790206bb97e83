import type { XY } from '../../../geometry/plan/model.ts';
import { useAppStore } from '../../state/store.ts';
import { type Act, placeOf } from './act.ts';
import { rememberAct } from './again.ts';

/** Does an act with what is there now, and keeps it for "again". */
export function doAct(act: Act, ids: readonly string[], at: XY | null): void {
  act.run(placeOf(useAppStore.getState(), ids, at));
  rememberAct(act);
}
