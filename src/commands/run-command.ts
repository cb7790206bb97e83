import type { XY } from '../../geometry/plan/model.ts';
import { useAppStore } from '../state/store.ts';
import { type Act, placeOf } from './command.ts';
import { rememberAct } from './repeat.ts';

/** Does an act with what is there now, and keeps it for "again". */
export function doAct(act: Act, ids: readonly string[], at: XY | null): void {
  act.run(placeOf(useAppStore.getState(), ids, at));
  rememberAct(act);
}
