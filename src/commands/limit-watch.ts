import { describeLimits } from '../../geometry/planfile/limits.ts';
import { useAppStore } from '../state/store.ts';
import { useLibrary } from '../storage/library-state.ts';

/**
 * Adds to the message of the change that takes the open plan beyond what Stillspot is made for which limits that are. A plan that is opened
 * beyond them is told by who opens it. Returns what ends it.
 */
export function watchLimits(): () => void {
  let { openId } = useLibrary.getState();
  return useAppStore.subscribe(({ plan }, { plan: before }) => {
    if (plan === before) return;
    const isOpened = useLibrary.getState().openId !== openId;
    openId = useLibrary.getState().openId;
    const words = isOpened || describeLimits(before) ? '' : describeLimits(plan);
    // The change has a message of its own, which comes with it or right after it.
    if (words) setTimeout(() => useAppStore.getState().say(`${useAppStore.getState().message} ${words}`.trim()));
  });
}
