import { describeLimits } from '../../geometry/planfile/limits.ts';
import { useAppStore } from '../state/store.ts';
import { useLibrary } from '../storage/library-state.ts';

/**
 * When a change takes the open plan beyond the limits that Stillspot is made for, adds the exceeded limits to the message of the change. For
 * a plan that exceeds them when it is opened, the code that opens it shows them. Returns the function that stops watching.
 */
export function watchLimits(): () => void {
  let { openId } = useLibrary.getState();
  return useAppStore.subscribe(({ plan }, { plan: before }) => {
    if (plan === before) return;
    const isOpened = useLibrary.getState().openId !== openId;
    openId = useLibrary.getState().openId;
    const words = isOpened || describeLimits(before) ? '' : describeLimits(plan);
    // Later, because the change itself sets a message, now or right after this.
    if (words) setTimeout(() => useAppStore.getState().say(`${useAppStore.getState().message} ${words}`.trim()));
  });
}
